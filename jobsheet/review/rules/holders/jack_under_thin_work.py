"""Asks whether long thin work between centres is held up in its middle."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: From so many diameters on it wants a jack (holding-and-more-kinds A2: Ø20 × 200 gives way 15 µm under 150 N).
FROM = 10.0


@rule("jack-under-thin-work", "Jack under thin work", "scrap")
def jack_under_thin_work(view: View) -> Iterator[Remark]:
    """Work between centres is ten diameters long or longer, and no jack stands under its middle.

    Because: It bends away in the middle, and the cut is shallower there.
    Not so: Ø20 × 200 between centres, nothing under it
    So: Ø20 × 200 between centres, a jack under its middle
    From: bending of a bar between two points; common practice
    """
    for set_up, steps in plan_of(view).groups():
        long, diameter = size(set_up, "length"), size(set_up, "diameter")
        if not holding_roles(set_up).between or not long or not diameter or fact(set_up, "jack"):
            continue
        if long < FROM * diameter - 1e-9 or not any(step.cuts for step in steps):
            continue
        units = view.job.units
        message = (
            f"{length(long, units)} between the centres on {length(diameter, units)}: a jack under its middle"
        )
        fix = Fix("A jack under its middle", set_field(f"holding:{set_up.key}", "jack", "yes"))
        yield remark(view, "jack-under-thin-work", message, steps[0].key, fix=fix, set_up=set_up.key)
