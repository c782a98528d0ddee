"""Asks whether work that stands far out of a chuck has a tailstock."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.chucked import chucked
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: It may stand out by so many diameters without one (holding-and-more-kinds A1, common practice).
MOST = 3.0


@rule("tailstock-for-a-long-overhang", "Tailstock for a long overhang", "scrap")
def tailstock_for_a_long_overhang(view: View) -> Iterator[Remark]:
    """Work stands more than three diameters out of its chuck, and no tailstock is at its end.

    Because: Its end gives way under the cutter, and the jaws let it go.
    Not so: a shaft of 20, 90 out of the chuck
    So: the same shaft with the tailstock at its end
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = chucked(set_up, steps[0])
        if found is None or found.out is None or not found.diameter or found.tailstock:
            continue
        out, diameter = found.out, found.diameter
        if out <= MOST * diameter + 1e-9 or not any(step.cuts for step in steps):
            continue
        units = view.job.units
        message = f"{length(out, units)} stands out of the chuck, {out / diameter:.1f} diameters: up to {MOST:g} goes without a tailstock"
        fix = Fix("Tailstock at its end", set_field(f"holding:{set_up.key}", "tailstock", "yes"))
        yield remark(view, "tailstock-for-a-long-overhang", message, steps[0].key, fix=fix, set_up=set_up.key)
