"""Asks whether each tooth has enough to cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.shared.least_chip import least_chip
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import in_turn, set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import finest, rounded
from jobsheet.review.plan.rough_and_finish import length_text
from jobsheet.review.rule import Needs, View, remark, rule


@rule("chip-thick-enough", "A chip thick enough", "rework", needs=Needs.FIGURES)
def chip_thick_enough(view: View) -> Iterator[Remark]:
    """The feed per tooth is so small that the edge rubs.

    Quiet for reamers and form tools.

    Because: Rubbing heats, hardens and blunts.
    Not so: 0.005 a tooth with an HSS end mill
    So: 0.03 a tooth
    From: common practice
    """
    for step in plan_of(view).steps:
        tooth = step.figure("feed_per_tooth")
        if not step.roles.sizes or tooth is None:
            continue
        least = least_chip(step.fields.cutter)
        if least is None or tooth >= least * (1 - 1e-6):
            continue
        message = f"Feed a little faster or turn slower: {finest(tooth, view.job.units)} a tooth rubs, {rounded(least, view.job.units)} or more cuts"
        text = length_text(least * 1.5, view.job.units)
        least_fix = Fix(
            f"{text} a tooth",
            in_turn(set_field(step.key, "feed_per_tooth", text), set_field(step.key, "feed", "")),
        )
        yield remark(
            view, "chip-thick-enough", message, step.key, set_up=step.set_up.key,
            fix=best_here(step.operation, step.setting), others=(least_fix,),
        )  # fmt: skip
