"""How the work is held, drawn from the bodies of its holding and true to their numbers: seen
from the end of the jaws, or standing.
"""

from __future__ import annotations

import math

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Text
from jobsheet.drawing.making import arrow, box, hatched
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.holdings.all_holdings import roles_of
from jobsheet.holdings.placed import bodies_of, height_under, in_jaws
from jobsheet.model.held_work import Body
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying
from jobsheet.model.machine import Machine
from jobsheet.model.profile import Points
from jobsheet.operations.shared.common import millimetres
from jobsheet.report.isometric import datum_letter
from jobsheet.stock.lying_stock import silhouette

#: Parts that are solid metal in the picture; those that lie under the work or hold it down are only outlined.
_HATCHED = ("fixed jaw", "moving jaw", "bed", "table", "vee", "plate", "chuck", "dog", "backing")
#: Drawn over the work: what stands on it or in front of it.
_OVER = ("strap", "stud", "screw")
#: Of what reaches far (a table, a long handle) only so much is drawn beside the work, as a
#: share of its size, and at least [m].
_BESIDE, _LEAST = 0.4, 0.028
#: The type of a size in the picture [points].
SIZE = 9.0
#: A part is drawn no thinner than that [points].
_THIN = 1.6


def holding_picture(
    set_up: SetUp,
    lie: Lying,
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    machine: Machine | None = None,
    without: frozenset[str] = frozenset(),
    units: str = "mm",
) -> Drawing:
    """The work among what holds it, to scale; the signs say where it rests and which way it is clamped.

    `without` are parts that a step took off before this sheet.
    """
    jawed = in_jaws(set_up, lie)
    side = lie.side(set_up.fixed_jaw)
    bodies = tuple(body for body in bodies_of(set_up, lie, machine) if body.part not in without)
    # A bar in its vees is seen from its end too, where the vee shows.
    end_on = side in ("near", "far") if jawed else lie.bar == 0 and any(body.vee for body in bodies)
    axis = 1 if end_on else 0
    span, high = lie.size[axis], lie.size[2]
    low, top = _window(bodies, axis, span, high)
    # The letter of the face that is up stands over the work.
    base = height - 24.0
    head = 26.0 if any(lie.side(face) == "up" for _, face in datums) else 20.0
    scale = min((width - 52) / (top[0] - low[0]), (base - head) / (top[1] - low[1]))
    left = (width - (top[0] - low[0]) * scale) / 2 - low[0] * scale
    floor = base + low[1] * scale

    def outline(body: Body) -> tuple[tuple[float, float], ...]:
        x0, x1 = (min(max(body.low[axis], low[0]), top[0]), max(min(body.high[axis], top[0]), low[0]))
        z0, z1 = (min(max(body.low[2], low[1]), top[1]), max(min(body.high[2], top[1]), low[1]))
        wide, tall = max((x1 - x0) * scale, _THIN), max((z1 - z0) * scale, _THIN)
        return box(left + x0 * scale, floor - z1 * scale, wide, tall)

    def vee_outline(body: Body) -> tuple[tuple[float, float], ...]:
        assert body.vee is not None
        middle, point, half = body.vee
        (x0, z0), (x1, z1) = (body.low[axis], body.low[2]), (body.high[axis], body.high[2])
        open_ = (z1 - point) * math.tan(half)
        corners = (
            (x0, z0), (x1, z0), (x1, z1), (middle + open_, z1), (middle, point), (middle - open_, z1), (x0, z1)
        )  # fmt: skip
        return tuple((left + x * scale, floor - max(z, low[1]) * scale) for x, z in corners)

    items: list[Item] = []
    for body in bodies:
        if body.part not in _OVER:
            items += _drawn(body, axis, vee_outline(body) if end_on and body.vee else outline(body))
    items += work_lines(silhouette(lie, axis, 2), left, floor, scale)
    for body in bodies:
        if body.part in _OVER:
            items += _drawn(body, axis, outline(body))
    rests: tuple[float, ...] = (2.0, span * scale - 10)
    if end_on and lie.is_curved(lie.down) and lie.bar == 0:
        # A bar touches what it lies on in one line; in a vee its flanks hold it, and the vee is seen.
        rests = () if any(body.vee for body in bodies) else (span * scale / 2 - 4,)
    items += _signs(
        set_up, bodies, rests, left, span * scale, floor, scale, high * scale, side if jawed else ""
    )
    sides = ("near", "far") if end_on else ("left", "right")
    items += _letters(lie, datums, sides, left, span * scale, floor - high * scale, high * scale)
    items += _stands_over(set_up, bodies, left + span * scale, floor, scale, high)
    if lies_on := words_under(set_up, lie, machine, units):
        items += _high_under(lies_on, bodies, axis, left, floor, scale)
    if jawed:
        names = ("moving jaw", "fixed jaw") if side in ("far", "right") else ("fixed jaw", "moving jaw")
        items.append(Text(0, base + 9, names[0], "caption", "start"))
        items.append(Text(width, base + 9, names[1], "caption", "end"))
    elif not roles_of(set_up.holding).holds:
        items.append(Text(width / 2, base + 9, "nothing holds it yet", "caption", "middle"))
    elif not bodies:
        items.append(Text(width / 2, base + 9, "held as the words say: not drawn", "caption", "middle"))
    if end_on:
        items.append(Text(0, height - 2, "You stand at this side ◂", "strong"))
    else:
        items.append(Text(width / 2, height - 2, "Seen from where you stand", "strong", "middle"))
    return Drawing(width, height, tuple(items))


def _window(
    bodies: tuple[Body, ...], axis: int, span: float, high: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    """What is drawn: the work, and so much beside it as there are parts, within bounds [m]."""
    most = (max(_BESIDE * span, _LEAST), max(_BESIDE * high, _LEAST))
    low, top = [0.0, 0.0], [span, high]
    for body in bodies:
        for at, way in ((0, axis), (1, 2)):
            low[at] = min(low[at], max(body.low[way], -most[at]))
            top[at] = max(top[at], min(body.high[way], (span, high)[at] + most[at]))
    return (low[0], low[1]), (top[0], top[1])


def work_lines(seen: tuple[Points, ...], left: float, floor: float, scale: float) -> list[Item]:
    """The work as it is seen: its outline, a bore inside it, its edges; `left`,
    `floor` is where its nought is [points].
    """
    items: list[Item] = []
    for at, points in enumerate(seen):
        placed = tuple((left + x * scale, floor - y * scale) for x, y in points)
        if len(placed) == 2:
            items.append(Line(placed, "thin"))
        else:
            items.append(Line(placed, "outline" if at == 0 else "thin", closed=True, fill="paper"))
    return items


def _drawn(body: Body, axis: int, outline: tuple[tuple[float, float], ...]) -> list[Item]:
    """One part: solid metal hatched, a round part seen from its end as a circle."""
    if body.axis == 1 - axis:  # one looks along it
        (x0, y0), _, (x1, y1), _ = outline
        return [Ellipse((x0 + x1) / 2, (y0 + y1) / 2, (x1 - x0) / 2, (y1 - y0) / 2, fill="paper")]
    if body.part in _HATCHED:
        return [*hatched(outline, apart=3.8), Line(outline, "outline", closed=True)]
    return [
        Line(outline, "outline" if body.part in (*_OVER, "parallel") else "thin", closed=True, fill="paper")
    ]


def _signs(
    set_up: SetUp,
    bodies: tuple[Body, ...],
    rests: tuple[float, ...],
    left: float,
    wide: float,
    floor: float,
    scale: float,
    high: float,
    fixed: str,
) -> list[Item]:
    """Triangles where it rests, a filled one at the fixed jaw, arrows of the clamping."""
    if not roles_of(set_up.holding).holds:
        return []
    items: list[Item] = []
    plays = roles_of(set_up.holding)
    if not plays.turns and not plays.in_words:
        for x in rests:
            items += mark_at("rests here", 8.0, left + x, floor)
    if not fixed:
        if plays.on_top and any(body.part == "strap" for body in bodies):
            for x in (left + 8, left + wide - 8):
                items += arrow((x, floor - high - 18), (x, floor - high), weight=2.2, head=8.0)
        return items
    middle = floor - _grip_middle(bodies, scale, high)
    right = fixed in ("far", "right")
    tip, back = (left + wide, -1.0) if right else (left, 1.0)
    size = 7.0
    points = (
        (tip, middle),
        (tip - back * size, middle - size * 0.55),
        (tip - back * size, middle + size * 0.55),
    )
    items.append(Line(points, 0.0, closed=True, fill="ink"))
    start = left - 19 if right else left + wide + 19
    items += arrow((start, middle), (left if right else left + wide, middle), weight=2.2, head=8.0)
    return items


def _stands_over(
    set_up: SetUp, bodies: tuple[Body, ...], right: float, floor: float, scale: float, high: float
) -> list[Item]:
    """How far the work stands over the jaws, as typed, between two lines at the right: what
    an indicator or a rule is held to.
    """
    above = getattr(set_up.holding, "above_jaws", None)
    jaws = [body.high[2] for body in bodies if body.part == "fixed jaw"]
    if above is None or not jaws or not 0 < jaws[0] < high:
        return []
    top, foot = floor - high * scale, floor - jaws[0] * scale
    x = right + 15.0
    items: list[Item] = [Line(((right + 2, top), (x + 3, top)), "thin")]
    if foot - top > 9:
        items += arrow((x, top), (x, foot), both=True)
    return [*items, Text(x + 5, max((top + foot) / 2 + 3.2, top + 8.5), above.text, "size")]


def words_under(set_up: SetUp, lie: Lying, machine: Machine | None, units: str) -> str:
    """How high parallels or packing are: as typed, else as it follows; nothing where neither is known."""
    typed = getattr(set_up.holding, "parallels", None)
    if typed is not None:
        return str(typed.text)
    high = height_under(set_up, lie, machine)
    return millimetres(high, units)[0] if high is not None else ""


def _high_under(
    words: str, bodies: tuple[Body, ...], axis: int, left: float, floor: float, scale: float
) -> list[Item]:
    """How high what the work lies on is, between the two parallels or on the
    packing: which pair is to be fetched.
    """
    under = sorted(
        (body.low[axis], body.high[axis], body.low[2])
        for body in bodies
        if body.part in ("parallel", "packing")
    )
    if not under:
        return []
    pair = len(under) > 1
    start, end = (under[0][1], under[-1][0]) if pair else under[0][:2]
    middle, foot = left + (start + end) / 2 * scale, floor - under[0][2] * scale
    wide = 0.62 * SIZE * len(words) + 4
    if foot - floor < SIZE + 1 or (end - start) * scale < wide + 10:
        return []
    x = middle - wide / 2
    ground = box(x + 4, (floor + foot) / 2 - SIZE / 2, wide, SIZE)
    return [
        *arrow((x, floor), (x, foot), both=True),
        *(() if pair else (Line(ground, 0.0, closed=True, fill="paper"),)),
        Text(x + 5, (floor + foot) / 2 + 3.2, words, "size"),
    ]


def _grip_middle(bodies: tuple[Body, ...], scale: float, high: float) -> float:
    """How high above the foot of the work the middle of the grip is in the picture."""
    for body in bodies:
        if body.part == "fixed jaw":
            return (max(body.low[2], 0.0) + min(body.high[2], high / scale)) / 2 * scale
    return high * 0.4


def _letters(
    lie: Lying,
    datums: tuple[tuple[str, str], ...],
    sides: tuple[str, str],
    left: float,
    wide: float,
    top: float,
    high: float,
) -> list[Item]:
    """The letters of the faces that this view cuts: both sides, top and bottom."""
    y = top + min(max(high * 0.15, 5.0), high / 2)
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


def signs(set_up: SetUp, lie: Lying) -> tuple[str, ...]:
    """The signs that the legend must explain for this picture."""
    return ("rests here", "clamped", *(("jaw",) if in_jaws(set_up, lie) else ()))


def jaw_words(set_up: SetUp, datums: tuple[tuple[str, str], ...]) -> str:
    """Which face lies against the fixed jaw, by its letter where it has one."""
    letters = {face: letter for letter, face in datums}
    face = set_up.fixed_jaw
    return f"{f'{letters[face]}, ' if face in letters else ''}{face} face"
