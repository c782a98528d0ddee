"""Drills near a size, stock for reaming, webs and pilots."""

from __future__ import annotations

from itertools import pairwise
from types import SimpleNamespace

import pytest

from jobsheet.catalog.tools.drill_sets import (
    SETS,
    box,
    boxes,
    drill_set,
    drills_between,
)
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.errors import CalcError, NoSuchEntry

INCH = 0.0254


def near_in(drills, diameter):
    """The drills of a row below, at and above a diameter [m]; None where there is none."""
    same = 1e-9
    below = [drill for drill in drills if drill.diameter < diameter - same]
    at = [drill for drill in drills if abs(drill.diameter - diameter) <= same]
    above = [drill for drill in drills if drill.diameter > diameter + same]
    return SimpleNamespace(
        below=below[-1] if below else None, at=at[0] if at else None, above=above[0] if above else None
    )


def called(drill):
    return None if drill is None else drill.name


def test_sixty_four_fractions_up_to_one_inch():
    drills = drill_set("fractional")
    assert len(drills) == 64
    assert (drills[0].name, drills[-1].name) == ("1/64 in", "1 in")
    assert "13/64 in" in [drill.name for drill in drills]
    assert [drill.diameter for drill in drills] == pytest.approx([n / 64 * INCH for n in range(1, 65)])


def test_metric_drills_by_the_rule():
    """0.20 to 0.98: N/10 + 0, .02, .05, .08; 1.00 to 2.95 by 0.05; 3.0 to 13.9 by 0.1; 14 to 25 by 0.25."""
    sizes = [drill.diameter * 1e3 for drill in drill_set("metric")]
    assert len(sizes) == 8 * 4 + 40 + 110 + 45
    assert sizes[:6] == pytest.approx([0.20, 0.22, 0.25, 0.28, 0.30, 0.32])
    for there in (0.98, 1.0, 1.05, 2.95, 3.0, 3.1, 6.8, 13.9, 14.0, 14.25, 25.0):
        assert any(abs(size - there) < 1e-9 for size in sizes), there
    for missing in (0.99, 0.24, 1.02, 3.05, 13.95, 14.1, 25.25):
        assert not any(abs(size - missing) < 1e-9 for size in sizes), missing


def test_eighty_numbers_and_twenty_six_letters():
    assert (len(drill_set("number")), len(drill_set("letter"))) == (80, 26)
    assert drill_set("letter")[4].diameter == pytest.approx(0.25 * INCH)  # E is 1/4 in


@pytest.mark.parametrize("name", SETS)
def test_sets_run_upwards_and_each_name_can_be_written(name):
    drills = drill_set(name)
    for smaller, larger in pairwise(drills):
        assert smaller.diameter < larger.diameter
    for drill in drills:
        assert read_drill_size(drill.name) == pytest.approx(drill.diameter)


#: Tap drills of thread charts: a size wanted, and what stands about it.
NEAR = [
    (0.201 * INCH, "number", "#8", "#7", "#6"),
    (0.257 * INCH, "letter", "E", "F", "G"),
    (5.1e-3, "number", "#8", None, "#7"),
    (6.8e-3, "letter", "H", None, "I"),
    (6.8e-3, "metric", "6.7 mm", "6.8 mm", "6.9 mm"),
    (5e-3, "fractional", "3/16 in", None, "13/64 in"),
    (12.7e-3, "fractional", "31/64 in", "1/2 in", "33/64 in"),
    (30e-3, "metric", "25 mm", None, None),
    (0.1e-3, "number", None, None, "#80"),
    (5e-3, "letter", None, None, "A"),
]


@pytest.mark.parametrize(("diameter", "name", "below", "at", "above"), NEAR)
def test_drills_below_at_and_above(diameter, name, below, at, above):
    near = near_in(drill_set(name), diameter)
    assert (called(near.below), called(near.at), called(near.above)) == (below, at, above)


def test_boxes_as_they_are_sold():
    assert [len(box(name)) for name in boxes()] == [29, 25, 91]
    near = near_in(box("1 to 13 mm by 0.5"), 6.8e-3)
    assert (called(near.below), near.at, called(near.above)) == ("6.5 mm", None, "7 mm")


def test_what_is_no_set_and_no_size():
    with pytest.raises(NoSuchEntry, match="metric"):
        drill_set("imperial")
    with pytest.raises(NoSuchEntry):
        box("all")
    with pytest.raises(CalcError):
        drills_between(0, 1e-3)


def test_drills_between_two_sizes_are_of_every_set_and_in_order():
    found = drills_between(5e-3, 6.5e-3)
    assert {drill.set for drill in found} == set(SETS)
    assert [drill.name for drill in drills_between(9.59e-3, 9.75e-3)] == ["9.6 mm", "9.7 mm"]
    assert [drill.diameter for drill in found] == sorted(drill.diameter for drill in found)
