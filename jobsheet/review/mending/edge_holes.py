"""Holes that run out of a side of the work: no packing below mends these."""

from __future__ import annotations

from jobsheet.model.shape import Hole
from jobsheet.stages.course import Cut

OUT_OF_A_SIDE = (
    "set the hole further in, or clamp scrap of the same metal against that side and drill both; a hole that breaks out of"
    " a side is milled, not drilled"
)
_ROUNDING = 1e-7


def breaks_out(cut: Cut) -> bool:
    """Whether one of its round holes is not whole: its edge lies over a side of the work as it is by then."""
    return any(
        min(at[axis], cut.before.size[axis] - at[axis]) < sized.shape.diameter / 2 - _ROUNDING
        for sized in cut.shapes
        if isinstance(sized.shape, Hole)
        for at in sized.corners
        for axis in (0, 1)
    )
