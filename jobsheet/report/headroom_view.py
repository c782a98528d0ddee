"""What stands between table and spindle nose, seen from the side and to scale:
vice, work, room, cutter, holder.
"""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import arrow, box, hatched
from jobsheet.reckoning.answers.all_answers import Headroom
from jobsheet.units.table import INCH

#: Widths are not to scale: the picture is about heights.
VICE, WORK, HOLDER, CUTTER = 74.0, 54.0, 26.0, 9.0


def _length(value: float, units: str) -> str:
    return f"{value * 1e3:.0f}" if units == "mm" else f"{value / INCH:.2f}"


def headroom_picture(headroom: Headroom, units: str, width: float, height: float) -> Drawing:
    """Heights to scale, with the lowest and the highest that the spindle nose goes as dashed lines [points].

    A tool that does not fit is drawn where it would have to be: its holder then stands over the highest line.
    """
    foot, head = 20.0, 8.0
    needed = headroom.top + headroom.room + headroom.stick_out + headroom.holder
    most = max(headroom.greatest, needed)
    scale = (height - foot - head) / most
    base, middle = height - foot, width * 0.5

    def at(value: float) -> float:
        return base - value * scale

    work = min(headroom.work, headroom.top)
    items: list[Item] = []
    bed = headroom.bed if headroom.bed is not None else headroom.top - work
    if headroom.bed is not None:
        # The jaws reach over the lower part of the work; how far is not part of this picture.
        vice = box(middle - VICE / 2, at(bed), VICE, bed * scale)
        items += [*hatched(vice, apart=4.0), Line(vice, "outline", closed=True)]
    items.append(
        Line(
            box(middle - WORK / 2, at(headroom.top), WORK, work * scale), "outline", closed=True, fill="paper"
        )
    )
    if headroom.top - work > bed + 1e-4:
        items.append(
            Line(
                box(middle - WORK / 2 + 4, at(headroom.top - work), 8, (headroom.top - work - bed) * scale),
                "thin",
                closed=True,
            )
        )
        items.append(
            Line(
                box(middle + WORK / 2 - 12, at(headroom.top - work), 8, (headroom.top - work - bed) * scale),
                "thin",
                closed=True,
            )
        )
    tip = headroom.top + headroom.room
    cutter = box(middle - CUTTER / 2, at(tip + headroom.stick_out), CUTTER, headroom.stick_out * scale)
    holder = box(middle - HOLDER / 2, at(needed), HOLDER, headroom.holder * scale)
    for outline in (cutter, holder):
        items.append(Line(outline, "outline", closed=True, fill="paper"))
    items.append(Line(((middle - VICE / 2 - 22, base), (middle + VICE / 2 + 22, base)), "frame"))
    items.append(Text(middle, base + 13, "table", "caption", "middle"))
    left, right = middle - VICE / 2 - 22, middle + VICE / 2 + 22
    for value, words in ((headroom.greatest, "highest"), (headroom.least, "lowest")):
        items.append(Line(((left, at(value)), (right, at(value))), "thin", dash="pencil"))
        items.append(Text(left - 3, at(value) + 3, f"{words} {_length(value, units)}", "caption", "end"))
    items += _sizes(headroom, units, right + 6, at, needed)
    return Drawing(width, height, tuple(items))


def _sizes(
    headroom: Headroom, units: str, left: float, place: Callable[[float], float], needed: float
) -> list[Item]:
    """The chain of heights at the right, one under the other."""
    items: list[Item] = []
    tip = headroom.top + headroom.room
    levels = (
        (0.0, headroom.top, "work"),
        (headroom.top, tip, "room"),
        (tip, tip + headroom.stick_out, "cutter"),
        (tip + headroom.stick_out, needed, "holder"),
    )
    for low, high, words in levels:
        span = place(low) - place(high)
        if span > 14:
            items += arrow((left, place(low)), (left, place(high)), head=4.5, both=True)
        else:
            items.append(Line(((left - 3, place(low)), (left + 3, place(low))), "dim"))
        middle = (place(low) + place(high)) / 2
        items.append(Text(left + 7, middle + 3, f"{_length(high - low, units)} {words}", "caption"))
    return items
