"""What rules ask of a milling cut: its layers, whether it is as wide as its
cutter, which holes lie in its way.
"""

from __future__ import annotations

import math

from jobsheet.model.setting import Setting
from jobsheet.model.shape import Groove, Hole, Recess
from jobsheet.operations.registry import kind as kind_of
from jobsheet.review.plan.faces import Plan, Step
from jobsheet.stages.course import Sized

#: Metals in which twice the depth goes, by family and by the group of the row.
_SOFT = ("aluminium", "copper", "plastic", "magnesium")
WALL = "only the wall"
Point = tuple[float, float]


def soft(setting: Setting) -> bool:
    """Aluminium, brass, plastics: not steels, irons, stainless, titanium."""
    return setting.material.family in _SOFT


def full_width(step: Step) -> float | None:
    """The cutter's diameter where it cuts with its whole width [m]; None for all else."""
    if not step.roles.full_width:
        return None
    diameter: float | None = step.fields.cutter.diameter
    return diameter or None


def total_depth(step: Step) -> float | None:
    """How deep a slot or pocket goes [m]."""
    depth = getattr(step.fields, "depth", None)
    if depth is None:
        return None
    return step.lie.size[2] if depth.value is None else float(depth.value)


def layer_of(step: Step) -> float | None:
    """How deep one layer is [m], or None where nothing is milled in layers."""
    fields = step.fields
    if not step.roles.sizes:
        return None
    depth: float = fields.depth.value if fields.depth.value is not None else step.lie.size[2]
    layer = getattr(fields, "layer", None)
    if layer is None or layer.value <= 0:
        return depth
    count: int = max(1, math.ceil(depth / layer.value - 1e-9))
    return depth / count


def outline(step: Step) -> tuple[Point, ...]:
    """The middle line of a slot, or the corners of a pocket's cutter, in the set-up's own coordinates [m]."""
    try:
        return kind_of(step.kind).outline(step.fields)
    except (AttributeError, StopIteration):
        return ()


def hole_within(plan: Plan, step: Step, least: float) -> bool:
    """Whether an earlier step from the same side left a hole at least so wide [m]
    inside this slot's or pocket's outline.

    A spot does not count: a hole goes down to half of this cut's depth at least.
    """
    for earlier in plan.steps[: step.index]:
        if earlier.lie.up != step.lie.up or earlier.lie.near != step.lie.near:
            continue
        for sized in earlier.cut.shapes:
            if any(_meets(sized, earlier, mine, step, least) for mine in step.cut.shapes):
                return True
    return False


def _meets(other: Sized, earlier: Step, mine: Sized, step: Step, least: float) -> bool:
    if not other.corners or not mine.corners:
        return False
    if isinstance(other.shape, Hole):
        wanted = (mine.depth if mine.depth is not None else step.lie.size[2]) / 2
        shallow = other.depth is not None and other.depth < wanted
        if other.shape.threaded or other.shape.diameter < least - 1e-9 or shallow:
            return False
    elif not isinstance(other.shape, Recess | Groove) or (
        isinstance(other.shape, Groove) and other.shape.width < least - 1e-9
    ):
        return False
    return any(_inside(_absolute(earlier, corner), mine, step) for corner in other.corners)


def _absolute(step: Step, at: Point) -> Point:
    x, y, z = step.lie.in_stock(*at)
    return tuple(value for axis, value in enumerate((x, y, z)) if axis != _up(step))  # type: ignore[return-value]


def _up(step: Step) -> int:
    return {"left": 0, "right": 0, "front": 1, "rear": 1}.get(step.lie.up, 2)


def _inside(point: Point, mine: Sized, step: Step) -> bool:
    shape = mine.shape
    if isinstance(shape, Groove):
        ends = [_absolute(step, corner) for corner in mine.corners]
        return _from_line(point, ends[0], ends[1]) <= shape.width / 2
    if isinstance(shape, Recess):
        # Length runs along the operator's right, which is one of the two axes that are left.
        middle = _absolute(step, mine.corners[0])
        along = 0 if _axis_of_right(step) == min({0, 1, 2} - {_up(step)}) else 1
        half = [0.0, 0.0]
        half[along], half[1 - along] = shape.length / 2, shape.width / 2
        return abs(point[0] - middle[0]) <= half[0] and abs(point[1] - middle[1]) <= half[1]
    return False


def _axis_of_right(step: Step) -> int:
    return {"left": 0, "right": 0, "front": 1, "rear": 1}.get(step.lie.right, 2)


def _from_line(point: Point, one: Point, other: Point) -> float:
    (x, y), (x1, y1), (x2, y2) = point, one, other
    way = math.hypot(x2 - x1, y2 - y1)
    if way == 0:
        return math.hypot(x - x1, y - y1)
    share = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / way**2))
    return math.hypot(x - x1 - share * (x2 - x1), y - y1 - share * (y2 - y1))
