"""The zero from above: the work between the jaws, where X and Y count from and which
way, points by number, the first cut.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Text
from jobsheet.drawing.making import arrow, box, hatched
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.holdings.placed import bodies_of
from jobsheet.model.held_work import Body
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying
from jobsheet.model.machine import Machine
from jobsheet.report.dial_words import ways
from jobsheet.report.holding_view import work_lines
from jobsheet.report.isometric import datum_letter
from jobsheet.report.pictured.closer import Closer
from jobsheet.report.pictured.cutter_begins import FirstCut, cutter_items
from jobsheet.report.pictured.numbered import (
    DETAILS,
    LEAST,
    crowds,
    detail,
    numbered,
    on_their_points,
    side_of,
)
from jobsheet.report.points import Point
from jobsheet.stock.lying_stock import silhouette

#: Lines of the work from above, for the left lower corner on the picture and a scale.
Seen = Callable[[float, float, float], tuple[Item, ...]]
JAW = 11.0
#: Room beside the work for letters and arrows: left, right and below [points].
LEFT, RIGHT, BOTTOM = 34.0, 46.0, 26.0
#: Where the arrow of X begins under the picture, behind the words where one stands, and its length [points].
UNDER, ARROW = 84.0, 28.0
#: So far from the frame of a detail the sign of a point is clear of it [points].
CLEAR = 9.0
#: Which way the table goes, as `dial_words.ways` says it, drawn.
_WAY = {"left": "◂", "right": "▸", "towards you": "▾", "away from you": "▴"}
#: Where a detail would make the picture beside it smaller than that, the numbers
#: stand on their points instead.
WORTH = 0.7
#: A detail that is not so much larger is none: the numbers stand on their points.
LARGER = 1.3
#: So many points that lie beside the work are named; they are not drawn.
MOST = 4
#: What is drawn larger is called so.
LETTERS = "ab"


def zero_picture(
    set_up: SetUp,
    lie: Lying,
    points: tuple[Point, ...],
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    seen: Seen | None = None,
    machine: Machine | None = None,
    without: frozenset[str] = frozenset(),
    first: FirstCut | None = None,
    *,
    counted: bool = True,
    into: Seen | None = None,
    closer: tuple[Closer, ...] = (),
) -> Drawing:
    """Seen from above, the person below: nothing here is turned the other way round.

    Points that stand too near for their numbers are drawn once more, larger, at the right.

    Parameters
    ----------
    seen : callable, optional
        The lines of the work itself for a left lower corner and a scale [points a metre];
        without it the work is its outline
    first : FirstCut, optional
        Where the cutter of the first cut begins and which way it is fed
    counted : bool
        Whether anything of the set-up counts from its zero: without that there is no zero to be shown
    into : callable, optional
        What else is drawn on the work, for its left lower corner and a scale, as `seen`
    closer : tuple of Closer
        Places that are drawn larger elsewhere: each is framed here and has its letter
    """
    signed = _Signed(set_up, lie, points, datums, width, height, beside=not closer)
    frame, side, spots, own = signed.frame, signed.side, signed.spots, signed.own
    signs, left_out = signed.signs, signed.left_out
    if left_out and not side:
        larger = frozenset(number for view in closer for number in view.numbers)
        signs, over = numbered(own, spots, frame.scale, all_of=True, within=frame.room, without=larger)
        signs, left_out = [*signs, *on_their_points(over, spots)], []
    x0, y0, scale, wide, high = frame.x0, frame.y0, frame.scale, frame.wide, frame.high
    held = (set_up, lie, machine, x0, y0, scale, wide, high, without)
    items: list[Item] = held_from_above(*held, over=False)
    items += work_lines(silhouette(lie, 0, 1)[: 1 if seen is not None else None], x0, y0 + high, scale)
    if seen is not None:
        items += seen(x0, y0 + high, scale)
    items += held_from_above(*held, over=True)
    if first is not None:
        items += cutter_items(first, x0, y0 + high, scale, (0.0, 0.0, x0 + wide + 14.0, height - 11.0))
    if into is not None:
        items += into(x0, y0 + high, scale)
    items += signs
    found = crowds(own, spots, left_out)
    most = DETAILS if 2 * side < height else 1
    for crowd in found[most:]:
        items += on_their_points([point for point in crowd if point in left_out], spots)
    for place, crowd in enumerate(found[:most]):
        name = f"detail {LETTERS[place]}"
        more, shown = detail(crowd, spots, name, (width - side, place * (side + 4)), scale, side)
        # The frame would run through the sign of a point that stands beside it:
        # that one belongs into the detail too.
        beside = tuple(point for point in own if point in crowd or _near(spots[point.number], shown))
        if beside != crowd:
            more, shown = detail(beside, spots, name, (width - side, place * (side + 4)), scale, side)
        if side - 10 < LARGER * (shown[2] - shown[0]):
            items += on_their_points([point for point in crowd if point in left_out], spots)
            continue
        items += [*_framed(shown, name[-1]), *more]
    for view, letter in zip(closer, LETTERS, strict=False):
        (left, foot), (right, top) = frame.at(*view.low), frame.at(*view.high)
        items += _framed((left, top, right, foot), letter)
    if counted:
        at = frame.at(*lie.zero(set_up))
        items += mark_at("zero", 15.0, at[0] - 7.5, at[1] - 7.5)
    right = 0.75 if first is None or not lie.size[0] * 0.8 < first.begins[0] else 0.4
    items += _letters(lie, datums, x0, y0, wide, high, right)
    items += _ways(set_up, frame, height)
    return Drawing(width, height, tuple(items))


def _framed(shown: tuple[float, float, float, float], letter: str) -> list[Item]:
    """The frame of what is drawn larger, and its letter."""
    left, top, right, foot = shown
    return [
        Line(box(left, top, right - left, foot - top), "dim", closed=True),
        Text(left - 2, top + 6, letter, "mark", "end", size=LEAST),
    ]


class _Signed:
    """The points of a set-up with their numbers, where these have room; `left_out` are those that have none,
    and `side` is the room for details beside the work [points], 0 where there is none.
    """

    __slots__ = ("frame", "left_out", "own", "side", "signs", "spots")

    def __init__(
        self,
        set_up: SetUp,
        lie: Lying,
        points: tuple[Point, ...],
        datums: tuple[tuple[str, str], ...],
        width: float,
        height: float,
        *,
        beside: bool,
    ) -> None:
        side = side_of(width, height) if beside else 0.0
        smaller = _Frame(lie, datums, width - side, height).scale
        self.side = side if smaller >= WORTH * _Frame(lie, datums, width, height).scale else 0.0
        for details in (0.0, self.side):
            self.frame = frame = _Frame(lie, datums, width - details, height)
            self.spots = {
                point.number: frame.at(*lie.from_corner(set_up, point.x, point.y))
                for point in points
                if _on(lie, set_up, point)
            }
            self.own = tuple(point for point in points if point.number in self.spots)
            self.signs, self.left_out = numbered(self.own, self.spots, frame.scale, within=frame.room)
            if not self.left_out or not self.side:
                break


class Crowded(Struct, frozen=True, kw_only=True):
    """What of a picture from above has no room there: its scale [points a metre], every point on the work with
    its place [m], and those of them whose numbers have none, by crowds.
    """

    scale: float
    points: tuple[tuple[Point, tuple[float, float]], ...]
    crowds: tuple[tuple[tuple[Point, tuple[float, float]], ...], ...]


def crowded(
    set_up: SetUp,
    lie: Lying,
    points: tuple[Point, ...],
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    *,
    beside: bool,
) -> Crowded:
    """What the picture of that size [points] has no room for, neither on the work nor in a detail beside it where
    one may stand there.
    """
    signed = _Signed(set_up, lie, points, datums, width, height, beside=beside)
    places = {point.number: lie.from_corner(set_up, point.x, point.y) for point in signed.own}
    over = crowds(signed.own, signed.spots, signed.left_out) if not signed.side else []
    return Crowded(
        scale=signed.frame.scale,
        points=tuple((point, places[point.number]) for point in signed.own),
        crowds=tuple(tuple((point, places[point.number]) for point in crowd) for crowd in over),
    )


class _Frame:
    """Where the work stands on the picture: its left upper corner, its size,
    and the scale [points a metre].
    """

    __slots__ = ("high", "scale", "wide", "width", "x0", "y0")

    def __init__(self, lie: Lying, datums: tuple[tuple[str, str], ...], width: float, height: float) -> None:
        along, across, _ = lie.size
        # Room for a letter behind the far jaw, where there is one.
        top = 27.0 if any(lie.side(face) == "far" for _, face in datums) else JAW + 4
        room = width - LEFT - RIGHT, height - top - BOTTOM
        self.width = width
        self.scale = min(room[0] / along, room[1] / across)
        self.wide, self.high = along * self.scale, across * self.scale
        self.x0 = LEFT + (room[0] - self.wide) / 2
        self.y0 = top + (room[1] - self.high) / 2

    @property
    def room(self) -> tuple[float, float, float, float]:
        """Where the work lies on the picture: left, top, right, bottom [points]."""
        return self.x0, self.y0, self.x0 + self.wide, self.y0 + self.high

    def at(self, x: float, y: float) -> tuple[float, float]:
        """A place of the work [m] on the picture."""
        return self.x0 + x * self.scale, self.y0 + self.high - y * self.scale


def _near(spot: tuple[float, float], shown: tuple[float, float, float, float]) -> bool:
    return shown[0] - CLEAR < spot[0] < shown[2] + CLEAR and shown[1] - CLEAR < spot[1] < shown[3] + CLEAR


def _on(lie: Lying, set_up: SetUp, point: Point) -> bool:
    x, y = lie.from_corner(set_up, point.x, point.y)
    return 0 <= x <= lie.size[0] and 0 <= y <= lie.size[1]


def beside_the_work(set_up: SetUp, lie: Lying, points: tuple[Point, ...]) -> str:
    """Which points lie beside the work and are not drawn; nothing where all lie on it."""
    along, across, _ = lie.size
    places = [(point.number, lie.from_corner(set_up, point.x, point.y)) for point in points]
    numbers = [str(number) for number, (x, y) in places if not (0 <= x <= along and 0 <= y <= across)]
    if not numbers:
        return ""
    more = f" and {len(numbers) - MOST} more" if len(numbers) > MOST else ""
    return f"not drawn, beside the work: {', '.join(numbers[:MOST])}{more}"


#: What lies so near to a side of the work is behind it [m].
_BEHIND = 1e-6
#: Parts that are seen beside or over the work from above; what lies under it is not.
_SEEN = (
    "fixed jaw",
    "moving jaw",
    "plate",
    "vee",
    "chuck",
    "dog",
    "tail",
    "strap",
    "stud",
    "screw",
    "stop",
    "bar",
)


def held_from_above(
    set_up: SetUp,
    lie: Lying,
    machine: Machine | None,
    x0: float,
    y0: float,
    scale: float,
    wide: float,
    high: float,
    without: frozenset[str],
    *,
    over: bool,
) -> list[Item]:
    """What holds the work, from above: jaws and stops beside it, or (`over`) the straps and screws on it.

    What reaches far is cut off so far beside the work that letters and arrows have their room.
    """
    items: list[Item] = []
    bodies = tuple(body for body in bodies_of(set_up, lie, machine) if body.part not in without)
    for body in _squeezed(bodies, lie, scale):
        if body.part not in _SEEN or (body.part in ("strap", "stud", "screw")) != over:
            continue
        left, right = (
            min(max(x0 + at * scale, x0 - JAW), x0 + wide + JAW) for at in (body.low[0], body.high[0])
        )
        far, near = (
            min(max(y0 + high - at * scale, y0 - JAW), y0 + high + JAW) for at in (body.high[1], body.low[1])
        )
        if right - left < 0.5 or near - far < 0.5:
            continue
        if body.axis == 2:
            # A round part keeps its shape and its middle; one that goes round
            # the work ends where its jaws would.
            radius = min(body.size[0] / 2 * scale, max(wide, high) / 2 + JAW)
            across = (
                x0 + (body.low[0] + body.high[0]) / 2 * scale,
                y0 + high - (body.low[1] + body.high[1]) / 2 * scale,
            )
            items.append(Ellipse(*across, radius, radius, fill="paper"))
            continue
        outline = box(left, far, right - left, near - far)
        if over or body.part in ("stop", "bar"):
            items.append(Line(outline, "outline", closed=True, fill="paper"))
        else:
            items += [*hatched(outline, apart=3.4), Line(outline, "outline", closed=True)]
    return items


def _squeezed(bodies: tuple[Body, ...], lie: Lying, scale: float) -> tuple[Body, ...]:
    """The bodies, bar and moving jaw drawn thinner where both have no room beside the
    work: the jaw behind a bar is seen too.
    """
    if not any(body.part == "bar" and body.axis in (0, 1) for body in bodies):
        return bodies
    kept = []
    for body in bodies:
        if body.part not in ("bar", "moving jaw"):
            kept.append(body)
            continue
        low, high = list(body.low), list(body.high)
        for axis in (0, 1):
            whole = lie.size[axis]
            if high[axis] <= _BEHIND:
                low[axis], high[axis] = (
                    _thinner(-at, bodies, axis, scale, whole) * -1 for at in (low[axis], high[axis])
                )
            elif low[axis] >= whole - _BEHIND:
                low[axis], high[axis] = (
                    whole + _thinner(at - whole, bodies, axis, scale, whole) for at in (low[axis], high[axis])
                )
        kept.append(replace(body, low=tuple(low), high=tuple(high)))
    return tuple(kept)


def _thinner(beside: float, bodies: tuple[Body, ...], axis: int, scale: float, whole: float) -> float:
    """A distance beside the work, so that the whole of the moving jaw has room there [m]."""
    jaws = [body for body in bodies if body.part == "moving jaw"]
    far = max((max(-body.low[axis], body.high[axis] - whole) for body in jaws), default=0.0)
    return beside * min(1.0, JAW / (far * scale)) if far > 0 else beside


def _letters(
    lie: Lying,
    datums: tuple[tuple[str, str], ...],
    x0: float,
    y0: float,
    wide: float,
    high: float,
    right: float,
) -> list[Item]:
    """The datum letters of the four sides, clear of jaws, arrows and the first cut; `right`
    is how far down that side, a share.
    """
    places = {
        "far": ((x0 + wide * 0.5, y0 - JAW - 10), (x0 + wide * 0.5, y0)),
        "near": ((x0 - 23, y0 + high + 8), (x0 + wide * 0.1, y0 + high)),
        "left": ((x0 - 20, y0 + high * 0.5), (x0, y0 + high * 0.5)),
        "right": ((x0 + wide + 20, y0 + high * right), (x0 + wide, y0 + high * right)),
    }
    items: list[Item] = []
    used: dict[str, int] = {}
    for letter, face in datums:
        side = lie.side(face)
        if side in places:
            (x, y), tip = places[side]
            shift = 20.0 * used.get(side, 0)
            used[side] = used.get(side, 0) + 1
            items += datum_letter(letter, (x + shift, y), tip)
    return items


def _ways(set_up: SetUp, frame: _Frame, height: float) -> list[Item]:
    """The X and Y arrows as they count on the work as it lies now, and which way the table
    goes so that each handle counts up.
    """
    table_x, table_y = ways(set_up)
    you = "You stand here ▾"
    right = set_up.zero.x_counts == "right"
    y = height - 5.0
    start, end = (UNDER, UNDER + ARROW) if right else (UNDER + ARROW, UNDER)
    items: list[Item] = [
        Text(0.0, height - 2, you, "strong"),
        *arrow((start, y), (end, y), weight=2.0, head=9.0),
        Text(UNDER + ARROW + 4, height - 2, "X +", "strong"),
        Text(UNDER + ARROW + 22, height - 2, f"table {_WAY[table_x]}", "small"),
    ]
    x = min(frame.x0 + frame.wide + 36, frame.width - 17)
    top, long = 20.0, min(ARROW, max(height - BOTTOM - 34, 16.0))
    away = set_up.zero.y_counts == "away"
    first, last = (top + long, top) if away else (top, top + long)
    items += arrow((x, first), (x, last), weight=2.0, head=9.0)
    items.append(Text(x, 7.5, "Y +", "strong", "middle"))
    items.append(Text(x, 16.5, f"table {_WAY[table_y]}", "small", "middle"))
    return items
