"""A pilot before a large drill: the smallest that lives through its depth and
with which the drill itself goes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.catalog.tools.webs import pilot
from jobsheet.model.job import Job, Operation
from jobsheet.model.remark import Fix
from jobsheet.model.setting import Setting
from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.review.mending.added_hole import drilled_before
from jobsheet.review.mending.at_hand import at_hand, drill_near
from jobsheet.review.mending.fixes import Mend, NotMended, in_turn, set_field
from jobsheet.review.plan.lengths import for_tool, length
from jobsheet.units.table import INCH

#: Pilots are taken in steps of this size [m] (drills by half millimetres, or by thirty-seconds of an inch; common practice).
STEPS = {"mm": 0.5e-3, "in": INCH / 32}
#: Drills from this size on are also piloted in two steps, the second of this
#: share (common practice, no source).
STAGED, MIDDLE = 10e-3, 0.75


def pilot_first(job: Job, operation: Operation, setting: Setting, what: str = "") -> tuple[Fix, ...]:
    """A pilot as a fix, found when it is tried; behind it the large drill turns and feeds as
    it goes best. Then one in two steps.
    """
    diameter = operation.fields.cutter.diameter
    first = next(iter(sizes(job, diameter)), None)
    if first is None:
        return ()
    size = length(first[0], job.units)
    fixes = [
        Fix(
            f"Add a pilot of {size} or more before {operation.number}",
            _mend(operation, setting, what, staged=False),
        )
    ]
    if diameter >= STAGED:
        fixes.append(
            Fix(f"Drill in stages before {operation.number}", _mend(operation, setting, what, staged=True))
        )
    return tuple(fixes)


def _mend(operation: Operation, setting: Setting, what: str, *, staged: bool) -> Mend:
    def mend(job: Job) -> Job:
        refused: NotMended | None = None
        for size, line in sizes(job, operation.fields.cutter.diameter):
            try:
                return _with(job, operation, setting, {"cutter": line, "what": what}, size, staged=staged)
            except NotMended as error:
                refused = refused or error
        raise refused or NotMended("no pilot of a usual size lies between web and drill")

    return mend


def sizes(job: Job, diameter: float) -> Iterator[tuple[float, str]]:
    """Pilots for a drill, the smallest first: those of the cabinet up to half of
    it, else by even steps.
    """
    suggestion = pilot(diameter)
    known = at_hand(job, "drill", suggestion.low, diameter / 2)
    if known:
        yield from known
        return
    step = STEPS[job.units]
    size = math.ceil(suggestion.low / step - 1e-6) * step
    while size <= diameter / 2 + 1e-9:
        yield size, f"drill {for_tool(size, job.units, 32)}"
        size += step


def _with(
    job: Job, operation: Operation, setting: Setting, texts: dict[str, str], size: float, *, staged: bool
) -> Job:
    fields = operation.fields
    where = {"at": fields.at.text, "depth": fields.depth.text}
    mends = [drilled_before(operation, setting, {**texts, **where})]
    if staged:
        pilot_size = size
        size, line = drill_near(
            job, MIDDLE * fields.cutter.diameter, 0.6 * fields.cutter.diameter, 0.8 * fields.cutter.diameter
        )
        mends.append(drilled_before(operation, setting, {"cutter": line, **where}, hole=pilot_size))
    behind = advice_on(operation, replace(setting, pilot=size))
    if behind is None or not behind.found.carried:
        raise NotMended(f"behind a hole of {length(size, job.units)} the drill does not go either")
    return in_turn(*mends, *(set_field(operation.key, name, text) for name, text in behind.edits))(job)
