"""What a set-up makes, on the picture of the work after it: its new sizes beside it, its holes, slots and
steps by name with a line to each.
"""

from __future__ import annotations

from typing import Any

from jobsheet.model.job import Operation
from jobsheet.model.quantity import SAME_PLACE, Thread, spot
from jobsheet.model.shape import Edge, Groove, Hole, Recess
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import millimetres
from jobsheet.report.plan import Course, Plan
from jobsheet.report.stage_view import Made, Spot3
from jobsheet.stages.course import Cut, course_of, moved

#: So many names stand on one picture; a name of more letters has no room beside it.
MOST, LONGEST = 4, 16


def made(plan: Plan, course: Course) -> Made:
    """What the steps of a set-up change of the work: the sizes of its box, and what the
    last step at each place leaves there.

    Limits stand beside the step that makes a size, not here: nobody finishes on size by the picture alone.
    """
    all_cuts = course_of(plan.job, plan.reckoned.settings).cuts
    cuts = [cut for cut in all_cuts if cut.set_up == course.set_up.key]
    if not cuts:
        return Made()
    last = cuts[-1].after
    pairs = zip(cuts[0].before.size, last.size, strict=True)
    along, across, up = (
        millimetres(new, plan.job.units)[0] if abs(old - new) > SAME_PLACE else "" for old, new in pairs
    )
    return Made(sizes=(along, across, up), names=tuple(_names(plan, course, cuts)))


def _names(plan: Plan, course: Course, cuts: list[Cut]) -> list[tuple[str, Spot3]]:
    """Every hole, slot, pocket and step once, as its last step leaves it; a spot is no
    hole yet unless nothing follows it.
    """
    last = cuts[-1].after
    named: dict[tuple[Any, ...], tuple[str, int, Spot3]] = {}
    by_key = {cut.key: cut for cut in cuts}
    one_groove = sum(any(isinstance(sized.shape, Groove) for sized in cut.shapes) for cut in cuts) == 1
    for operation in course.set_up.operations:
        cut = by_key[operation.key]
        left, near = moved(cut.before, last)
        placed: list[Spot3] = []
        name = ""
        for sized in cut.shapes:
            told = _named(plan, operation, sized.shape, cut)
            if told is None or (isinstance(sized.shape, Groove) and not one_groove):
                continue
            name, at = told
            x, y, down = at if at is not None else (*sized.corners[0], 0.0)
            placed.append((x - left, y - near, last.size[2] - down))
            if isinstance(sized.shape, Recess):
                named = {
                    key: one for key, one in named.items() if not _within(one[2], placed[-1], sized.shape)
                }
        if placed:
            key = tuple(sorted(spot(x, y) for x, y, _ in placed))
            named.pop(key, None)
            named[key] = (name, len(placed), placed[0])
    return [
        (f"{count} × {name}" if count > 1 else name, at)
        for name, count, at in named.values()
        if len(name) <= LONGEST
    ][-MOST:]


def _within(place: Spot3, middle: Spot3, shape: Recess) -> bool:
    """Whether a place lies inside a pocket: what let the cutter in is gone with it."""
    return abs(place[0] - middle[0]) < shape.length / 2 and abs(place[1] - middle[1]) < shape.width / 2


def _named(plan: Plan, operation: Operation, shape: object, cut: Cut) -> tuple[str, Spot3 | None] | None:
    """What a shape is called on a drawing, and where it is, how deep, where its own corner does not say
    it; None for a face and a whole side.

    A groove that several steps cut is wider than any of them: it has no name here.
    """
    units = plan.job.units

    def size(value: float) -> str:
        return millimetres(value, units)[0]

    if isinstance(shape, Hole):
        thread = getattr(operation.fields, "thread", None)
        if isinstance(thread, Thread) and shape.threaded:
            return thread.text, None
        return None if roles(operation).hole == "spot" else (f"⌀{size(shape.diameter)}", None)
    if isinstance(shape, Groove):
        return f"slot {size(shape.width)}", None
    if isinstance(shape, Recess):
        return f"{size(shape.length)} × {size(shape.width)}", None
    if isinstance(shape, Edge) and shape.depth < cut.before.size[2] - SAME_PLACE:
        long, across, _ = cut.before.size
        inside, deep = shape.width / 2, shape.depth
        at = {
            "left": (inside, across / 2, deep),
            "right": (long - inside, across / 2, deep),
            "front": (long / 2, inside, deep),
            "rear": (long / 2, across - inside, deep),
        }
        return f"step {size(shape.width)} × {size(shape.depth)}", at[shape.side]
    return None
