"""What a field can be filled with from the cabinet."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.cabinet.cabinet_picks import picks
from jobsheet.storage.job_file import read_job

from .cabinet_asked import CABINET, plate, sample_jobs_read


def test_every_pick_can_be_written_into_its_field():
    for path in sample_jobs_read():
        job = read_job(path)
        for _, operation in job.operations():
            for one in picks(job, operation, "cutter", CABINET):
                SetField(operation.key, "cutter", one.text).apply(job)  # raises where it cannot be read


def test_a_drill_is_nearest_to_the_thread_s_own_and_the_kind_that_stands_there_goes_first():
    job = plate()
    drills = [one.text for one in picks(job, job.find("drill")[1], "cutter", CABINET)]
    assert drills[0] == "drill 5 mm, drawer 3"  # M6: 6 - 1 (ISO 261)
    spots = [one.text for one in picks(job, job.find("spot")[1], "cutter", CABINET)]
    assert spots[0] == "spot drill 10 mm, 90°, drawer 3 no. 1"
    assert [one.text for one in picks(job, job.find("tap")[1], "cutter", CABINET)] == [
        "taps M6, taper and plug, drawer 5"
    ]
    assert picks(job, job.find("tap")[1], "note", CABINET) == ()
