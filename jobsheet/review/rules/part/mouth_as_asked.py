"""Asks whether the mouth of a hole is as the drawing has it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, as_asked, called, holes
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("mouth-as-asked", "Counterbores and countersinks as asked", "rework")
def mouth_as_asked(view: View) -> Iterator[Remark]:
    """A counterbore, spot face or countersink of the drawing is missing, or has another diameter or depth.

    Because: The head of the screw stands out, or finds no seat.
    Not so: 6.6 cbore 11 x 6.5, drilled 6.6 and left so
    So: drilled 6.6, counterbored 11 to 6.5
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for group in holes(asked, "no mouth", "mouth too shallow", "mouth too deep", "mouth of another size"):
        message = f"{called(group.line, group.feature)}: {_found(group, view.job.units)}{group.where}"
        steps = asked.steps(group.first.steps)
        yield remark(
            view, "mouth-as-asked", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "", line=group.line,
            by_hand="put in the step for it, or mend its depth and its tool",
        )  # fmt: skip


def _found(group: Group, units: str) -> str:
    first = group.first
    name = group.feature.mouth.kind if group.feature.mouth is not None else "mouth"
    if first.state == "no mouth":
        return f"no step makes its {name}"
    if first.state == "mouth of another size":
        which = "too large" if first.out > 0 else "too small"
        return f"its {name} comes out {fine(first.found, units)}, {fine(abs(first.out), units)} {which}"
    which = "too shallow" if first.out < 0 else "too deep"
    return f"its {name} is {fine(first.found, units)} deep, {fine(abs(first.out), units)} {which}"
