"""Asks whether the tip of an edge finder is known."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.cutter_words import tip_in, tip_of_line
from jobsheet.model.job import Job, Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import INDICATOR, PAPER, STOP
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule


@rule("half-the-edge-finder", "Half the edge finder", "scrap")
def half_the_edge_finder(view: View) -> Iterator[Remark]:
    """A step that finds edges with an edge finder whose tip is written nowhere.

    Because: Half the tip goes into the zero: missed or counted twice, every hole is off by the same amount.
    Not so: find A and B with an edge finder
    So: find A and B with an edge finder, 10 mm tip
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        if roles(operation).beside != "find" or operation.fields.tip is not None:
            continue
        if tip_of_line(operation.fields.cutter) or how(operation, INDICATOR, PAPER, STOP):
            continue
        tip = _known(view.job, operation)
        fix = Fix(f"Tip {tip}", set_field(operation.key, "tip", tip)) if tip else None
        yield remark(
            view, "half-the-edge-finder", "Enter the finder's tip: half of it goes into the zero", operation.key, fix=fix,
            set_up=set_up.key,
        )  # fmt: skip


def _known(job: Job, operation: Operation) -> str:
    """The tip that another finding step names, or the line of the finder that a zero is found with."""
    for _, other in job.operations():
        if does(other, "find zero") and other.key != operation.key:
            tip, cutter = getattr(other.fields, "tip", None), other.fields.cutter
            if found := tip.text if tip is not None else tip_of_line(cutter) if cutter is not None else "":
                return str(found)
    return next((tip for set_up in job.set_ups if (tip := tip_in(set_up.zero.found))), "")
