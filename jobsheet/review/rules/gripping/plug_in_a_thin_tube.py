"""Asks whether a thin tube is filled where jaws squeeze it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: A wall under this share of the diameter is thin: as in the strength of pressure vessels, a tenth (Shigley's
#: Mechanical Engineering Design, 8th edition, chapter 3, of the radius: a twentieth of the diameter); jaws
#: press in lines, so twice that (common practice).
THIN = 0.1


@rule("plug-in-a-thin-tube", "Plug in a thin tube", "scrap")
def plug_in_a_thin_tube(view: View) -> Iterator[Remark]:
    """The jaws of a vice squeeze a tube whose wall is thinner than a tenth of its diameter, and nothing fills it.

    Because: It is pressed oval, cut while it is, and springs back; the drill dents it.
    Not so: a tube of 50 with a wall of 3 between jaws, empty
    So: the same tube with a plug that fits its bore
    From: common practice
    """
    stock = view.job.stock
    if stock.wall is None or stock.diameter is None or stock.shape != "tube":
        return
    wall, diameter = stock.wall.value, stock.diameter.value
    if wall >= THIN * diameter - 1e-9:
        return
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        if first is None or not holding_roles(set_up).jaws or fact(set_up, "supported_by") == "filler":
            continue
        units = view.job.units
        message = f"The jaws press this tube oval: {length(wall, units)} of wall on {length(diameter, units)}; fill it with a plug"
        fix = Fix("A filler in it", set_field(f"holding:{set_up.key}", "supported_by", "filler"))
        yield remark(view, "plug-in-a-thin-tube", message, first.key, set_up=set_up.key, fix=fix)
