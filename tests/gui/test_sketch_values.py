"""Where a point of the work is seen: right goes right and down, away right and up, up goes up."""

from __future__ import annotations

import math

import pytest

from jobsheet.gui.strip.sketch_values import Block, Sketch, seen


@pytest.mark.parametrize(
    ("point", "picture"),
    [
        ((0, 0, 0), (0, 0)),
        ((1, 0, 0), (math.sqrt(3) / 2, 0.5)),
        ((0, 1, 0), (math.sqrt(3) / 2, -0.5)),
        ((0, 0, 1), (0, -1)),
        ((1, 1, 1), (math.sqrt(3), -1)),
    ],
)
def test_the_three_directions_stand_at_thirty_degrees(point, picture):
    """Isometric axes lie 30 degrees from level (ISO 5456-3), not shortened."""
    assert seen(*point) == pytest.approx(picture)


def test_a_block_has_no_holes_and_a_sketch_no_sizes_before_they_are_said():
    assert Block(1, 2, 3).holes == ()
    assert Sketch((), (0, 0, 1, 1)).sizes == ()
