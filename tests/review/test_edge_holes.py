"""Holes that run out of a side of the work."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.mending.edge_holes import breaks_out

from .views_read import sample, steps_of


@pytest.mark.parametrize(
    ("at", "out"), [("20, 20", False), ("1, 20", True), ("20, 1", True), ("2.6, 20", False), ("79, 20", True)]
)
def test_a_hole_nearer_to_a_side_than_half_of_it(at, out):
    """A drill of 5: its edge is 2.5 from its middle."""
    job = SetField("drill", "cutter", "drill 5 mm").apply(sample(100))
    assert breaks_out(steps_of(SetField("drill", "at", at).apply(job))["drill"].cut) is out


def test_a_face_breaks_out_of_nothing():
    assert not breaks_out(steps_of(sample(100))["face-rough"].cut)
