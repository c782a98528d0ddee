"""Asks whether a step cuts into what the drawing keeps."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.part_pieces import cut_away, large, left_in, mill, milled_beside
from jobsheet.review.rule import Needs, View, remark, rule


@rule("cut-away-from-the-part", "Nothing cut that the drawing keeps", "scrap", needs=Needs.STAGES)
def cut_away_from_the_part(view: View) -> Iterator[Remark]:
    """A step takes metal that the drawing has as part of the work: a hole that no line asks for, a slot too wide or too deep.

    Quiet where the lines of the drawing name no features, or one that is not compared.

    Because: What is cut away is not put on again.
    Not so: five holes drilled, four on the drawing
    So: the four of the drawing; or a line for the fifth
    From: the solids of the plan
    """
    asked = as_asked(view)
    if asked is None:
        return
    told: set[str] = set()
    moved: set[str] = set()  # a slot that lies beside its place is said of its line
    for line, fact in left_in(view, asked).items():
        moved |= set(fact.steps)
        if not mill(asked, fact):
            moved |= {step.key for step in milled_beside(view, asked, line)}
    for fact in cut_away(view, asked):
        steps = asked.steps(fact.steps)
        if not steps or told.intersection(fact.steps) or moved.intersection(fact.steps):
            continue
        told.update(fact.steps)
        first = steps[0]
        message = f"It cuts into what the drawing keeps, {large(fact, view.job.units)} over all: no line asks for that"
        yield remark(
            view, "cut-away-from-the-part", message, *(step.key for step in steps), set_up=first.set_up.key,
            by_hand="look at its place, width and depth, take it out, or write the line of the drawing that asks for it",
        )  # fmt: skip
