"""Asks whether thin sheet is backed where it is drilled or windowed."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Groove, Hole, Recess
from jobsheet.review.mending.edge_holes import OUT_OF_A_SIDE, breaks_out
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import backed, on_straps
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import is_through


@rule("back-up-thin-sheet", "Back up thin sheet", "hazard")
def back_up_thin_sheet(view: View) -> Iterator[Remark]:
    """Sheet of five millimetres or less is drilled or windowed through with no backing.

    Quiet where a backing is what it rests on, and where it is screwed to a plate.

    Because: It lifts at breakthrough, burrs, and spins; a backing stops all three.
    Not so: 3 mm sheet drilled over nothing
    So: wood below it, clamps near the hole
    From: Fine Homebuilding, 1 November 1989; common practice. The thickness is the workshop's number
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        high = steps[0].lie.size[2]
        if high > view.reckoned.shop.thin_sheet + 1e-9 or backed(set_up):
            continue
        through = next((step for step in steps if step.cuts and _through(step)), None)
        if through is None:
            continue
        message = f"Back it with wood or scrap and clamp near the hole: the sheet is {length(high, view.job.units)} and step {through.number} goes through"
        backing = "backing plate" if on_straps(set_up) else "backing"
        fix: Fix | None = Fix("Enter a backing", set_field(f"holding:{set_up.key}", "rests_on", backing))
        hand = ""
        if any(breaks_out(step.cut) for step in steps):
            fix, hand = None, OUT_OF_A_SIDE
        yield remark(
            view, "back-up-thin-sheet", message, through.key, fix=fix, set_up=set_up.key, by_hand=hand
        )


def _through(step: Step) -> bool:
    return any(
        isinstance(sized.shape, Hole | Groove | Recess)
        and not (isinstance(sized.shape, Hole) and sized.shape.threaded)
        and is_through(sized, step.lie.size[2])
        for sized in step.cut.shapes
    )
