"""Asks whether round work is held so that it cannot roll."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import in_vice, plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("vee-for-round-work", "Vee jaws for round work", "hazard")
def vee_for_round_work(view: View) -> Iterator[Remark]:
    """Round stock between plain jaws: standing up, or lying with nothing under it.

    Because: Two lines of contact let it roll.
    Not so: round bar upright between plain jaws
    So: round bar in vee jaws; or lying on parallels, gripped at its middle
    From: GTZ, course in metalworking, drilling and clamping; J. Rose, Modern Machine Shop Practice, figures
    1511 to 1521
    """
    if not view.job.stock.is_round:
        return
    size = view.job.stock.sizes
    for set_up, steps in plan_of(view).groups():
        lie = steps[0].lie
        if not in_vice(set_up, lie) or holding_roles(set_up).round or fact(set_up, "jaws") == "soft":
            continue
        upright = lie.size[2] >= max(size) * (1 - 1e-6) and max(size) > min(size)
        if not upright and fact(set_up, "rests_on") in ("parallels", "bed"):
            continue
        yield remark(
            view, "vee-for-round-work", "Round work between plain jaws can roll: vee jaws or vee blocks", set_up.operations[0].key,
            set_up=set_up.key, fix=Fix("Vee jaws", set_field(f"holding:{set_up.key}", "jaws", "vee")),
        )  # fmt: skip
