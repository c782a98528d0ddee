"""Whether the finished part is the same after a change, but for what the change is about."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any

from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.stages.course import Course, course_of

if TYPE_CHECKING:
    from jobsheet.stages.solids import Stage

#: So much may differ [mm³]: facets of round shapes that are cut in another order.
TOLERANCE = 0.5


def same_course(course: Course, other: Course) -> bool:
    """Whether both cut the same shapes in the same order: then the parts are the same, with no solid made."""
    return course.stock == other.stock and _shapes(course) == _shapes(other)


def _shapes(course: Course) -> list[Any]:
    return [cut.fingerprint for cut in course.cuts if cut.shapes]


def elsewhere(before: Reckoned, after: Reckoned, about: Iterable[str], *, moves: bool = False) -> float:
    """How much the finished parts differ [mm³] outside of what the steps `about`
    pass through, before or after.

    With `moves` steps for which the work has another size by then count too: a chamfer goes with its edge.

    Parameters
    ----------
    before, after : Reckoned
        The plan and the changed plan
    about : iterable of str
        Keys of steps whose shape is meant to change
    """
    from jobsheet.stages.solids import shared

    course, other = (course_of(reckoned.job, reckoned.settings) for reckoned in (before, after))
    if same_course(course, other):
        return 0.0
    keys = set(about)
    if moves:
        boxes = {cut.key: cut.before.box for cut in course.cuts}
        keys |= {cut.key for cut in other.cuts if boxes.get(cut.key, cut.before.box) != cut.before.box}
    stages = shared().stages(course), shared().stages(other)
    first, last = stages[0][-1].solid, stages[1][-1].solid
    found = 0.0
    for part in (first - last, last - first):
        if float(part.volume()) > TOLERANCE / 2:
            found += _without(part, [tool for each in stages for tool in _tools(each, keys)])
    return found


def _without(part: Any, tools: list[Any]) -> float:
    """How much of a solid lies outside of these [mm³]; only what comes near it is
    taken off, as long as anything is left.
    """
    for tool in tools:
        if _near(part.bounding_box(), tool.bounding_box()):
            part = part - tool
            if part.is_empty():
                return 0.0
    return float(part.volume())


def _near(one: Any, other: Any) -> bool:
    sides = zip(one[:3], one[3:], other[:3], other[3:], strict=True)
    return all(low <= far and near <= high for low, high, near, far in sides)


def _tools(stages: Sequence[Stage], keys: set[str]) -> Iterable[Any]:
    return (
        stage.tool
        for stage in stages
        if stage.cut is not None and stage.cut.key in keys and stage.tool is not None
    )
