"""A hole drilled before a step as a mend: cut as the adviser would, and only where
the drill lives through its depth.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.job import Job, Operation
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.review.mending.at_hand import at_hand
from jobsheet.review.mending.fixes import Mend, NotMended, added_before
from jobsheet.review.plan.lengths import for_tool, length, typed
from jobsheet.units.table import INCH

#: A jobber drill's flutes end after so many diameters (DIN 338: 52 mm of a drill of 5, 57 of 6, 75 of 8).
DEEPEST = 10.0
#: Stands where a feed must be until the adviser has said it.
_ANY_FEED = "0.1 mm"


def drilled_before(
    before: Operation, setting: Setting, texts: dict[str, str], *, hole: float | None = None
) -> Mend:
    """A drill right before a step, from the solid or opening a `hole` [m]:
    `texts` name cutter, places and depth.

    Speed, feed and pecks are left empty: the adviser fills them in, also when
    the machine is another one later.

    Raises, when it is made, `NotMended` where no cut of that drill goes here.
    """
    kind = written.DRILL if hole is None else written.ENLARGE

    def mend(job: Job) -> Job:
        made = kind_of(kind)
        fields = fields_from(made.fields, made.entries, {**texts, "feed": _ANY_FEED}, job.units)
        around = replace(setting, pilot=hole)
        size = fields.cutter.diameter or 0.0
        deep = fields.depth.value if fields.depth.value is not None else setting.thickness
        if deep > DEEPEST * size:
            raise NotMended(
                f"a drill of {length(size, job.units)} is too short for {length(deep, job.units)}: its flutes end after ten diameters"
            )
        advised = best_cut(Operation(key="", number=0, kind=kind, fields=fields), around)
        if advised is None:
            raise NotMended(f"no feed is known for a drill of {length(size, job.units)} here")
        if not advised.clears:
            worst = max(advised.stays, key=lambda limit: limit.share)
            raise NotMended(
                f"a drill of {length(size, job.units)} would not live through it: {worst.title.lower()} is beyond, {worst.sentence or worst.shown}"
            )
        return added_before(before.key, kind, texts)(job)

    return mend


def spotted_before(job: Job, key: str, at: str, to: float) -> tuple[Mend, float]:
    """A spot at these places right before a step, by a spot drill of the job or the
    cabinet; and how wide it comes [m].
    """
    cutters = (
        operation.fields.cutter
        for _, operation in job.operations()
        if roles(operation).hole == "spot" and operation.fields.cutter.kind == "spot drill"
    )
    known = next(cutters, None)
    usual = 10e-3 if job.units == "mm" else 3 / 8 * INCH
    width = (known.diameter if known is not None else None) or usual
    line = known.text if known is not None else f"spot drill {for_tool(width, job.units)}, 90°"
    here = at_hand(job, "spot drill", 3e-3, 20e-3)
    if known is None and here:
        width, line = here[-1]
    to = min(to, 0.9 * width)
    texts = {"cutter": line, "at": at, "to": typed(to, job.units)}
    return added_before(key, written.SPOT, texts), to
