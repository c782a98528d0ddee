"""Asks whether round work is turned by what was cut on it before."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import ENDS
from jobsheet.model.finished import SIZES
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.stock import ROUND, Stock
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.gauges import measures, named
from jobsheet.review.plan.held import does, holding_roles
from jobsheet.review.rule import View, remark, rule

#: What a flat or a slot is levelled with.
_LEVELS = ("indicator", "square")


@rule("first-cut-levelled", "Round work levelled by its first cut", "scrap")
def first_cut_levelled(view: View) -> Iterator[Remark]:
    """Round work lies in a vee turned to another side than before, and nothing levels what was cut on it before the next cut.

    Quiet where a step squares it up, or measures with an indicator or a square, before the first cut of the set-up.

    Because: A round bar lies in a vee at any angle: the second flat leans to the first.
    Not so: a flat, turned half round in the vee, the second flat
    So: a flat, turned half round, levelled with the indicator, the second flat
    From: common practice
    """
    before: Step | None = None
    for set_up, steps in plan_of(view).groups():
        cuts = [step for step in steps if step.cuts]
        if not cuts:
            continue
        first = cuts[0]
        plays = holding_roles(set_up)
        if (
            before is not None
            and before.lie.up != first.lie.up
            and plays.round
            and not plays.turns
            and not any(map(_levels, steps[: steps.index(first)]))
        ):
            message = (
                f"Level what step {before.number} cut before this cut: round work lies in a vee at any angle"
            )
            texts = {
                "does": "square up",
                "what": f"Level the cut of step {before.number}",
                "with_what": "indicator",
                "minutes": "5 min",
            }
            yield remark(
                view, "first-cut-levelled", message, first.key, set_up=set_up.key,
                fix=Fix(f"Square up before {first.number}", added_before(first.key, written.BENCH, texts)),
            )  # fmt: skip
        before = next((step for step in reversed(cuts) if _on_one_side(step, view.job.stock)), before)


def _on_one_side(step: Step, stock: Stock) -> bool:
    """Whether what it cuts is on one side of round work, not an end of it, so that the next cut has an angle to it."""
    if stock.shape not in ROUND:
        return False
    ends = ENDS[SIZES.index(stock.along)]
    return step.lie.up not in ends and (not step.makes or any(face not in ends for face in step.makes))


def _levels(step: Step) -> bool:
    return does(step.operation, "square up") or (measures(step) and named(step) in _LEVELS)
