"""A typed size stands in the form of the new step."""

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.threads import read_thread
from jobsheet.edit.step_commands import AddOperation
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.operations.choosing.filled import in_cabinet, with_size
from jobsheet.operations.registry import kind, kinds
from jobsheet.storage.job_file import blank_job


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


def mill(size, *, here=True, kind="end mill"):
    return Thing(section="cutters", what=f"{kind} {size}", place="drawer 1", row=0, out="" if here else "lent", cutter=read_cutter(f"{kind} {size} mm", "mm"))  # fmt: skip


def thread(name, *, here=True):
    return Thing(section="taps", what=name, place="drawer 5", row=0, out="" if here else "lent", cutter=read_cutter(f"tap {name}", "mm"), thread=read_thread(name))  # fmt: skip


def cabinet(*things):
    return Cabinet(name="c", sections=frozenset({"cutters", "taps"}), things=things)


@pytest.mark.parametrize(("size", "found"), [("12", True), ("12.009", True), ("11.991", True), ("12.011", False), ("11.989", False)])  # fmt: skip
def test_sizes_within_a_hundredth_of_a_millimetre_are_one(size, found):
    assert (in_cabinet(cabinet(mill(size)), read_cutter("end mill 12 mm", "mm")) is not None) == found


def test_one_that_is_in_its_place_goes_before_one_that_is_not_and_the_first_before_the_next():
    away, first, second = mill("12", here=False), mill("12.001"), mill("12.002")
    asked = read_cutter("end mill 12 mm", "mm")
    assert in_cabinet(cabinet(away, first, second), asked) is first
    assert in_cabinet(cabinet(away), asked) is away
    assert in_cabinet(cabinet(), asked) is None
    assert in_cabinet(cabinet(mill("12", kind="slot drill")), asked) is None


def test_what_has_no_size_is_like_nothing():
    assert in_cabinet(cabinet(mill("12")), read_cutter("end mill", "mm")) is None
    bare = Thing(section="cutters", what="end mill", place="", row=0, cutter=read_cutter("end mill", "mm"))
    assert in_cabinet(cabinet(bare), read_cutter("end mill 12 mm", "mm")) is None


def test_a_tap_is_known_by_diameter_and_pitch():
    """M8 has a pitch of 1.25 mm (ISO 261), M8x1 of 1 mm: neither is the other."""
    coarse, fine = thread("M8"), thread("M8x1")
    asked = read_cutter("tap M8", "mm")
    assert in_cabinet(cabinet(fine, coarse), asked, read_thread("M8")) is coarse
    assert in_cabinet(cabinet(coarse, fine), asked, read_thread("M8x1")) is fine
    assert in_cabinet(cabinet(coarse, fine), asked, read_thread("M10")) is None


def test_the_line_of_the_cabinet_is_written_with_its_place():
    """What the cabinet has stands there in its words; what it has not stays as the form had it."""
    found = dict(with_size(kind("drill"), "9", "mm", cabinet(mill("9", kind="drill"))))
    assert found["cutter"] == "drill 9, drawer 1"
    none = dict(with_size(kind("drill"), "8", "mm", cabinet(mill("9", kind="drill"))))
    assert "drawer" not in none["cutter"]
