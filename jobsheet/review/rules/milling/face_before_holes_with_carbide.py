"""Asks whether carbide passes over holes and slots."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import SLOWLY
from jobsheet.review.mending.fixes import all_moved_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import how
from jobsheet.review.plan.interrupted import opened_before
from jobsheet.review.rule import View, remark, rule


@rule("face-before-holes-with-carbide", "Carbide over holes", "rework")
def face_before_holes_with_carbide(view: View) -> Iterator[Remark]:
    """A carbide face mill or fly cutter passes over holes or slots that were made earlier in the job.

    Quiet for holes drilled from this same face, of which another remark speaks, and where a slow entry is entered.

    Because: Brittle edges chip on interruptions.
    Not so: holes through from the base, then the top faced with carbide
    So: the top faced, then the holes
    From: common practice
    """
    plan = plan_of(view)
    told: set[tuple[str, str]] = set()
    for step in plan.steps:
        if not _carbide(step) or (step.set_up.key, step.lie.up) in told:
            continue
        first = opened_before(plan, step, own_holes=False)
        if first is None or how(step.operation, SLOWLY):
            continue
        told.add((step.set_up.key, step.lie.up))
        keys = tuple(
            other.key
            for other in plan.of(step.set_up.key)
            if other.index >= step.index and step.lie.up in other.makes
        )
        message = (
            f"Face before the holes, or enter slowly: carbide passes over what step {first.number} left open"
        )
        fix = Fix(f"Move {step.number} before {first.number}", all_moved_before(keys, first.key))
        yield remark(
            view, "face-before-holes-with-carbide", message, *keys, first.key, fix=fix, set_up=step.set_up.key
        )


def _carbide(step: Step) -> bool:
    cutter = getattr(step.fields, "cutter", None)
    return step.roles.mills == "flat" and cutter is not None and cutter.material == "carbide"
