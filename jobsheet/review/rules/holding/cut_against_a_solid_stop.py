"""Asks whether clamps take the cut where a jaw or stop could."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import Needs, View, remark, rule


@rule("cut-against-a-solid-stop", "Cut against a solid stop", "hazard", needs=Needs.FIGURES)
def cut_against_a_solid_stop(view: View) -> Iterator[Remark]:
    """Holding is not enough and the cut feeds across the jaws of a vice, or against straps with no stop.

    Because: Clamps hold down; they are not for taking the cut.
    Not so: straps alone, a heavy cut along the table
    So: straps, and a stop that the cut pushes against
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 117
    """
    box = stock_box(view.job)
    told: set[str] = set()
    for set_up, operation, outcome in view.steps():
        typed = type(operation.fields).__struct_fields__
        along = operation.fields.along if "along" in typed else ""
        if not any(one.name == "holding" and one.verdict == "beyond" for one in outcome.limits):
            continue
        lie = lying(set_up, box)
        if in_jaws(set_up, lie):
            across = "y" if lie.side(set_up.fixed_jaw) in ("near", "far") else "x"
            if along != across:
                continue
            message = "Holding is not enough and the cut pushes at the jaws: feed along them, or turn the job so that it pushes on the fixed jaw"
            other = "x" if across == "y" else "y"
            fix: Fix | None = Fix(f"Feed along {other}", set_field(operation.key, "along", other))
        else:
            if set_up.key in told or not holding_roles(set_up).straps or fact(set_up, "stops"):
                continue
            told.add(set_up.key)
            message = "Holding is not enough and straps alone take the cut: set a stop that it pushes against"
            sides = "left, right" if along == "x" else "front, rear" if along == "y" else "rear, left"
            fix = Fix("Add a stop", set_field(f"holding:{set_up.key}", "stops", sides))
        yield remark(view, "cut-against-a-solid-stop", message, operation.key, fix=fix, set_up=set_up.key)
