"""Asks whether the zero is found again after the work was loose."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.mending.zero_step import finding_texts
from jobsheet.review.plan.faces import Step, finds_zero, plan_of, positions
from jobsheet.review.plan.held import changed_by, does, holding_roles
from jobsheet.review.rule import View, remark, rule

#: What is said to have happened, where it is not that the work was loose.
_MOVED = {
    "check vice": "The vice was moved",
    "knock": "Work or vice was knocked",
    "square up": "The work was tapped round",
}


@rule("zero-again-after-taking-out", "Zero again after taking out", "scrap")
def zero_again_after_taking_out(view: View) -> Iterator[Remark]:
    """The work was taken out, put back, knocked, squared up or only clamped, its vice was tapped round, or all that held it was changed at once, and places follow with nothing found again.

    Because: It never comes back to the same place: the zero is lost with the hold.
    Not so: find A and B, spot, take it out to look, put it back, drill
    So: find A and B, spot, take it out to look, put it back, find A and B, drill
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        lost: Operation | None = None
        found: Step | None = None
        for step in steps:
            if _loses(set_up, step.operation, found=found is not None):
                lost = step.operation
            if finds_zero(step):
                lost, found = None, step
            if lost is None or not positions(step.fields):
                continue
            what = next((words for deed, words in _MOVED.items() if does(lost, deed)), "The work was loose")
            message = f"{what} in step {lost.number}, and the zero with it: find it again before this step"
            fix = Fix(
                f"Find the edges before {step.number}",
                added_before(step.key, written.FIND, finding_texts(view.job, set_up)),
                tuple(operation.key for operation in set_up.operations),
            )
            yield remark(
                view, "zero-again-after-taking-out", message, step.key, lost.key, fix=fix, set_up=set_up.key
            )
            break


def _loses(set_up: SetUp, operation: Operation, *, found: bool) -> bool:
    """Whether the work is loose in this step; clamping loses only a zero that was found before."""
    # Who checks the vice or squares the work up taps it round: what was found before is no longer there.
    if does(operation, "take out", "put back", "knock") or (
        found and does(operation, "clamp", "check vice", "square up")
    ):
        return True
    changed = changed_by(operation)
    plays = holding_roles(set_up)
    own = "jaws" if plays.jaws or plays.turns else "screws" if plays.screwed else "straps"
    return own in changed.off and not changed.on and not operation.fields.one_at_a_time
