"""What can be done next to holes that stand there, by what stands before."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.operations.choosing import hole_steps
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind
from jobsheet.storage.job_file import blank_job


def here(*steps, units="mm"):
    """A set-up with these steps: pairs of a kind and its texts."""
    set_up = blank_job("bench-mill-b-1").set_ups[0]
    made = []
    for number, (name, texts) in enumerate(steps, 1):
        found = kind(name)
        values = {**found.example, "at": "10, 10; 30, 10", **texts}
        fields = fields_from(found.fields, found.entries, values, units)
        made.append(Operation(key=f"{name}-{number}", number=10 * number, kind=name, fields=fields))
    return Here(set_up=replace(set_up, operations=tuple(made)), index=len(made), units=units)


@pytest.mark.parametrize(("size", "size_of_thread"), [("5", "M6"), ("6.8", "M8"), ("8.5", "M10")])
def test_a_hole_for_a_thread_is_tapped_by_hand(size, size_of_thread):
    """ISO 2306: tapping drills 5.0, 6.8 and 8.5 for M6, M8 and M10."""
    found = hole_steps.tap(here(("drill", {"cutter": f"drill {size} mm"})))
    assert dict(found.texts)["thread"] == size_of_thread
    assert "% of thread" in found.reason


def test_a_hole_of_another_size_is_not_tapped_and_a_reamed_one_not_reamed_again():
    assert hole_steps.tap(here(("drill", {"cutter": "drill 7.4 mm"}))) is None
    reamed = here(
        ("drill", {"cutter": "drill 9.7 mm"}), ("ream", {"cutter": "reamer 10 H7", "depth": "through"})
    )
    assert hole_steps.ream(reamed) is None


def test_stock_for_a_reamer_is_the_published_one():
    """Machine reamers of 6 to 12 mm: 0.20 to 0.30 on the diameter; 9.7 leaves 0.3 for 10."""
    assert hole_steps.ream(here(("drill", {"cutter": "drill 9.7 mm"}))).size.startswith("10")
    assert hole_steps.ream(here(("drill", {"cutter": "drill 9 mm"}))) is None


def test_only_a_hole_that_a_bar_goes_into_is_bored():
    assert hole_steps.bore(here(("drill", {"cutter": "drill 11 mm"}))) is None
    assert hole_steps.bore(here(("drill", {"cutter": "drill 20 mm"}))).kind == "bore"


def test_a_spot_is_drilled_once():
    spot = ("spot-drill", {})
    assert hole_steps.drill(here(spot)).kind == "drill"
    assert hole_steps.drill(here(spot, ("drill", {"cutter": "drill 5 mm"}))) is None


@pytest.mark.parametrize(
    ("size", "tapped"), [("6.69", True), ("6.68", False), ("6.9", True), ("6.92", False)]
)
def test_a_drill_a_tenth_off_is_still_for_the_thread(size, tapped):
    """ISO 2306: 6.8 for M8; two steps of a set in tenths lie within 0.11 mm (common practice)."""
    found = hole_steps.tap(here(("drill", {"cutter": f"drill {size} mm"})))
    assert (found is not None and found.size == "M8") == tapped
