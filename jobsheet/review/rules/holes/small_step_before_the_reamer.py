"""Asks whether the drill before a reamer takes an even, moderate bite."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.added_hole import drilled_before
from jobsheet.review.mending.at_hand import drill_near
from jobsheet.review.plan.from_solid import push_from_solid
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import Needs, View, remark, rule

#: The last drill before a reamer should find a hole of at least this share of its
#: diameter (common practice, no source).
LEAST = 0.5
#: From this size on it is asked [m] (common practice, no source).
LARGE = 10e-3
#: What is offered between: a share of the drill (as 12 of 15.7 in the pivot block of the demo scenario).
OFFERED = 0.76


@rule("small-step-before-the-reamer", "A small step before the reamer", "rework", needs=Needs.FIGURES)
def small_step_before_the_reamer(view: View) -> Iterator[Remark]:
    """The last drill before a reamer opens a hole that is less than half its own size.

    Because: A drill that takes much at once leaves a hole that is neither round nor straight, and the reamer follows it.
    Not so: drill 6.0, drill 15.7, ream 16
    So: drill 6.0, drill 12.0, drill 15.7, ream 16
    From: common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        reamer = next((step for step in chain.steps if step.does == "ream"), None)
        if reamer is None:
            continue
        last = next(
            (hole_step for hole_step in reversed(chain.before(reamer)) if hole_step.does == "drill"), None
        )
        if last is None or last.diameter < LARGE or last.key in told or last.cutter.kind != "drill":
            continue
        before = chain.hole_before(last)
        if before is None or before.diameter >= LEAST * last.diameter:
            continue
        told.add(last.key)
        push = push_from_solid(last.operation, view.reckoned.settings[last.key])
        solid = f"; from solid the hand would need {push:.0f} N" if push is not None else ""
        wanted = round(last.diameter * OFFERED / 0.5e-3) * 0.5e-3
        between, line = drill_near(view.job, wanted, 0.6 * last.diameter, 0.8 * last.diameter)
        size = typed(between, view.job.units)
        message = f"{length(last.diameter, view.job.units)} after {length(before.diameter, view.job.units)} takes much at once{solid}: put a step of {length(between, view.job.units)} between"
        texts = {"cutter": line, "at": last.fields.at.text, "depth": last.fields.depth.text}
        setting = view.reckoned.settings[last.key]
        mend = drilled_before(last.operation, setting, texts, hole=before.diameter)
        yield remark(
            view, "small-step-before-the-reamer", message, last.key, before.key, set_up=last.set_up,
            fix=Fix(f"Add drill {size} before {last.number}", mend),
        )  # fmt: skip
