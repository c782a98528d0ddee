"""Asks whether every hole of the drawing is made."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, as_asked, called, holes
from jobsheet.review.rule import View, remark, rule


@rule("hole-missing", "Every hole is made", "rework")
def hole_missing(view: View) -> Iterator[Remark]:
    """A line of the drawing asks for a hole, and no step makes one at its place.

    Because: A hole that is forgotten is found when the part is bolted on.
    Not so: four places on the drawing, three at the drill
    So: the same places at the drill as on the drawing
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for group in holes(asked, "missing"):
        message = f"{called(group.line, group.feature)}: {_found(group, view.job.units)}{group.where}"
        steps = asked.steps(group.first.steps)
        yield remark(
            view, "hole-missing", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "", line=group.line,
            by_hand="put in the steps that make it, or mend the places of the step or of the line",
        )  # fmt: skip


def _found(group: Group, units: str) -> str:
    del units
    return (
        "no step makes it"
        if group.feature.count == 1
        else "no step makes them"
        if not group.where
        else "no step makes one"
    )
