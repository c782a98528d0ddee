"""Asks whether clamps take the cut where a jaw or stop could."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import holding_roles, stopped
from jobsheet.review.rule import Needs, View, remark, rule


@rule("cut-against-a-solid-stop", "Cut against a solid stop", "hazard", needs=Needs.FIGURES)
def cut_against_a_solid_stop(view: View) -> Iterator[Remark]:
    """Holding is not enough and the cut feeds across the jaws of a vice; or it is not enough or doubtful, and straps with no stop or screws with no dowel take the cut.

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
        verdict = next((limit.verdict for limit in outcome.limits if limit.name == "holding"), "")
        if verdict not in ("tight", "beyond"):
            continue
        lie = lying(set_up, box)
        if in_jaws(set_up, lie):
            if verdict != "beyond":
                continue
            across = "y" if lie.side(set_up.fixed_jaw) in ("near", "far") else "x"
            if along != across:
                continue
            message = "Holding is not enough and the cut pushes at the jaws: feed along them, or turn the job so that it pushes on the fixed jaw"
            other = "x" if across == "y" else "y"
            fix: Fix | None = Fix(f"Feed along {other}", set_field(operation.key, "along", other))
        else:
            plays = holding_roles(set_up)
            if set_up.key in told or not (plays.straps or plays.screwed) or stopped(set_up):
                continue
            told.add(set_up.key)
            word = "is not enough" if verdict == "beyond" else "is doubtful"
            if plays.screwed:
                yield remark(
                    view, "cut-against-a-solid-stop",
                    f"Holding {word} and the friction of the screws alone takes the cut: a screw never carries it, set dowels",
                    operation.key, fix=Fix("Two dowels", set_field(f"holding:{set_up.key}", "dowels", "2")), set_up=set_up.key,
                )  # fmt: skip
                continue
            message = f"Holding {word} and straps alone take the cut: set a stop that it pushes against"
            sides = "left, right" if along == "x" else "front, rear" if along == "y" else "rear, left"
            fix = Fix("Add a stop", set_field(f"holding:{set_up.key}", "stops", sides))
        yield remark(view, "cut-against-a-solid-stop", message, operation.key, fix=fix, set_up=set_up.key)
