"""Asks whether a drill that opens a hole has enough left to cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.at_hand import drill_near
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import SAME, holes_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: A two-flute drill should find a hole of no more than this share of its
#: diameter (from memory of trade teaching).
MOST = 0.8
#: What is offered for the hole before it, as a share of the drill (common practice).
OFFERED = 0.7


@rule("enough-left-for-the-drill", "Enough left for the drill", "rework")
def enough_left_for_the_drill(view: View) -> Iterator[Remark]:
    """A two-flute drill in a hole that is nearly its own size.

    Because: A drill with little to cut rubs, grabs, or screws itself in.
    Not so: drill 9.0, then drill 10.0
    So: drill 7.0, then drill 10.0; or a core drill after 9.0
    From: from memory of trade teaching
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            before = chain.hole_before(step)
            if step.does != "drill" or step.cutter.kind != "drill" or before is None or step.key in told:
                continue
            share = before.diameter / step.diameter
            if share <= MOST + 1e-6 or before.diameter >= step.diameter - SAME or not before.as_deep_as(step):
                continue
            told.add(step.key)
            wanted = round(step.diameter * OFFERED / 0.5e-3) * 0.5e-3
            smaller, line = drill_near(view.job, wanted, 0.4 * step.diameter, MOST * step.diameter)
            size = typed(smaller, view.job.units)
            message = (
                f"{length(step.diameter, view.job.units)} after {length(before.diameter, view.job.units)} leaves the drill too little to cut:"
                " a smaller hole before it, or a core drill"
            )
            fix = None
            if before.does == "drill":
                fix = Fix(
                    f"Step {before.number}: drill {size}",
                    set_field(before.key, "cutter", line),
                )
            yield remark(
                view, "enough-left-for-the-drill", message, step.key, before.key, fix=fix, set_up=step.set_up
            )
