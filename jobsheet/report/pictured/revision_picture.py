"""The finished part of a plan, heavy what it changed: the lines that were cut by steps which
the plan before it did not have so.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.stage_view import finished_view, stages_of

#: Its size beside the facts [points]: 212 × 146 pixels of a screen (look-2).
ROOM = (154.0, 106.0)


def changed_steps(before: Job, after: Job) -> frozenset[str]:
    """The keys of steps that are new in a plan, or say something else than in the one before it."""
    old = {operation.key: (operation.kind, operation.fields) for _, operation in before.operations()}
    return frozenset(
        operation.key
        for _, operation in after.operations()
        if old.get(operation.key) != (operation.kind, operation.fields)
    )


def revision_picture(before: Job | None, after: Job) -> Drawing:
    """The part as it leaves the last step, with its datum letters; without a
    plan before it nothing is heavy.
    """
    reckoned = Reckoner().reckon(after)
    stages = stages_of(reckoned.job, reckoned.settings)
    changed = changed_steps(before, after) if before is not None else frozenset()
    return finished_view(stages, after.datums, *ROOM, changed=changed)
