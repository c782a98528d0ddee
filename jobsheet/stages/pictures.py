"""Pictures of a stage as neutral drawings: isometric as held, plan, front and
side, each with exact hidden lines.

What the step cut is heavy, what it removed dashed; other hidden edges are dashed too where they are asked
for. Lines only, no bitmaps: window and sheet paint the same values.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from jobsheet.drawing.drawn import Drawing, Item, Line, Point, Text
from jobsheet.model.lying import NORMALS, Lying
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.stages.bodies import MM
from jobsheet.stages.hidden import Lines, chained, hidden_lines
from jobsheet.stages.solids import Stage

#: Rows are right and up on the picture and towards the eye, in the frame of the
#: work as it lies (right, away, up).
_R2, _R3, _R6 = math.sqrt(2), math.sqrt(3), math.sqrt(6)
VIEWS: dict[str, tuple[tuple[float, float, float], ...]] = {
    "iso": ((1 / _R2, 1 / _R2, 0), (-1 / _R6, 1 / _R6, 2 / _R6), (1 / _R3, -1 / _R3, 1 / _R3)),
    "plan": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "front": ((1, 0, 0), (0, 0, 1), (0, -1, 0)),
    "side": ((0, 1, 0), (0, 0, 1), (1, 0, 0)),
}
#: Isometric lengths along the axes are shortened by this.
SHORT = math.sqrt(2 / 3)


def frame_of(lie: Lying) -> Any:
    """Rows: right, away and up of the work as it lies, in the drawing's axes."""
    return np.array([NORMALS[face] for face in (lie.right, lie.far, lie.up)], float)


def view_of(lie: Lying, view: str) -> Any:
    """The view's rows in the drawing's axes."""
    return np.array(VIEWS[view], float) @ frame_of(lie)


def lines_of(stage: Stage, lie: Lying, view: str) -> Lines:
    """The lines of a stage, remembered with it."""
    key = (view, lie.near, lie.up)
    known: Lines | None = stage.pictures.get(key)
    if known is None:
        points, triangles, fresh = stage.mesh()
        known = stage.pictures[key] = hidden_lines(points, triangles, fresh, view_of(lie, view))
    return known


class Placed:
    """Where a picture's own millimetres lie on the drawing: its scale and its shift [points]."""

    __slots__ = ("dx", "dy", "scale")

    def __init__(self, scale: float, dx: float, dy: float) -> None:
        self.scale, self.dx, self.dy = scale, dx, dy

    def at(self, x: float, y: float) -> Point:
        """A place of the picture plane [mm], y upward, on the drawing."""
        return x * self.scale + self.dx, self.dy - y * self.scale


def fitted(
    box: Any, lie: Lying, view: str, width: float, height: float, margin: tuple[float, float, float, float]
) -> Placed:
    """The largest picture of a box of the drawing's axes [m] that fits; `margin` is
    left, top, right, bottom [points].
    """
    rows = view_of(lie, view)
    corners = np.array([(x, y, z) for x in box[0] for y in box[1] for z in box[2]], float) * MM @ rows.T
    low, high = corners[:, :2].min(axis=0), corners[:, :2].max(axis=0)
    room = (width - margin[0] - margin[2], height - margin[1] - margin[3])
    size = np.maximum(high - low, 1e-9)
    scale = float(min(room[0] / size[0], room[1] / size[1]))
    dx = margin[0] + (room[0] - size[0] * scale) / 2 - low[0] * scale
    dy = margin[1] + (room[1] - size[1] * scale) / 2 + high[1] * scale
    return Placed(scale, float(dx), float(dy))


def stage_items(
    stage: Stage, lie: Lying, view: str, placed: Placed, *, hidden: bool = False, now: bool = True
) -> tuple[Item, ...]:
    """The lines of a stage; with `now` what its step cut is heavy and what it removed dashed."""
    lines = lines_of(stage, lie, view)
    items: list[Item] = []
    if now and stage.before is not None and stage.tool is not None:
        items += _removed(stage, lie, view, placed)
    if hidden:
        fresh = lines.fresh_hidden if now else np.zeros(len(lines.hidden), bool)
        items += _strokes(_once(lines.hidden[~fresh], lines.seen), placed, "thin", "pencil", "pencil")
        items += _strokes(_once(lines.hidden[fresh], lines.seen), placed, "outline", "pencil", "ink")
    heavy = lines.fresh_seen if now else np.zeros(len(lines.seen), bool)
    items += _strokes(lines.seen[~heavy], placed, "outline", "", "ink")
    items += _strokes(lines.seen[heavy], placed, "cut", "", "ink")
    items += _threads(stage, lie, view, placed)
    return tuple(items)


def _strokes(stretches: Any, placed: Placed, weight: str, dash: str, ink: str) -> list[Item]:
    size = float(np.ptp(stretches)) if len(stretches) else 1.0
    return [
        Line(tuple(placed.at(x, y) for x, y in line), weight, dash=dash, ink=ink)
        for line in chained(stretches, size)
    ]


def _once(hidden: Any, seen: Any) -> Any:
    """Hidden stretches that lie under no seen one and not under each other: dashes
    doubled up would make a full line.
    """
    if not len(hidden):
        return hidden
    kept: dict[tuple[int, ...], Any] = {}
    size = float(np.ptp(hidden)) or 1.0
    step = size * 1e-4
    taken = {_key(one, step) for one in seen}
    for one in hidden:
        key = _key(one, step)
        if key not in taken:
            kept.setdefault(key, one)
    return np.array(list(kept.values()), float).reshape(-1, 4)


def _key(stretch: Any, step: float) -> tuple[int, ...]:
    ends = sorted(
        (
            tuple(round(float(v) / step) for v in stretch[:2]),
            tuple(round(float(v) / step) for v in stretch[2:]),
        )
    )
    return (*ends[0], *ends[1])


def _removed(stage: Stage, lie: Lying, view: str, placed: Placed) -> list[Item]:
    """Outlines of the work before that are no longer there, outside of what is there now."""
    before = stage.before
    if before is None or stage.cut is None or stage.cut.before.box == stage.cut.after.box:
        return []  # nothing came off a whole side
    old = lines_of(before, lie, view).seen
    new = lines_of(stage, lie, view).seen
    if not len(old):
        return []  # all was gone before
    size = float(np.ptp(old)) or 1.0
    taken = {_key(one, size * 1e-4) for one in new}
    gone = np.array([one for one in old if _key(one, size * 1e-4) not in taken], float).reshape(-1, 4)
    # Only what lies beside the work now: inside its outline dashes would be read as hidden edges.
    outside = _outside(gone, new)
    return _strokes(gone[outside], placed, "thin", "removed", "pencil")


def _outside(stretches: Any, outline: Any) -> Any:
    """Which stretches have their middle outside the hull of the work as it is now."""
    if not len(stretches) or not len(outline):
        return np.ones(len(stretches), bool)
    # Each once: numpy's own way to that imports its masked arrays first, a tenth of numpy.
    points = np.round(np.concatenate([outline[:, :2], outline[:, 2:]]), 6).tolist()
    hull = _hull(list({(x, y) for x, y in points}))
    middles = (stretches[:, :2] + stretches[:, 2:]) / 2
    inside = np.ones(len(middles), bool)
    for (x1, y1), (x2, y2) in zip(hull, [*hull[1:], hull[0]], strict=True):
        length = math.hypot(x2 - x1, y2 - y1)
        turned = (x2 - x1) * (middles[:, 1] - y1) - (y2 - y1) * (middles[:, 0] - x1)
        inside &= turned > -1e-6 * length
    return ~inside


def _hull(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """The convex outline of points, counter-clockwise (monotone chain)."""
    points = sorted(points)

    def half(line: list[tuple[float, float]]) -> list[tuple[float, float]]:
        kept: list[tuple[float, float]] = []
        for x, y in line:
            while len(kept) > 1 and (kept[-1][0] - kept[-2][0]) * (y - kept[-2][1]) <= (
                kept[-1][1] - kept[-2][1]
            ) * (x - kept[-2][0]):
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    return half(points) + half(points[::-1])


def size_items(stage: Stage, lie: Lying, placed: Placed, units: str = "mm") -> tuple[Item, ...]:
    """The sizes that this step makes: a layer's depth at the right corner, the
    diameter of the first hole of each size.
    """
    cut = stage.cut
    if cut is None:
        return ()
    items: list[Item] = []
    said: set[str] = set()
    along, across, high = (size * MM for size in lie.size)
    for sized in sorted(cut.shapes, key=lambda sized: -sum(sized.corners[0]) if sized.corners else 0.0):
        shape = sized.shape
        if isinstance(shape, Hole) and not shape.threaded:
            words, round_ = _length(shape.diameter, units), True
            x, y = (value * MM for value in sized.corners[0])
            reach = shape.diameter * MM * 0.35
            spot = (x + reach, y + reach, high)
        elif isinstance(shape, Slab):
            words, round_, spot = (
                _length(shape.depth, units),
                False,
                (along, across, high - shape.depth * MM / 2),
            )
        elif isinstance(shape, Edge):
            words, round_, spot = _length(shape.width, units), False, (along, across, high)
        elif isinstance(shape, Groove):
            words, round_ = _length(shape.width, units), False
            x, y = (value * MM for value in sized.corners[1])
            spot = (x, y, high)
        else:
            continue
        if words in said:
            continue
        said.add(words)
        start = placed.at(*_on(lie, "iso", spot))
        end = (start[0] + 11, start[1] - (11 if round_ else 0))
        items.append(Line((start, end), "thin", ink="pencil"))
        items.append(Text(end[0] + 3, end[1] + 3, f"⌀ {words}" if round_ else words, "size"))
    return tuple(items)


def features(
    stages: Sequence[Stage], lie: Lying, placed: Placed
) -> tuple[tuple[float, float, float, str], ...]:
    """Where on a picture the holes, slots and pockets lie whose steps were made in the same
    hold: place, reach, the step's key.

    The last step at a place comes first: it is what one sees there.
    """
    seen: list[tuple[float, float, float, str]] = []
    high = lie.size[2] * MM
    for stage in reversed(stages):
        cut = stage.cut
        if cut is None or (cut.before.near, cut.before.up) != (lie.near, lie.up):
            continue
        for sized in cut.shapes:
            shape = sized.shape
            if isinstance(shape, Hole):
                reach = shape.diameter * MM / 2
            elif isinstance(shape, Groove):
                reach = shape.width * MM / 2
            elif isinstance(shape, Recess):
                reach = min(shape.length, shape.width) * MM / 2
            else:
                continue
            middle = [sum(at[axis] for at in sized.corners) / len(sized.corners) * MM for axis in (0, 1)]
            for x, y in {(middle[0], middle[1]), *((a * MM, b * MM) for a, b in sized.corners)}:
                u, v = placed.at(*_on(lie, "iso", (x, y, high)))
                seen.append((u, v, max(reach * placed.scale, 3.0), cut.key))
    return tuple(seen)


def _length(value: float, units: str) -> str:
    text = f"{value * 1e3:.2f}" if units == "mm" else f"{value / 0.0254:.3f}"
    return text.rstrip("0").rstrip(".")


def _on(lie: Lying, view: str, point: tuple[float, float, float]) -> tuple[float, float]:
    """A place of the work as it lies [mm] on the picture plane."""
    x, y, _ = np.array(VIEWS[view], float) @ np.array(point, float)
    left, low = corner_on(lie, view)
    return float(x) + left, float(y) + low


def _threads(stage: Stage, lie: Lying, view: str, placed: Placed) -> list[Item]:
    """Threads on the face that is seen from above: three quarters of a thin circle at the major diameter."""
    if view not in ("iso", "plan"):
        return []
    items: list[Item] = []
    at: Stage | None = stage
    while at is not None and at.cut is not None:
        cut = at.cut
        if cut.before.up == lie.up and cut.before.near == lie.near:
            threads = [
                sized for sized in cut.shapes if isinstance(sized.shape, Hole) and sized.shape.threaded
            ]
            items += [_thread(sized, cut.before, lie, view, placed) for sized in threads]
        at = at.before
    return items


def _thread(sized: Any, cut: Lying, lie: Lying, view: str, placed: Placed) -> Item:
    rows = np.array(VIEWS[view], float)
    corner = _corner(cut)
    x, y = (value * MM for value in sized.corners[0])
    radius = sized.shape.diameter * MM / 2
    turns = np.linspace(math.radians(-80), math.radians(190), 28)
    ring = np.column_stack(
        [x + radius * np.cos(turns), y + radius * np.sin(turns), np.full(len(turns), lie.size[2] * MM)]
    )
    # The ring is in the frame as it lies; the picture's nought is the drawing's.
    shift = frame_of(lie) @ corner
    shift[2] = (frame_of(lie) @ _corner(lie))[2]
    flat = (ring + shift) @ rows.T
    return Line(tuple(placed.at(float(a), float(b)) for a, b, _ in flat), "thin")


def corner_on(lie: Lying, view: str) -> tuple[float, float]:
    """Where the left near lower corner of the work as it lies is on the picture plane [mm]."""
    x, y, _ = view_of(lie, view) @ _corner(lie)
    return float(x), float(y)


def _corner(lie: Lying) -> Any:
    """The left near lower corner of the work as it lies, in the drawing's axes [mm]."""
    corner = [0.0, 0.0, 0.0]
    for face in (lie.left, lie.near, lie.down):
        normal = NORMALS[face]
        axis = next(index for index, part in enumerate(normal) if part)
        corner[axis] = lie.box[axis][1 if normal[axis] > 0 else 0] * MM
    return np.array(corner)


def picture(
    stage: Stage,
    view: str,
    width: float,
    height: float,
    *,
    lie: Lying | None = None,
    hidden: bool = False,
    now: bool = True,
    margin: tuple[float, float, float, float] = (6, 6, 6, 6),
) -> Drawing:
    """One stage in one view, as it is held unless another way is given."""
    held = lie or (stage.cut.before if stage.cut is not None else None)
    if held is None:
        held = Lying(
            near="front", far="rear", left="left", right="right", up="top", down="bottom", box=stage.box
        )
    placed = fitted(held.box, held, view, width, height, margin)
    return Drawing(width, height, stage_items(stage, held, view, placed, hidden=hidden, now=now))
