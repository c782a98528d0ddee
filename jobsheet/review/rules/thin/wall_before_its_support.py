"""Asks whether a thin wall is finished while metal still stands behind it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import NORMALS
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge, Recess
from jobsheet.review.mending.fixes import all_moved_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import supported
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


@rule("wall-before-its-support", "A wall before its support", "scrap")
def wall_before_its_support(view: View) -> Iterator[Remark]:
    """A side is milled after a pocket behind it has gone, and the wall between is over eight times as high as thick.

    Quiet where a jack, an angle plate or a filler is entered as its support.

    Because: Walls push away and spring back.
    Not so: pocket 20 deep, then the outside to a wall of 2
    So: the outside first, then the pocket
    From: common practice. The ratio is the workshop's number
    """
    plan = plan_of(view)
    most = view.reckoned.shop.thin_wall
    for earlier in plan.steps:
        if not any(isinstance(sized.shape, Recess) for sized in earlier.cut.shapes):
            continue
        walls = [
            (step, *found)
            for step in plan.steps[earlier.index + 1 :]
            if step.lie.up == earlier.lie.up and (found := _thin(earlier, step, most)) is not None
        ]
        if not walls:
            continue
        step, thick, high = walls[0]
        keys = tuple(other.key for other, _, _ in walls if other.set_up.key == step.set_up.key)
        message = (
            f"Finish this wall while metal still stands behind it: {length(thick, view.job.units)} thick and"
            f" {length(high, view.job.units)} high, and step {earlier.number} has cut its pocket by then"
        )
        fix = Fix(f"Move {step.number} before {earlier.number}", all_moved_before(keys, earlier.key))
        yield remark(
            view, "wall-before-its-support", message, *keys, earlier.key, fix=fix, set_up=step.set_up.key
        )
        return


def _thin(earlier: Step, step: Step, most: float) -> tuple[float, float] | None:
    """Thickness and height of a thin wall that a step leaves beside a pocket [m], or None."""
    edges = [sized.shape for sized in step.cut.shapes if isinstance(sized.shape, Edge)]
    if not edges or supported(step.set_up):
        return None
    found = _wall(earlier, step, edges[0])
    if found is None or found[0] <= 0 or found[1] <= most * found[0] + 1e-9:
        return None
    return found


def _wall(earlier: Step, step: Step, edge: Edge) -> tuple[float, float] | None:
    """How thick and how high the wall between a pocket and that side is after the side was cut [m]."""
    for sized in earlier.cut.shapes:
        shape = sized.shape
        if not isinstance(shape, Recess) or not sized.corners:
            continue
        face = getattr(step.lie, _SIDES[edge.side])
        axis = next(index for index, part in enumerate(NORMALS[face]) if part)
        plus = NORMALS[face][axis] > 0
        middle = earlier.lie.in_stock(*sized.corners[0])[axis]
        right = next(index for index, part in enumerate(NORMALS[earlier.lie.right]) if part)
        half = (shape.length if axis == right else shape.width) / 2
        side = step.lie.box[axis][1 if plus else 0]
        thick = (side - edge.width) - (middle + half) if plus else (middle - half) - (side + edge.width)
        depth = sized.depth if sized.depth is not None else earlier.lie.size[2]
        return thick, min(depth, edge.depth)
    return None
