"""Asks whether much metal is milled away that a saw would take cheaply."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import does
from jobsheet.review.plan.lengths import rounded
from jobsheet.review.rule import Needs, View, remark, rule

#: What clears a block; a groove is no block.
_BLOCK = ("flat", "wall", "recess")
#: What a saw leaves [m] (common practice).
TO_MILL = 2e-3


@rule("saw-the-bulk-first", "Saw the bulk first", "rework", needs=Needs.FIGURES)
def saw_the_bulk_first(view: View) -> Iterator[Remark]:
    """Roughing one block of metal takes longer than three quarters of an hour in the cut.

    Quiet where sawing or drilling out is planned as a step before it, and where the remark was set aside because
    there is no nearer stock.

    Because: Chips are slow on a light mill; a saw takes the bulk cheaply.
    Not so: 20 mm off a block of steel in layers of 0.8
    So: saw 18 mm off, mill the rest
    From: common practice. The minutes are the workshop's number
    """
    plan = plan_of(view)
    most = view.reckoned.shop.bulk_minutes
    blocks: dict[tuple[str, str], list[Step]] = {}
    for step in plan.steps:
        if step.roles.mills in _BLOCK:
            blocks.setdefault((step.set_up.key, step.makes[0] if step.makes else step.key), []).append(step)
    for steps in blocks.values():
        seconds = sum(step.figure("cutting_time") or 0.0 for step in steps)
        first = steps[0]
        if seconds <= most or any(_sawn(step) for step in plan.steps[: first.index]):
            continue
        message = f"Much metal here, {seconds / 60:.0f} minutes in the cut: saw it, drill it out or take nearer stock"
        texts = {
            "does": "saw",
            "what": f"Saw off most of what step {first.number} takes, leave {rounded(TO_MILL, view.job.units)} to mill, then set its depth anew",
            "with_what": "saw",
        }
        fix = Fix(f"Saw before {first.number}", added_before(first.key, written.BENCH, texts))
        yield remark(view, "saw-the-bulk-first", message, first.key, fix=fix, set_up=first.set_up.key)


def _sawn(step: Step) -> bool:
    return step.roles.beside == "saw" or does(step.operation, "saw")
