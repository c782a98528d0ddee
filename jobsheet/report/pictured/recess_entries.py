"""Pockets from above, with the hole by which the cutter goes down into each."""

from __future__ import annotations

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import arrow, box
from jobsheet.model.lying import Lying
from jobsheet.report.plan import Course
from jobsheet.report.rows.goes_in import Entry, Spot

#: The arrow into the hole [points], across and down.
REACH = (13.0, 10.0)


def entry_items(course: Course, entry: Entry, left: float, foot: float, scale: float) -> list[Item]:
    """The pocket dashed, and an arrow with its step into the hole; `left`, `foot` is
    where the work's nought is [points].
    """
    lie: Lying = course.lie

    def at(x: float, y: float) -> Spot:
        along, away = lie.from_corner(course.set_up, x, y)
        return left + along * scale, foot - away * scale

    (mx, my), (hx, hy) = entry.middle, entry.half
    one, other = at(mx - hx, my - hy), at(mx + hx, my + hy)
    low, top = (min(one[axis], other[axis]) for axis in (0, 1))
    x, y = at(entry.point.x, entry.point.y)
    tail = (x + REACH[0], y - REACH[1])
    return [
        Line(box(low, top, abs(other[0] - one[0]), abs(other[1] - one[1])), "thin", "removed", closed=True),
        *arrow(tail, (x, y), weight=1.5, head=6.0),
        Text(
            (one[0] + other[0]) / 2,
            max(one[1], other[1]) + 7.6,
            f"in, step {entry.step}",
            "caption",
            "middle",
        ),
    ]
