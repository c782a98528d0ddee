"""What the finished part shall be, on its picture: its three sizes with their limits beside it, and its features by name with a line to each."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.drawing.drawn import Item, Line, Point, Text
from jobsheet.finished.finished_part import FinishedPart
from jobsheet.finished.told_back import short_of
from jobsheet.model.lying import Box
from jobsheet.report.isometric import View, sizes_beside
from jobsheet.stages.as_drawn import part_box, places_on

#: Room round a picture that has sizes: left, top, bottom [points]; at the right as its longest size asks.
LEFT, TOP, BOTTOM = 34.0, 16.0, 30.0
#: How far beside the work the height and the width begin [points].
HEIGHT_AT, WIDTH_AT = 24.0, 12.0
#: So many features have their name on a small picture; a line each.
MOST, LINE = 5, 10.0
#: The width of a letter of them, a little generous [points].
LETTER = 5.4
#: A size with its limits in letters that still has room beside the picture.
LONGEST = 16


def room_for(part: FinishedPart) -> tuple[float, float, float, float]:
    """Room round the picture: left, top, right, bottom [points]."""
    size = part.shape
    high, wide = (
        min(len(other.text), LONGEST) if other is not None else 0
        for other in ((size.height, size.width) if size is not None else (None, None))
    )
    return LEFT, TOP, max(42.0, HEIGHT_AT + LETTER * high, WIDTH_AT + LETTER * wide), BOTTOM


def asked_items(
    view: View,
    part: FinishedPart,
    final: Box,
    width: float,
    short: Callable[[str, int, str], str] | None = None,
) -> list[Item]:
    """Sizes and names of features for a picture whose places count from the left front lower corner of the work.

    Names stand at the right edge of a picture that is so wide [points]; `short` shortens a text that is longer than so many letters, as the sheet does.
    """
    work = tuple((0.0, high - low) for low, high in final)
    sizes = part.shape.sizes if part.shape is not None else (None, None, None)
    said = [size.text if size is not None else "" for size in sizes]
    length, across, height = (short(one, LONGEST, "finished size") if short and one else one for one in said)
    items = list(sizes_beside(view, (work[0], work[1], work[2]), (length, across, height)))
    return items + _names(view, part, final, width, short)


def _names(
    view: View,
    part: FinishedPart,
    final: Box,
    width: float,
    short: Callable[[str, int, str], str] | None,
) -> list[Item]:
    """The names of what is seen from front, right and above, one below the other, each with a line to its first place."""
    box = part_box(final, part)
    found: list[tuple[str, Point]] = []
    for _, feature in part.features:
        if feature.face not in ("top", "front", "right") or feature.what == "chamfer":
            continue
        if points := places_on(feature, box):
            x, y, z = (at - low for at, (low, _) in zip(points[0], final, strict=True))
            name = short_of(feature)
            found.append((short(name, 24, "feature") if short else name, view.at((x, y, z))))
    return named_items(sorted(found, key=lambda one: one[1][1])[:MOST], width)


def named_items(found: list[tuple[str, Point]], width: float) -> list[Item]:
    """Names one below the other near the right edge of a picture, each with a line to its place, the highest place first."""
    items: list[Item] = []
    # All begin at one edge, so that no line runs through a name.
    start = width - 2.0 - max((LETTER * len(name) for name, _ in found), default=0.0)
    for row, (name, tip) in enumerate(sorted(found, key=lambda one: one[1][1])):
        y = LINE * (row + 1)
        items.append(Text(start, y, name, "size"))
        items.append(Line(((start - 3.0, y - 2.5), tip), "dim"))
    return items
