"""How work sits in a chuck: what it grips, what stands out, and which part of a cut comes to its jaws."""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from jobsheet.holdings.kinds.chuck import Fields, stands
from jobsheet.model.job import SetUp
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.operations.registry import roles
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.held import does, fact, holding_roles, size
from jobsheet.stages.course import Sized


class Chucked(Struct, frozen=True, kw_only=True):
    """Sizes [m]; `out` is what stands out of the jaws as said, else what the grip leaves of its length."""

    upright: bool
    length: float
    grip: float | None
    out: float | None
    diameter: float
    tailstock: bool
    #: Which end is free, the right one (0) or the left (1); None where nothing says.
    free: int | None = None


def chucked(set_up: SetUp, first: Step) -> Chucked | None:
    """How it sits as the set-up begins; None where no chuck holds it."""
    if not holding_roles(set_up).chuck:
        return None
    along, across, high = first.lie.size
    held = set_up.holding
    upright = isinstance(held, Fields) and stands(held)
    length = high if upright else along
    grip, out = size(set_up, "grip_length"), size(set_up, "out")
    if out is None and grip is not None and grip < length:
        out = length - grip
    diameter = size(set_up, "diameter")
    if diameter is None:
        diameter = min(along, across) if upright else min(across, high)
    return Chucked(
        upright=upright, length=length, grip=grip, out=out, diameter=diameter, tailstock=bool(fact(set_up, "tailstock")),
        free=free_end(set_up),
    )  # fmt: skip


def free_end(set_up: SetUp) -> int | None:
    """The end that places along the work count from, the right one (0) or the left (1), where a
    step finds it: it is not in the jaws.
    """
    if set_up.zero.stands_on not in ("", "edges") or not any(
        roles(operation).beside == "find" or does(operation, "find zero") for operation in set_up.operations
    ):
        return None
    return 0 if set_up.zero.x_from == "right" else 1


def reaches(found: Chucked, first: Step, step: Step) -> Iterator[tuple[float, float]]:
    """How far each part of a cut comes from the free end [m]: where the right end
    is free, and where the left one is.

    Of work that stands up the top is free, whichever way it is; what is drilled in
    the middle goes down inside the jaws.
    """
    for sized in step.cut.shapes:
        if found.upright:
            deep = _deep(found, first, step, sized)
            if deep is not None:
                yield deep, deep
            continue
        ends = _ends(sized, step)
        if ends is not None:
            low, high = ends
            yield step.lie.size[0] - low, high


def _deep(found: Chucked, first: Step, step: Step, sized: Sized) -> float | None:
    """How far under the top, as the set-up began, a cut beside what the jaws hold comes down [m]."""
    shape = sized.shape
    high = step.lie.size[2]
    lowered = first.lie.size[2] - high
    if isinstance(shape, Slab | Edge):
        return lowered + shape.depth
    if not isinstance(shape, Hole | Groove | Recess) or _inside(found, step, sized):
        return None
    point = 0.0
    if isinstance(shape, Hole) and shape.point_angle:
        point = shape.diameter / 2 / math.tan(shape.point_angle / 2)
    return lowered + (sized.top + sized.depth if sized.depth is not None else high) + point


def _inside(found: Chucked, step: Step, sized: Sized) -> bool:
    """Whether all of a cut lies over the work that the jaws grip."""
    middle = (step.lie.size[0] / 2, step.lie.size[1] / 2)
    shape = sized.shape
    if isinstance(shape, Hole):
        half = shape.diameter / 2
    elif isinstance(shape, Groove):
        half = shape.width / 2
    else:
        half = math.hypot(shape.length, shape.width) / 2  # type: ignore[union-attr]
    reach = found.diameter / 2
    return all(math.dist(at, middle) + half <= reach + 1e-9 for at in sized.corners)


def _ends(sized: Sized, step: Step) -> tuple[float, float] | None:
    """From where to where along the work a cut goes [m]; None where it goes nowhere that is known."""
    long = step.lie.size[0]
    shape = sized.shape
    if isinstance(shape, Slab):
        return 0.0, long
    if isinstance(shape, Edge):
        return {"left": (0.0, shape.width), "right": (long - shape.width, long)}.get(shape.side, (0.0, long))
    if not isinstance(shape, Hole | Groove | Recess) or not sized.corners:
        return None
    if isinstance(shape, Hole):
        half = shape.diameter / 2
    elif isinstance(shape, Groove):
        half = shape.width / 2
    else:
        half = shape.length / 2
    places = [at[0] for at in sized.corners]
    return max(min(places) - half, 0.0), min(max(places) + half, long)
