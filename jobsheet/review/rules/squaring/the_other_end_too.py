"""Asks whether the work was turned before the same face is cut once more."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.review.plan.cut_again import cut_again, off
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("the-other-end-too", "The other end too", "scrap")
def the_other_end_too(view: View) -> Iterator[Remark]:
    """Two set-ups cut the same face by much the same, and no step cuts the one opposite, which is not said to stay as bought.

    Quiet for a roughing and its finishing pass.

    Because: The work was not turned between them: one end is cut twice, the other stays raw, and the length comes out all the same.
    Not so: mill the left end, then turn the set-up so that the left end is cut again
    So: mill the left end, turn it end for end, mill the right end
    From: common practice
    """
    plan = plan_of(view)
    for face, first, again in cut_again(plan, view.reckoned.shop.most_finish):
        other = OPPOSITE[face]
        message = (
            f"Step {again.number} takes {length(off(again, face), view.job.units)} off {plan.named(face)}, which step {first.number} cut"
            f" already, and nothing cuts {plan.named(other)}: turn the work, or say that this face stays as bought"
        )
        yield remark(
            view, "the-other-end-too", message, again.key, first.key, set_up=again.set_up.key,
            by_hand="look at which face is up and which is towards you in this set-up",
        )  # fmt: skip
