"""What a crash left behind is offered as a job with what was half typed, and
forgotten when it is asked for.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.gui.desk import journal
from jobsheet.gui.desk.left_behind import left_behind
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job


def _left(name, text, drafts=()):
    import msgspec

    journal.folder().mkdir(parents=True, exist_ok=True)
    path = journal.folder() / name
    path.write_bytes(msgspec.json.encode(journal.Entry(job=text, drafts=drafts, name="plate.yaml")))
    return path


def test_where_nothing_was_left_there_is_none(qapp):
    assert left_behind() is None


def test_the_job_is_unsaved_with_what_was_half_typed(qapp):
    job = read_job(sample_jobs() / "hm-104-cover-plate.yaml")
    key = job.set_ups[0].operations[0].key
    path = _left("1-a.json", write_job(job), ((key, "note", "half"),))
    found = left_behind()
    assert found.job == job
    assert found.words == "HM-104 was not saved when the program ended last time."
    history = found.history()
    assert history.changed
    assert history.drafts == {(key, "note"): "half"}
    found.forget()
    found.forget()
    assert not path.exists()


def test_one_that_cannot_be_read_hides_no_other(qapp):
    job = read_job(sample_jobs() / "hm-104-cover-plate.yaml")
    _left("1-a.json", write_job(job))
    broken = _left("2-b.json", "job: [")
    assert left_behind().job == job
    assert broken.exists()


def test_a_job_without_a_number_is_said_all_the_same(qapp):
    job = read_job(sample_jobs() / "hm-104-cover-plate.yaml")
    _left("1-a.json", write_job(replace(job, part=replace(job.part, number=""))))
    assert left_behind().words.startswith(job.part.name)
