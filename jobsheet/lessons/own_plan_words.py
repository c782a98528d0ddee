"""What is said to a learner of a plan of one's own: how many things are to be put right, each
with its reason, and what to try next.
"""

from __future__ import annotations

from jobsheet.lessons.own_plan import OwnPlan
from jobsheet.model.job import Job


def own_plan_lines(job: Job, own_plan: OwnPlan) -> list[str]:
    """The result, line by line: how many, then each remark with its reason, apart from
    both whether the part would be good.
    """
    if not own_plan.steps:
        return ["Nothing is planned yet.", "Would the part be good: no."]
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    count = len(own_plan.faults)
    lines = [
        "Right: the review has nothing against it."
        if own_plan.right
        else f"{count} thing{'' if count == 1 else 's'} to put right."
        if count
        else "Not everything could be looked at."
    ]
    for remark in own_plan.faults:
        where = next((f"step {numbers[key]}: " for key in remark.operations if key in numbers), "")
        lines.append(f"{where}{remark.message}. {remark.why} ({remark.severity})")
    lines += [f"not looked at: {words}" for words in own_plan.not_checked]
    lines += [
        f"better habit, no mistake: {remark.message}"
        for remark in own_plan.remarks
        if remark.severity == "habit"
    ]
    lines.append(f"Would the part be good: {'yes' if own_plan.good else 'no'}.")
    if own_plan.faults:
        lines.append(f"Try again: {own_plan.faults[0].why}")
    return lines
