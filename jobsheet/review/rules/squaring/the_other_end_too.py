"""Asks whether the work was turned before the same face is cut once more."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.model.shape import Edge, Slab
from jobsheet.review.plan.faces import Plan, Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Of the first cut at least this share comes off again: a finishing pass takes less (common practice, no source).
AGAIN = 0.5


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
    for face, cut in plan.made.items():
        other = OPPOSITE[face]
        if other in plan.made or _stays(plan, other):
            continue
        first = plan.steps[cut[0]]
        before = sum(
            _off(plan.steps[index], face) for index in cut if plan.steps[index].set_up.key == first.set_up.key
        )
        again = next(
            (plan.steps[index] for index in cut if plan.steps[index].set_up.key != first.set_up.key), None
        )
        if (
            again is None
            or _off(again, face) < AGAIN * before - 1e-9
            or _off(again, face) <= view.reckoned.shop.most_finish
        ):
            continue
        message = (
            f"Step {again.number} takes {length(_off(again, face), view.job.units)} off {plan.named(face)}, which step {first.number} cut"
            f" already, and nothing cuts {plan.named(other)}: turn the work, or say that this face stays as bought"
        )
        yield remark(
            view, "the-other-end-too", message, again.key, first.key, set_up=again.set_up.key,
            by_hand="look at which face is up and which is towards you in this set-up",
        )  # fmt: skip


def _stays(plan: Plan, face: str) -> bool:
    """Whether the stock says that it stays as it is bought; what only nobody cuts is not said."""
    return face in plan.job.stock.stays


def _off(step: Step, face: str) -> float:
    """What a step takes off that face [m]."""
    if face not in step.makes:
        return 0.0
    return sum(
        sized.shape.depth if isinstance(sized.shape, Slab) else sized.shape.width
        for sized in step.cut.shapes
        if isinstance(sized.shape, Slab | Edge)
    )
