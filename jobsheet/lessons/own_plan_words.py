"""What is said to a learner of a plan of one's own: how many things are to be put right, each
with its reason, and what to try next.
"""

from __future__ import annotations

from jobsheet.lessons.own_plan import OwnPlan
from jobsheet.model.job import Job


def own_plan_lines(job: Job, found: OwnPlan) -> list[str]:
    """The result, line by line: how many, then each remark with its reason, apart from
    both whether the part would be good.
    """
    if not found.steps:
        return ["Nothing is planned yet.", "Would the part be good: no."]
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    count = len(found.faults)
    lines = [
        "Right: the review has nothing against it."
        if found.right
        else f"{count} thing{'' if count == 1 else 's'} to put right."
        if count
        else "Not everything could be looked at."
    ]
    for one in found.faults:
        where = next((f"step {numbers[key]}: " for key in one.operations if key in numbers), "")
        lines.append(f"{where}{one.message}. {one.why} ({one.severity})")
    lines += [f"not looked at: {words}" for words in found.not_checked]
    lines += [f"better habit, no mistake: {one.message}" for one in found.remarks if one.severity == "habit"]
    lines.append(f"Would the part be good: {'yes' if found.good else 'no'}.")
    if found.faults:
        lines.append(f"Try again: {found.faults[0].why}")
    return lines
