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


def texts(job, key, name="cutter", **more):
    return [one.text for one in picks(job, job.find(key)[1], name, CABINET, **more)]


def test_the_nearest_size_goes_first_and_so_many_are_shown():
    """By ratio: of 5.7 mm the next are A, 5.944 (1.043), and 5.5 (1.036), so 5.5 goes first; then 6 (1.053)."""
    job = SetField("drill", "cutter", "drill 5.7").apply(SetField("drill", "at", "1, 1").apply(plate()))
    found = texts(job, "drill", most=3)
    assert [one.split(",")[0] for one in found] == ["drill 5.5 mm", "drill A", "drill 6 mm"]
    assert texts(job, "drill", most=1) == found[:1]


def test_what_a_line_says_of_the_step_is_kept_before_the_place():
    job = SetField("drill", "cutter", "drill 5, 40 mm out, in a drill chuck, drawer 9").apply(plate())
    assert texts(job, "drill", most=1) == ["drill 5 mm, 40 mm out, in a drill chuck, drawer 3"]


def test_what_is_away_is_offered_with_where_it_is():
    job = SetField("face-rough", "cutter", "end mill 12, 4 teeth").apply(plate())
    found = picks(job, job.find("face-rough")[1], "cutter", CABINET)
    mills = [(one.text.rpartition(", ")[2], one.away) for one in found if "end mill 12" in one.text]
    assert mills == [("drawer 1 no. 1", ""), ("drawer 1 no. 2", "at the grinder")]


def test_a_field_that_is_no_tool_or_is_not_there_has_none():
    job = plate()
    assert texts(job, "drill", "feed") == texts(job, "drill", "no_such") == []
