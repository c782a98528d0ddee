"""The way that a tool goes beside the length of the work."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import times
from jobsheet.cutting.textbook import approach_lengths
from jobsheet.errors import CalcError


@given(st.floats(0.01, 1.0))
def test_approaches_are_shorter_than_half_the_cutter(part):
    assert times.side_approach(part, 1.0) <= 0.5 + 1e-12
    assert approach_lengths.face_approach(part, 1.0) <= 0.5 + 1e-12
    assert approach_lengths.slab_approach(part, 1.0) >= times.side_approach(part, 1.0)


def test_run_off_is_the_rest_of_the_cutter():
    assert approach_lengths.face_overrun(50, 10) == 40
    with pytest.raises(CalcError, match="approach"):
        approach_lengths.face_overrun(50, 60)


def test_life_at_the_constant_is_one_minute():
    assert approach_lengths.tool_life(1.5, 1.5, 0.2) == pytest.approx(60.0)


@given(st.floats(0.1, 5), st.floats(1.01, 3), st.floats(0.08, 0.7))
def test_faster_lasts_shorter(speed, more, exponent):
    assert approach_lengths.tool_life(speed * more, 2.0, exponent) < approach_lengths.tool_life(
        speed, 2.0, exponent
    )


@pytest.mark.parametrize(
    "approach", [times.side_approach, approach_lengths.slab_approach, approach_lengths.face_approach]
)
def test_a_cut_wider_than_the_cutter_has_no_approach(approach):
    with pytest.raises(CalcError, match="at most the diameter"):
        approach(30.1e-3, 30e-3)
    assert approach(30e-3, 30e-3) >= 15e-3


def test_approaches_one_can_do_in_the_head():
    """Sides of the right triangle 3, 4, 5: a cut of a fifth of the cutter, and a face of four fifths."""
    assert times.side_approach(2, 10) == pytest.approx(4)
    assert times.side_approach(4.5, 10) == pytest.approx(24.75**0.5)
    assert approach_lengths.face_approach(8, 10) == pytest.approx(2)
    assert approach_lengths.slab_approach(1.6, 10) == pytest.approx(4)


def test_the_whole_cutter_may_be_counted_already():
    assert approach_lengths.face_overrun(50, 50) == 0
