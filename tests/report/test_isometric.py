"""The stock in isometric: the three axes at 30°, all of it inside its picture."""

from __future__ import annotations

import math

import pytest

from jobsheet.drawing.drawn import Line, Text
from jobsheet.report.isometric import datum_letters, faces, fitted, seen, sizes_beside, stock_picture

BOX = ((0.0, 0.08), (0.0, 0.05), (0.0, 0.012))


def test_equal_lengths_along_the_axes_are_equally_long_and_120_degrees_apart():
    """Isometric projection (ISO 5456-3)."""
    origin = seen((0, 0, 0))
    axes = [
        tuple(a - b for a, b in zip(seen(point), origin, strict=True))
        for point in ((1, 0, 0), (0, 1, 0), (0, 0, 1))
    ]
    assert [math.hypot(*axis) for axis in axes] == pytest.approx([1, 1, 1])
    turns = sorted(round(math.degrees(math.atan2(y, x))) % 360 for x, y in axes)
    assert turns == [30, 270, 330]


@pytest.mark.parametrize(
    "box", [BOX, ((0.0, 0.02), (0.0, 0.3), (0.0, 0.02)), ((0.0, 0.01), (0.0, 0.01), (0.0, 0.5))]
)
def test_the_largest_view_touches_its_room_and_stays_in_it(box):
    view = fitted(box, 200, 150, (10, 20, 30, 40))
    corners = [view.at((x, y, z)) for x in box[0] for y in box[1] for z in box[2]]
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    assert min(xs) >= 10 - 1e-6
    assert max(xs) <= 170 + 1e-6
    assert min(ys) >= 20 - 1e-6
    assert max(ys) <= 110 + 1e-6
    assert max(xs) - min(xs) == pytest.approx(160) or max(ys) - min(ys) == pytest.approx(90)


def test_sizes_stand_there_as_typed_and_an_empty_one_does_not():
    drawing = stock_picture(BOX, ("80", "50", "12"), 200, 150)
    assert [item.words for item in drawing.items if isinstance(item, Text)] == ["80", "50", "12"]
    view = fitted(BOX, 200, 150, (26, 8, 42, 24))
    assert [item.words for item in sizes_beside(view, BOX, ("80", "", "")) if isinstance(item, Text)] == [
        "80"
    ]
    assert len([item for item in faces(view, BOX) if isinstance(item, Line) and item.closed]) == 3


def test_two_letters_on_one_face_stand_beside_each_other():
    view = fitted(BOX, 200, 150, (26, 8, 42, 24))
    letters = [
        item for item in datum_letters(view, BOX, (("A", "top"), ("B", "top"))) if isinstance(item, Text)
    ]
    assert [item.words for item in letters] == ["A", "B"]
    assert letters[1].x > letters[0].x
