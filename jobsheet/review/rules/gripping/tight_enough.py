"""Asks whether the vice is closed as it is meant to be."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import size
from jobsheet.review.plan.jaws import sits
from jobsheet.review.rule import View, remark, rule

#: Under this share of what its card calls usual a vice is hardly closed (common practice, no source).
HARDLY = 0.25


@rule("tight-enough", "Tight enough", "hazard")
def tight_enough(view: View) -> Iterator[Remark]:
    """A vice is tightened with less than a quarter of what its card calls usual, and something is cut.

    Because: The first tooth that catches pulls the work out, whatever the mean of the cut asks.
    Not so: 2 N·m on a vice that is usually closed with 20
    So: 20 N·m; for a thin part 10, with soft jaws
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found, torque = sits(set_up, steps[0]), size(set_up, "tighten")
        if found is None or found.vice is None or found.vice.usual_torque is None or torque is None:
            continue
        usual = found.vice.usual_torque
        first = next((step for step in steps if step.cuts), None)
        if torque >= HARDLY * usual - 1e-9 or first is None:
            continue
        message = (
            f"{torque:g} N·m hardly closes it: the {found.vice.name} is usually tightened with {usual:g} N·m"
        )
        fix = Fix(
            f"Tighten to {usual:g} N·m", set_field(f"holding:{set_up.key}", "tighten", f"{usual:g} N·m")
        )
        yield remark(view, "tight-enough", message, first.key, set_up=set_up.key, fix=fix)
