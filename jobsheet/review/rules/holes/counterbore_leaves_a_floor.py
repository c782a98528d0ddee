"""Asks whether a counterbore leaves something for the head of the screw to sit on."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked, holes
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Less than this is no seat for a head [m] (common practice, no source).
FLOOR = 0.5e-3


@rule("counterbore-leaves-a-floor", "A floor below a counterbore", "scrap")
def counterbore_leaves_a_floor(view: View) -> Iterator[Remark]:
    """A counterbore or spot face goes as deep as the work is high, or all but half a millimetre.

    Because: The head of the screw falls through, or tears the rest out.
    Not so: counterbore 11 through a plate of 8
    So: counterbore 11 to a depth of 4
    From: common practice
    """
    asked = as_asked(view)
    told = {key for group in holes(asked, "mouth too deep") for key in group.first.steps} if asked else set()
    for step in plan_of(view).steps:
        if step.key in told or step.roles.hole != "counterbore" or step.fields.depth is None:
            continue
        depth, high = step.fields.depth.value, step.lie.size[2]
        if depth is not None and depth <= high - FLOOR:
            continue
        left = "nothing" if depth is None or depth >= high - 1e-6 else length(high - depth, view.job.units)
        message = f"The counterbore leaves {left} of {length(high, view.job.units)} below it: the head of the screw has no seat"
        yield remark(
            view, "counterbore-leaves-a-floor", message, step.key, set_up=step.set_up.key,
            by_hand="write the depth of the counterbore as on the drawing",
        )  # fmt: skip
