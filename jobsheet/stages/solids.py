"""Solids of the stages: stock less what the steps took away. Millimetres inside, because the
modeller is built for sizes near one.

The modeller is imported when the first solid is asked for, numpy with the first mesh: whoever asks volumes and
boxes alone needs none, and it takes five times as long to import. A stage is remembered together with all that
came before it, so that an edit works again only from the step that changed.
"""

from __future__ import annotations

import math
import threading
from typing import Any

import manifold3d as m3

from jobsheet.model.lying import NORMALS, Box, Lying
from jobsheet.model.not_checked import alone
from jobsheet.model.shape import Bevel, Edge, Groove, Hole, Recess, Slab
from jobsheet.model.stock import Outline
from jobsheet.remembered import forgotten_with_the_plan
from jobsheet.stages.bodies import MM, Body
from jobsheet.stages.course import Course, Cut, Sized, is_through, takes_away

#: Cutters stick out of the surface by so much, so that no faces coincide [mm].
OUT = 1.0
#: Sides of a full circle: facets below the angle at which an edge counts as sharp.
ROUND = 48
#: So many chains of steps are kept, and twice those of a job that has more; how many
#: solids of them is for `bodies` to say.
KEPT = 32

m3.set_circular_segments(ROUND)


class Stage:
    """One stage: the solid after a step, the solid of what its cutters passed
    through, and the step itself.
    """

    __slots__ = ("_mesh", "before", "body", "cut", "doubtful", "failed", "fresh", "pictures", "tool")

    def __init__(self, cut: Cut | None, before: Stage | None, body: Body, tool: Any) -> None:
        self.cut = cut
        self.before = before
        self.body = body
        self.tool = tool
        #: Why its step could not be cut; the solid is then that before it.
        self.failed = ""
        #: Whether a step up to here could not be cut: nothing of it is kept, it may go well the next time.
        self.doubtful: bool = before is not None and before.doubtful
        #: Ids of the cutters whose surfaces count as cut now.
        self.fresh: frozenset[int] = frozenset() if tool is None else frozenset((tool.original_id(),))
        self._mesh: Any = None
        #: Lines by view and lie, kept by `pictures`.
        self.pictures: dict[tuple[str, str, str], Any] = {}

    @property
    def solid(self) -> Any:
        """The work after the step [mm]; cut again where it was let go."""
        return self.body.solid

    @property
    def box(self) -> Box:
        """The box round the solid, in the drawing's axes [m]."""
        return self.body.box

    @property
    def volume(self) -> float:
        """Volume of the work [m³]."""
        return self.body.volume

    @property
    def removed(self) -> float:
        """Volume that this step takes from the work as it was [m³]."""
        return self.before.volume - self.volume if self.before is not None else 0.0

    def under(self, cut: Cut, before: Stage) -> Stage:
        """The same solid under the step that it now belongs to; what was made of it is shared."""
        made = Stage(cut, before, self.body, self.tool)
        made._mesh, made.pictures = self._mesh, self.pictures
        made.failed, made.doubtful = self.failed, self.doubtful
        return made

    def since(self, first: Stage) -> Stage:
        """The same work with all that was cut since an earlier stage as cut now."""
        made = Stage(self.cut, first, self.body, self.tool)
        ids: set[int] = set()
        at: Stage | None = self
        while at is not None and at is not first:
            ids |= at.fresh
            at = at.before
        made.fresh = frozenset(ids)
        return made

    def cut_by(self, keys: frozenset[str]) -> Stage:
        """The same work with all that these steps cut as cut now, whenever that was."""
        made = Stage(self.cut, None, self.body, None)
        ids: set[int] = set()
        at: Stage | None = self
        while at is not None:
            if at.cut is not None and at.cut.key in keys:
                ids |= at.fresh
            at = at.before
        made.fresh = frozenset(ids)
        return made

    def mesh(self) -> tuple[Any, Any, Any]:
        """Vertices [mm], triangles, and for each triangle whether this step cut it; made once."""
        if self._mesh is None:
            self._mesh = _mesh_of(self)
        found: tuple[Any, Any, Any] = self._mesh
        return found


class Modeller:
    """Makes the stages of courses, and remembers each by the chain of steps that leads to it."""

    def __init__(self) -> None:
        #: The one that was asked for last stands last.
        self._known: dict[int, tuple[tuple[Any, ...], Stage]] = {}
        self._most = KEPT
        #: Pages are made beside the window, which asks the same modeller whether
        #: a fix leaves the part as it is.
        self._lock = threading.Lock()

    def stages(self, course: Course) -> list[Stage]:
        """The stock and the work after each step, in their order."""
        return list(self.in_turn(course))

    def in_turn(self, course: Course) -> Any:
        """The same one by one, so that a caller can stop between two."""
        self._most = max(KEPT, 2 * len(course.cuts) + 2)
        chain: tuple[Any, ...] = ("stock", course.stock, course.outline)
        stage = self._remember(chain, lambda: Stage(None, None, Body(_blank(course)), None))
        yield stage
        for cut in course.cuts:
            mark = hash((hash(chain), cut.fingerprint))
            chain = (mark, cut.fingerprint)
            before = stage
            stage = self._remember(chain, lambda before=before, cut=cut: _tried(before, cut))
            if stage.cut is not cut:
                stage = stage.under(cut, before)
            yield stage

    def _remember(self, chain: tuple[Any, ...], make: Any) -> Stage:
        key = hash(chain)
        with self._lock:
            known = self._known.get(key)
            if known is not None and known[0] == chain:
                self._known[key] = self._known.pop(key)
                return known[1]
            while len(self._known) >= self._most:
                del self._known[next(iter(self._known))]
        stage: Stage = make()
        if not stage.doubtful:
            with self._lock:
                self._known[key] = (chain, stage)
        return stage


_SHARED: list[Modeller] = []
forgotten_with_the_plan(_SHARED.clear)


def shared() -> Modeller:
    """The one that rules, sheet and command line ask, so that the same work is made
    once; the window's worker has its own.
    """
    if not _SHARED:
        _SHARED.append(Modeller())
    return _SHARED[0]


def _step(before: Stage, cut: Cut) -> Stage:
    """The work after one step; a step that takes nothing leaves the very same solid."""
    lie = cut.before
    parts = [part for sized in cut.shapes if takes_away(sized.shape) for part in _parts(sized, lie)]
    if not parts:
        return Stage(cut, before, before.body, None)
    tool = parts[0] if len(parts) == 1 else m3.Manifold.batch_boolean(parts, m3.OpType.Add)
    tool = tool.transform(_frame(lie)).as_original()
    return Stage(cut, before, Body(before.solid - tool, before.body, tool), tool)


def _tried(before: Stage, cut: Cut) -> Stage:
    """The work after a step, or as it was where the modeller cannot make what the step leaves."""

    def uncut(why: str) -> Stage:
        made = Stage(cut, before, before.body, None)
        made.failed, made.doubtful = why, True
        return made

    return alone(lambda: _step(before, cut), uncut)


def _box(box: Any) -> Any:
    (x0, x1), (y0, y1), (z0, z1) = box
    size = ((x1 - x0) * MM, (y1 - y0) * MM, (z1 - z0) * MM)
    return m3.Manifold.cube(size).translate((x0 * MM, y0 * MM, z0 * MM)).as_original()


def _blank(course: Course) -> Any:
    """The stock: a box, or its outline drawn out along its axis."""
    outline = course.outline
    return _box(course.stock) if outline is None else drawn_out(outline)


def drawn_out(outline: Outline) -> Any:
    """The solid of an outline [mm]; walls that lean do so on all sides alike."""
    rings = [[(u * MM, v * MM) for u, v in ring] for ring in (outline.outer, outline.inner) if ring]
    flat = m3.CrossSection(rings, m3.FillRule.EvenOdd)
    if outline.lean > 0:
        wide, deep = (max(one[at] for one in outline.outer) * MM for at in (0, 1))
        top = tuple(1 - 2 * outline.lean * MM / size for size in (wide, deep))
        solid = flat.translate((-wide / 2, -deep / 2)).extrude(outline.long * MM, scale_top=top)
        solid = solid.translate((wide / 2, deep / 2, 0))
    else:
        solid = flat.extrude(outline.long * MM)
    first, second = (axis for axis in range(3) if axis != outline.axis)
    # Along u, along v, along the axis, and no shift.
    turned = [
        (*(1.0 if axis == to else 0.0 for to in (first, second, outline.axis)), 0.0) for axis in range(3)
    ]
    return solid.transform(turned).as_original()


def _frame(lie: Lying) -> Any:
    """From the work as it lies (right, away, up; its left near lower corner at
    nought) to the drawing's axes [mm].
    """
    columns = [NORMALS[face] for face in (lie.right, lie.far, lie.up)]
    corner = [0.0, 0.0, 0.0]
    for face in (lie.left, lie.near, lie.down):
        normal = NORMALS[face]
        axis = next(index for index, part in enumerate(normal) if part)
        corner[axis] = lie.box[axis][1 if normal[axis] > 0 else 0] * MM
    return [tuple(map(float, row)) for row in zip(*columns, corner, strict=True)]


def _parts(sized: Sized, lie: Lying) -> list[Any]:
    """The solids of one shape in the frame of the work as it lies [mm]."""
    along, across, high = (size * MM for size in lie.size)
    shape = sized.shape
    down = high + OUT if is_through(sized, lie.size[2]) else (sized.depth or 0.0) * MM
    if isinstance(shape, Slab):
        return [_block((-OUT, -OUT, high - shape.depth * MM), (along + OUT, across + OUT, high + OUT))]
    if isinstance(shape, Edge):
        return [_edge(shape, along, across, high, down)]
    if isinstance(shape, Hole):
        return _hole(shape, sized, high)
    if isinstance(shape, Groove):
        flat = _stadium([(x * MM, y * MM) for x, y in sized.corners], shape.width * MM)
        return [flat.extrude(down + OUT).translate((0, 0, high - down))] if down > 0 else []
    if isinstance(shape, Recess):
        flat = _rounded(sized.corners[0], shape)
        return [flat.extrude(down + OUT).translate((0, 0, high - down))] if down > 0 else []
    return _bevels(shape, along, across, high)


def _block(low: tuple[float, float, float], top: tuple[float, float, float]) -> Any:
    size = tuple(b - a for a, b in zip(low, top, strict=True))
    return m3.Manifold.cube(size).translate(low) if min(size) > 0 else m3.Manifold()


def _edge(shape: Edge, along: float, across: float, high: float, down: float) -> Any:
    wide = shape.width * MM
    x0, x1, y0, y1 = -OUT, along + OUT, -OUT, across + OUT
    if shape.side == "left":
        x1 = wide
    elif shape.side == "right":
        x0 = along - wide
    elif shape.side == "front":
        y1 = wide
    else:
        y0 = across - wide
    return _block((x0, y0, high - down), (x1, y1, high + OUT))


def _hole(shape: Hole, sized: Sized, high: float) -> list[Any]:
    """A cylinder with its point, by revolving its outline; a through hole leaves at the bottom."""
    x, y = (place * MM for place in sized.corners[0])
    radius = shape.diameter * MM / 2
    if radius <= 0:
        return []
    through = sized.depth is None
    begins = sized.top * MM
    # What is straight passes through the air over a floor; a cone alone would not, it begins on the floor.
    straight = high + OUT if through else begins + sized.depth * MM if sized.depth else 0.0
    high -= 0.0 if straight else begins
    tip = 0.0
    if shape.point_angle and not through:
        tip = radius / math.tan(min(shape.point_angle, math.pi * 0.999) / 2)
    outline = [(0.0, OUT), (0.0, -straight - tip)]
    if straight > 0:
        outline += [(radius, -straight), (radius, OUT)]
    else:
        # A cone alone opens as it rises, so that it does not cut a wall above
        # the surface; there is none to cut.
        outline.append((radius * (1 + OUT / tip) if tip else radius, OUT))
    flat = m3.CrossSection([outline], m3.FillRule.Positive)
    if flat.is_empty():
        flat = m3.CrossSection([outline[::-1]], m3.FillRule.Positive)
    return [flat.revolve(_sides(radius)).translate((x, y, high))]


def _sides(radius: float) -> int:
    """Fewer facets on small holes, never so few that a facet's edge counts as sharp."""
    return 24 if radius < 2 else 32 if radius < 6 else ROUND


def _stadium(ends: list[tuple[float, float]], width: float) -> Any:
    one = m3.CrossSection.circle(width / 2, _sides(width / 2))
    (x1, y1), (x2, y2) = ends
    return m3.CrossSection.batch_hull([one.translate((x1, y1)), one.translate((x2, y2))])


def _rounded(centre: tuple[float, float], shape: Recess) -> Any:
    x, y = (place * MM for place in centre)
    radius = min(shape.radius, shape.length / 2, shape.width / 2) * MM
    half = max(shape.length * MM / 2 - radius, 0.0), max(shape.width * MM / 2 - radius, 0.0)
    if radius <= 0:
        size = (shape.length * MM, shape.width * MM)
        return m3.CrossSection.square(size, True).translate((x, y))
    one = m3.CrossSection.circle(radius, _sides(radius))
    corners = [
        one.translate((x + sx * half[0], y + sy * half[1])) for sx, sy in ((1, 1), (-1, 1), (-1, -1), (1, -1))
    ]
    return m3.CrossSection.batch_hull(corners)


def _bevels(shape: Bevel, along: float, across: float, high: float) -> list[Any]:
    """Four wedges along the top edges of the box."""
    size = shape.size * MM
    reach = size + OUT
    # Over the edge at x = 0: what lies above the slope, a little beyond it on both sides.
    profile = [(-OUT, high - size - OUT), (reach, high + OUT), (-OUT, high + OUT)]
    solids = []
    for length, turn, shift in (
        (across, 0.0, (0.0, 0.0)),
        (across, 180.0, (along, across)),
        (along, 90.0, (along, 0.0)),
        (along, -90.0, (0.0, across)),
    ):
        flat = m3.CrossSection([profile], m3.FillRule.Positive)
        if flat.is_empty():
            flat = m3.CrossSection([profile[::-1]], m3.FillRule.Positive)
        # Extruded along z, laid down along y: z becomes −y, y becomes z.
        wedge = flat.extrude(length + 2 * OUT).rotate((90, 0, 0)).translate((0, length + OUT, 0))
        solids.append(wedge.rotate((0, 0, turn)).translate((*shift, 0)))
    return solids


def _mesh_of(stage: Stage) -> tuple[Any, Any, Any]:
    """Welded vertices, triangles, and which of them lie on a surface that this step's cutter left."""
    import numpy as np

    mesh = stage.solid.to_mesh()
    points = np.asarray(mesh.vert_properties, float)[:, :3]
    triangles = np.asarray(mesh.tri_verts, np.int64)
    weld = np.arange(len(points))
    if len(mesh.merge_from_vert):
        weld[np.asarray(mesh.merge_from_vert, np.int64)] = np.asarray(mesh.merge_to_vert, np.int64)
    triangles = weld[triangles]
    fresh = np.zeros(len(triangles), bool)
    if stage.fresh:
        ids = np.asarray(mesh.run_original_id)
        bounds = np.asarray(mesh.run_index, np.int64) // 3
        for index, id_ in enumerate(ids):
            if int(id_) in stage.fresh:
                fresh[bounds[index] : bounds[index + 1]] = True
    return points, triangles, fresh
