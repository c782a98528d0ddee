"""Asks whether a hole gets the diameter of the drawing."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, as_asked, called, holes
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("hole-to-its-size", "Holes to their size", "scrap")
def hole_to_its_size(view: View) -> Iterator[Remark]:
    """The last cut of a hole leaves another diameter than the drawing asks.

    Because: A bolt, pin or bearing does not fit.
    Not so: 16 H7 on the drawing, the last cut a drill 15.7
    So: the reamer 16 H7 behind the drill
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for group in holes(asked, "other size"):
        message = f"{called(group.line, group.feature)}: {_found(group, view.job.units)}{group.where}"
        steps = asked.steps(group.first.steps)
        yield remark(
            view, "hole-to-its-size", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "", line=group.line,
            by_hand="take the tool of that size, or put in the step that is missing",
        )  # fmt: skip


def _found(group: Group, units: str) -> str:
    first = group.first
    which = "too large" if first.out > 0 else "too small"
    return f"it comes out {fine(first.found, units)}, {fine(abs(first.out), units)} {which}"
