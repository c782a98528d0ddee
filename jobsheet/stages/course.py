"""What each step takes from the stock and where, in the drawing's axes: no
modeller here, only places and sizes.

Coordinates of a set-up count from its zero; the zero is found on the work as it is when an edge is picked up,
or else as it is when the set-up begins. A side that is cut away in full, or a layer off the top, makes the
box of the work smaller for all that follows.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import NORMALS, Box, Lying, lowered, lying, stock_box
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Bevel, Edge, Groove, Hole, Recess, Slab, Sweep
from jobsheet.model.stock import Outline
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.remembered import forgotten_with_the_plan
from jobsheet.stages.floors import Floors
from jobsheet.stock.all_shapes import shape_of

#: A cut that reaches this near to the far side of the work goes through [m].
NEAR = 1e-6
_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


class Sized(Struct, frozen=True, kw_only=True):
    """One shape as it is cut: places from the left, the near side and the bottom of the work as it lies [m].

    `corners` are x and y of what the shape names: a centre, two ends, or nothing. `top` is how far below the
    top of the work it begins: a hole in the floor of a step, slot or pocket begins there. `depth` counts from
    where it begins; None goes through the bottom.
    """

    shape: Sweep
    corners: tuple[tuple[float, float], ...] = ()
    depth: float | None = None
    top: float = 0.0


class Cut(Struct, frozen=True, kw_only=True):
    """One step: the work's box before and after it, how it lies, and the shapes it takes away."""

    key: str
    number: int
    set_up: str
    before: Lying
    after: Lying
    shapes: tuple[Sized, ...] = ()

    @property
    def fingerprint(self) -> tuple[Any, ...]:
        """What the solid depends on: equal steps give equal solids, whatever they are called."""
        lie = self.before
        return lie.near, lie.up, lie.box, self.shapes


class Course(Struct, frozen=True):
    """All steps of a job in their order, from this stock."""

    stock: Box
    cuts: tuple[Cut, ...]
    #: What the stock is where it is no box.
    outline: Outline | None = None

    def after(self, key: str) -> int:
        """How many cuts are made when the step or set-up of that key is done; 0 for the stock."""
        found = [index for index, cut in enumerate(self.cuts, 1) if key in (cut.key, cut.set_up)]
        return found[-1] if found else 0


#: The last courses, each with the very job and settings that it was made of: rules,
#: sheet and solids ask for the same.
_LAST: list[tuple[Job, Mapping[str, Setting], Course]] = []
forgotten_with_the_plan(_LAST.clear)
_KEPT = 3


def course_of(job: Job, settings: Mapping[str, Setting]) -> Course:
    """Every step with its shapes in place; a step that cannot be said yet takes nothing away."""
    for known, around, course in tuple(_LAST):
        if known is job and around is settings:
            return course
    made = _course_of(job, settings)
    _LAST.insert(0, (job, settings, made))
    del _LAST[_KEPT:]
    return made


def _course_of(job: Job, settings: Mapping[str, Setting]) -> Course:
    stock = work = stock_box(job)
    outline = shape_of(job.stock)
    cuts: list[Cut] = []
    floors = Floors()
    for set_up in job.set_ups:
        found = lying(set_up, work, outline)
        inside = (0.0, 0.0)
        for operation in set_up.operations:
            before = lying(set_up, work, outline)
            if roles(operation).beside == "find":
                found, inside = before, _inside(operation)
            shapes = shapes_of(operation, settings)
            sized = tuple(
                _begun(_sized(shape, set_up, found, before, inside), before, floors) for shape in shapes
            )
            for other in sized:
                work = _smaller(work, other.shape, before, set_up)
                if other.depth is not None:
                    floors.leave(before, other.shape, other.corners, other.depth)
            cuts.append(
                Cut(
                    key=operation.key, number=operation.number, set_up=set_up.key, before=before,
                    after=lying(set_up, work, outline), shapes=sized,
                )
            )  # fmt: skip
    return Course(stock, tuple(cuts), outline)


def shapes_of(operation: Operation, settings: Mapping[str, Setting]) -> tuple[Sweep, ...]:
    """What a step takes away; nothing where that cannot be said, as while a plan is half written."""
    setting = settings.get(operation.key)
    if setting is None:
        return ()
    try:
        return tuple(kind_of(operation.kind).sweep(operation.fields, setting))
    except (JobsheetError, ArithmeticError, AttributeError):
        return ()


def _inside(operation: Operation) -> tuple[float, float]:
    """How far inside the edges the zero is set [m]: along x and y."""
    value = getattr(operation.fields, "inside", None)
    size = value.value if value is not None else 0.0
    return size, size


def _sized(shape: Sweep, set_up: SetUp, found: Lying, now: Lying, inside: tuple[float, float]) -> Sized:
    def place(x: float, y: float) -> tuple[float, float]:
        """From the zero as it was found to the left and near side of the work as it is now."""
        along, across = found.from_corner(set_up, x, y)
        along += inside[0] if set_up.zero.x_from == "left" else -inside[0]
        across += inside[1] if set_up.zero.y_from == "front" else -inside[1]
        left, near = moved(found, now)
        return along - left, across - near

    if isinstance(shape, Hole):
        return Sized(shape=shape, corners=(place(shape.x, shape.y),), depth=shape.depth)
    if isinstance(shape, Groove):
        ends = (place(shape.x1, shape.y1), place(shape.x2, shape.y2))
        return Sized(shape=shape, corners=ends, depth=shape.depth)
    if isinstance(shape, Recess):
        return Sized(shape=shape, corners=(place(shape.x, shape.y),), depth=shape.depth)
    if isinstance(shape, Edge | Slab):
        return Sized(shape=shape, depth=shape.depth)
    return Sized(shape=shape)


def _begun(sized: Sized, lie: Lying, floors: Floors) -> Sized:
    """A hole from where it begins; anything else as it is."""
    top = floors.below(lie, sized.shape, sized.corners[0]) if sized.corners else 0.0
    return replace(sized, top=top) if top > NEAR else sized


def moved(found: Lying, now: Lying) -> tuple[float, float]:
    """How far the left and the near side of the work have gone inward since the zero was found [m]."""
    return tuple(_gone(found, now, face) for face in (found.left, found.near))  # type: ignore[return-value]


def _gone(found: Lying, now: Lying, face: str) -> float:
    normal = NORMALS[face]
    axis = next(index for index, part in enumerate(normal) if part)
    end = 1 if normal[axis] > 0 else 0
    return abs(now.box[axis][end] - found.box[axis][end])


def _smaller(work: Box, shape: Sweep, lie: Lying, set_up: SetUp) -> Box:
    """The box of the work after a layer off its top or a side that is gone in full."""
    if isinstance(shape, Slab):
        return lowered(work, set_up.up, shape.depth)
    if isinstance(shape, Edge) and shape.depth >= lie.size[2] - NEAR:
        return lowered(work, getattr(lie, _SIDES[shape.side]), shape.width)
    return work


def is_through(sized: Sized, high: float) -> bool:
    """Whether a shape goes out at the bottom of work so high [m]."""
    return sized.depth is None or sized.top + sized.depth >= high - NEAR


def takes_away(shape: Sweep) -> bool:
    """Whether a shape removes metal that a solid shows; a thread is drawn, not cut."""
    return not (isinstance(shape, Hole) and shape.threaded) and not (
        isinstance(shape, Bevel) and shape.size <= 0
    )
