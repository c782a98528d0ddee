"""Asks whether what is pushed down has something under it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.plan.jaws import sits
from jobsheet.review.rule import View, remark, rule


@rule("something-under-the-drill", "Something under the drill", "scrap")
def something_under_the_drill(view: View) -> Iterator[Remark]:
    """A hole is made while the parallels are taken out, so that the jaws alone keep the work from being pushed down.

    Because: The drill pushes the work down between the jaws: it tilts, and depth and squareness are gone.
    Not so: parallels taken out, drill 8 deep
    So: parallels kept in, clear of the hole
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if sits(set_up, steps[0]) is None or fact(set_up, "parallels_then") != "taken out":
            continue
        hole = next((step for step in steps if step.cuts and step.roles.hole), None)
        if hole is None:
            continue
        yield remark(
            view, "something-under-the-drill", "The parallels are out, and this pushes the work down: keep them in, clear of the hole",
            hole.key, set_up=set_up.key, fix=Fix("Parallels kept in", set_field(f"holding:{set_up.key}", "parallels_then", "kept in")),
        )  # fmt: skip
