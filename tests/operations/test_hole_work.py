"""What the kinds of holes share: what a tool opens, how deep through is, a stop that can be set."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import CalcError
from jobsheet.model.quantity import Depth, Quantity
from jobsheet.operations.shared import hole_work
from jobsheet.operations.shared.tally import Tally
from tests.limits.one_cut import around


def test_a_typed_hole_goes_before_the_one_that_stands_there():
    typed = SimpleNamespace(hole=Quantity(6e-3, "6"))
    assert hole_work.standing_hole(typed, around(pilot=4e-3), 10e-3) == 6e-3
    assert hole_work.standing_hole(SimpleNamespace(hole=None), around(pilot=4e-3), 10e-3) == 4e-3


@pytest.mark.parametrize(
    ("hole", "says"),
    [(None, "not drilled"), (10e-3, "smaller than what is cut"), (12e-3, "smaller than what is cut")],
)
def test_what_opens_a_hole_needs_a_smaller_one(hole, says):
    with pytest.raises(CalcError, match=says):
        hole_work.standing_hole(SimpleNamespace(hole=None), around(pilot=hole), 10e-3)


def test_through_is_the_height_of_the_work_and_unknown_without_it():
    assert hole_work.depth_of(Depth(None, "through"), around(thickness=0.012)) == 0.012
    assert hole_work.depth_of(Depth(0.005, "5"), around(thickness=0.012)) == 0.005
    with pytest.raises(CalcError, match="height of the work is not known"):
        hole_work.depth_of(Depth(None, "through"), around(thickness=0.0))


def test_a_usual_number_of_edges_is_taken_and_said():
    tally = Tally("mm")
    assert hole_work.edges_of(tally, read_cutter("drill 8 mm, 2 teeth", "mm")) == 2
    assert tally.done().caveats == ()
    usual = hole_work.edges_of(tally, read_cutter("reamer 16 H7", "mm"))
    assert str(usual) in tally.done().caveats[0]


def test_a_tool_without_a_size_is_refused_by_its_words():
    with pytest.raises(CalcError, match="written with its size"):
        hole_work.diameter_of(read_cutter("drill", "mm"))
