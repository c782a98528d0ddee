"""Cuts along the outside of the work: where the cutter's centre stands at each, from the
zero or from a touch of that side.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.lying import Lying
from jobsheet.model.shape import Edge
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.stages.course import course_of, moved, shapes_of

#: Which handle a side is wound to, and which way out of the work lies, where x counts right and y away.
_OUT = {"left": ("x", -1), "right": ("x", 1), "front": ("y", -1), "rear": ("y", 1)}
#: Two places nearer than this are one [m].
SAME = 1e-9


class Outside(Struct, frozen=True, kw_only=True):
    """The cuts inward of one side: handle, distances [m], and whether they
    count from a touch of that side.
    """

    handle: str
    side: str
    distances: tuple[float, ...]
    touched: bool
    #: What was left on the wall is taken by the last of them, at full depth.
    last_full: bool = False


def outside(reckoned: Reckoned, set_up: SetUp, operation: Operation) -> Outside | None:
    """The cuts of a step that takes one side off; None for every other step."""
    shapes = shapes_of(operation, reckoned.settings)
    fields: Any = operation.fields
    cutter = getattr(fields, "cutter", None)
    if len(shapes) != 1 or not isinstance(shapes[0], Edge) or cutter is None or cutter.diameter is None:
        return None
    edge = shapes[0]
    handle, _ = _OUT[edge.side]
    widths, left = widths_of(reckoned, operation, edge.width)
    zero = _zero(reckoned, set_up, operation)
    full = left > 0
    if zero is None:
        return Outside(handle=handle, side=edge.side, distances=widths, touched=True, last_full=full)
    places = tuple(_centre(set_up, zero, edge.side, width, cutter.diameter) for width in widths)
    return Outside(handle=handle, side=edge.side, distances=places, touched=False, last_full=full)


def widths_of(reckoned: Reckoned, operation: Operation, whole: float) -> tuple[tuple[float, ...], float]:
    """How far in each cut along a side ends [m], `whole` the last of them, and
    what of it was left for that last one.
    """
    fields: Any = operation.fields
    leave = getattr(fields, "leave", None)
    left = leave.value if leave is not None else 0.0
    figures = reckoned.operations[operation.key].figures
    width = (figures.value("width_of_cut") if figures else None) or whole - left
    count = max(1, round((whole - left) / width)) if width > SAME else 1
    rough = tuple((whole - left) * (index + 1) / count for index in range(count))
    return ((*rough, whole) if left > SAME else rough), left


class _Zero(Struct, frozen=True):
    """How the work lay when its zero was found, how it lies at the step, and how
    far inside the edges the zero is [m].
    """

    found: Lying
    now: Lying
    inside: float


def _zero(reckoned: Reckoned, set_up: SetUp, operation: Operation) -> _Zero | None:
    """The zero of a step; None where no step before it in its set-up has set one."""
    cuts = {cut.key: cut for cut in course_of(reckoned.job, reckoned.settings).cuts}
    zero: _Zero | None = None
    for other in set_up.operations:
        if other.key == operation.key:
            return _Zero(zero.found, cuts[other.key].before, zero.inside) if zero is not None else None
        if roles(other).beside == "find" or "find zero" in roles(other).does:
            inside = getattr(other.fields, "inside", None)
            lie = cuts[other.key].before
            zero = _Zero(lie, lie, inside.value if inside is not None else 0.0)
    return None


def _centre(set_up: SetUp, zero: _Zero, side: str, width: float, diameter: float) -> float:
    """Where the cutter's centre stands from the zero when its edge is so far in from that side [m]."""
    axis, out = _OUT[side]
    at = 0 if axis == "x" else 1
    wall = width if out < 0 else zero.now.size[at] - width
    centre = wall + out * diameter / 2 + moved(zero.found, zero.now)[at]
    starts = set_up.zero.x_from == "left" if axis == "x" else set_up.zero.y_from == "front"
    counts = set_up.zero.x_counts == "right" if axis == "x" else set_up.zero.y_counts == "away"
    centre -= zero.found.zero(set_up)[at] + (zero.inside if starts else -zero.inside)
    return centre if counts else -centre
