"""How the work is held, seen from the end of the jaws: jaws, what it rests on, which way it is clamped."""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import arrow, box, hatched
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.holdings.placed import in_jaws
from jobsheet.holdings.registry import rests_of
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying
from jobsheet.report.isometric import datum_letter

JAW = 24.0


def holding_picture(
    set_up: SetUp, lie: Lying, datums: tuple[tuple[str, str], ...], width: float, height: float
) -> Drawing:
    """Not to scale but in its order: fixed jaw, moving jaw, packing, and where you stand."""
    side = lie.side(set_up.fixed_jaw)
    if not in_jaws(set_up, lie):
        return _clamped_on(set_up, lie, datums, width, height)
    sides = ("near", "far") if side in ("near", "far") else ("left", "right")
    along, across, up = lie.size
    span = across if sides == ("near", "far") else along
    base = height - 24.0
    pack = 10.0 if rests_of(set_up.holding) else 0.0
    room_wide, room_high = width - 2 * JAW - 16, base - pack - 28
    scale = min(room_wide / span, room_high / up)
    wide, high = max(span * scale, 30.0), max(up * scale, 26.0)
    left = (width - wide) / 2
    top = base - pack - high
    out = min(0.35 * high, _above(set_up, high))
    items: list[Item] = []
    for x in (left - JAW, left + wide):
        outline = box(x, top + out, JAW, base - top - out)
        items += [*hatched(outline, apart=3.8), Line(outline, "outline", closed=True)]
    items.append(Line(box(left, top, wide, high), "outline", closed=True, fill="paper"))
    if pack:
        items += _packing(left, wide, base, pack)
    items.append(Line(((left - JAW - 8, base), (left + wide + JAW + 8, base)), "frame"))
    fixed_right = side in ("far", "right")
    items += _hold(left, wide, top + out, base - pack, fixed_right=fixed_right)
    items += _letters(lie, datums, sides, left, wide, top, high, out)
    names = ("moving jaw", "fixed jaw") if fixed_right else ("fixed jaw", "moving jaw")
    items.append(Text(max(left - JAW - 8, 0), base + 9, names[0], "caption", "start"))
    items.append(Text(min(left + wide + JAW + 8, width), base + 9, names[1], "caption", "end"))
    if sides == ("near", "far"):
        items.append(Text(0, height - 2, "You stand at this side ◂", "strong"))
    else:
        items.append(Text(width / 2, height - 2, "Seen from where you stand", "strong", "middle"))
    return Drawing(width, height, tuple(items))


def _above(set_up: SetUp, high: float) -> float:
    """How far the work stands out of the jaws in the picture."""
    above = getattr(set_up.holding, "above_jaws", None)
    return 0.35 * high if above is None or above.value > 0 else 0.0


def _packing(left: float, wide: float, base: float, pack: float) -> list[Item]:
    thick = min(9.0, wide / 4)
    return [
        Line(box(x, base - pack, thick, pack), "outline", closed=True)
        for x in (left + 1, left + wide - thick - 1)
    ]


def _hold(left: float, wide: float, top: float, bottom: float, *, fixed_right: bool) -> list[Item]:
    """Triangles where it rests (below, and on the fixed jaw), the arrow of the clamping against it."""
    middle = (top + bottom) / 2
    items: list[Item] = []
    for x in (left + 3, left + wide - 11):
        items += mark_at("rests here", 8.0, x, bottom)
    tip, back = (left + wide, -1.0) if fixed_right else (left, 1.0)
    size = 7.0
    points = (
        (tip, middle),
        (tip - back * size, middle - size * 0.55),
        (tip - back * size, middle + size * 0.55),
    )
    items.append(Line(points, 0.0, closed=True, fill="ink"))
    start = left - 19 if fixed_right else left + wide + 19
    items += arrow((start, middle), (left if fixed_right else left + wide, middle), weight=2.2, head=8.0)
    return items


def _letters(
    lie: Lying,
    datums: tuple[tuple[str, str], ...],
    sides: tuple[str, str],
    left: float,
    wide: float,
    top: float,
    high: float,
    out: float,
) -> list[Item]:
    """The letters of the faces that this view cuts: both sides, top and bottom."""
    y = top + max(out / 2, 5.0)
    places = {
        sides[0]: ((left - 20, top - 7), (left, y)),
        sides[1]: ((left + wide + 20, top - 7), (left + wide, y)),
        "up": ((left + wide * 0.5, top - 16), (left + wide * 0.5, top)),
        "down": ((left + wide * 0.5, top + high - 10), (left + wide * 0.5, top + high)),
    }
    items: list[Item] = []
    for letter, face in datums:
        if (side := lie.side(face)) in places:
            items += datum_letter(letter, *places[side])
    return items


def _clamped_on(
    set_up: SetUp, lie: Lying, datums: tuple[tuple[str, str], ...], width: float, height: float
) -> Drawing:
    """Held down on the table: clamps from above at both ends of what you see standing at the machine."""
    along, _, up = lie.size
    base = height - 24.0
    pack = 10.0 if rests_of(set_up.holding) else 0.0
    scale = min((width - 70) / along, (base - pack - 34) / up)
    wide, high = max(along * scale, 40.0), max(up * scale, 18.0)
    left, top = (width - wide) / 2, base - pack - high
    items: list[Item] = [Line(box(left, top, wide, high), "outline", closed=True)]
    if pack:
        items += _packing(left, wide, base, pack)
    for x in (left + 8, left + wide - 8):
        items += arrow((x, top - 20), (x, top), weight=2.2, head=8.0)
        items += mark_at("rests here", 8.0, x - 4, base - pack)
    table = box(left - 24, base + (0 if pack else 8), wide + 48, 6)
    items += [*hatched(table, apart=3.8), Line(table, "outline", closed=True)]
    items += _letters(lie, datums, ("left", "right"), left, wide, top, high, high)
    items.append(Text(width / 2, height - 2, "Seen from where you stand", "strong", "middle"))
    return Drawing(width, height, tuple(items))


def signs(set_up: SetUp, lie: Lying) -> tuple[str, ...]:
    """The signs that the legend must explain for this picture."""
    return ("rests here", "clamped", *(("jaw",) if in_jaws(set_up, lie) else ()))


def jaw_words(set_up: SetUp, datums: tuple[tuple[str, str], ...]) -> str:
    """Which face lies against the fixed jaw, by its letter where it has one."""
    letters = {face: letter for letter, face in datums}
    face = set_up.fixed_jaw
    return f"{f'{letters[face]}, ' if face in letters else ''}{face} face"
