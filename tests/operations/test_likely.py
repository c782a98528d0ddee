"""What is likely to come next, by what stands before it."""

import pytest

from jobsheet.edit.step_commands import AddOperation
from jobsheet.operations.choosing.likely import likely_next
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.operations.registry import kinds
from jobsheet.storage.cabinet_file import cabinet_for
from jobsheet.storage.job_file import blank_job


def job_with(*steps):
    job = blank_job("bench-mill-b-1")
    for name, texts in steps:
        job = AddOperation(job.set_ups[0].key, name, after_key=None, texts=tuple(texts.items())).apply(job)
    return job.set_ups[0]


def likely(*steps, units="mm", cabinet=None):
    set_up = job_with(*steps)
    return likely_next(Here(set_up=set_up, index=len(steps), units=units, cabinet=cabinet))


AT = {"at": "10, 10; 30, 10"}


def test_a_new_set_up_begins_with_the_face_that_all_else_is_judged_from():
    assert [one.kind for one in likely()] == ["face", "pick-up-edge", "tram-check"]


def test_after_a_spot_drill_the_drill_at_the_same_places():
    one = likely(("spot-drill", AT))[0]
    assert one.kind == "drill"
    assert dict(one.texts)["at"] == AT["at"]


@pytest.mark.parametrize(("drill", "thread"), [("5", "M6"), ("6.8", "M8"), ("8.5", "M10"), ("4.2", "M5")])
def test_after_a_hole_of_tapping_size_the_thread(drill, thread):
    """Tap drills of the coarse series: major less pitch (ISO 2306)."""
    one = likely(("drill", {**AT, "cutter": f"drill {drill} mm"}))[0]
    assert (one.kind, dict(one.texts)["thread"]) == ("hand-tap", thread)
    assert one.reason.startswith("these 2 holes; ")


def test_a_hole_that_is_tapped_already_is_not_tapped_again():
    found = likely(("drill", {**AT, "cutter": "drill 5 mm"}), ("hand-tap", AT))
    assert "hand-tap" not in [one.kind for one in found]


def test_a_hole_with_the_stock_for_a_reamer_is_reamed_and_what_the_cabinet_lacks_is_said_last():
    steps = (("drill", {**AT, "cutter": "drill 9.7 mm"}),)
    assert likely(*steps)[0].kind == "ream"
    found = likely(*steps, cabinet=cabinet_for("Harrowmoss"))
    assert found[-1].kind == "ream"
    assert found[-1].why_not == "no reamer of 10 in the cabinet"
    assert not found[0].why_not


@pytest.mark.parametrize("name", kinds())
def test_after_every_kind_there_is_something_and_it_can_be_written(name):
    set_up = job_with((name, {}))
    found = likely_next(Here(set_up=set_up, index=1, units="mm"))
    assert 1 <= len(found) <= 3
    for one in found:
        assert one.reason
        job_with((name, {}), (one.kind, dict(one.texts)))
