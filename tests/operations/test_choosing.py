"""Which kind is meant by what is typed, and what is likely to come next."""

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.edit.step_commands import AddOperation
from jobsheet.operations.choosing.filled import with_size
from jobsheet.operations.choosing.found import kinds_found, taken_apart
from jobsheet.operations.choosing.likely import likely_next
from jobsheet.operations.choosing.order_of_work import GROUPS, in_order
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.operations.registry import kind, kinds
from jobsheet.operations.roles import BESIDE, HOLES, MILLS
from jobsheet.storage.cabinet_file import cabinet_for
from jobsheet.storage.job_file import blank_job


def first(typed, units="mm"):
    return kinds_found(typed, units, None)[0]


def test_every_role_and_every_kind_stands_in_the_order_of_work():
    assert sorted(role for _, roles in GROUPS for role in roles) == sorted((*MILLS, *HOLES, *BESIDE))
    assert sorted(one.name for one in in_order()) == sorted(kinds())


@pytest.mark.parametrize(
    ("typed", "name"),
    [("sl", "slot"), ("SLOT", "slot"), ("m6", "tap"), ("10 slot", "slot"), ("slot 10 mm", "slot"), ("1/4-20 unc", "tap"),
     ("csk", "countersink"), ("deburr", "bench-step"), ("reamer", "ream"), ("fly", "fly-cut"), ("end mill", "side-mill"), ("groove", "keyway")],
)  # fmt: skip
def test_what_is_typed_finds_the_kind(typed, name):
    assert first(typed).kind == name


@pytest.mark.parametrize("typed", ["", "  ", "zz", "slot zz", "10 tram"])
def test_what_nothing_is_called_finds_nothing(typed):
    assert kinds_found(typed, "mm", None) == ()


def test_words_thread_and_size_are_told_apart():
    asked = taken_apart("tap m6x1", "mm")
    assert (asked.words, asked.thread, asked.size) == (("tap",), "M6x1", "")
    asked = taken_apart("slot 3/8", "in")
    assert (asked.words, asked.size) == (("slot",), "3/8")
    assert taken_apart("¤$ %", "mm").words == ("¤$", "%")


@pytest.mark.parametrize("name", kinds())
@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_size_is_read_by_the_form_that_it_is_written_into(name, units):
    texts = with_size(kind(name), "9" if units == "mm" else "0.375", units, None)
    job = blank_job("bench-mill-b-1")
    job = AddOperation(job.set_ups[0].key, name, texts=texts).apply(job)
    made = job.set_ups[0].operations[0].fields
    for field, text in texts:
        assert getattr(made, field).text == text
    if texts and texts[0][0] == "cutter":
        assert read_cutter(texts[0][1], units).diameter == pytest.approx(9e-3 if units == "mm" else 9.525e-3)


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
