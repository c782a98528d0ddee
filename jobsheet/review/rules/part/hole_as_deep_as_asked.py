"""Asks whether a hole is as deep as the drawing has it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, as_asked, called, holes
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("hole-as-deep-as-asked", "Holes as deep as asked", "scrap")
def hole_as_deep_as_asked(view: View) -> Iterator[Remark]:
    """A hole ends before its depth, goes beyond it, or out at the other side, or is to go through and does not.

    Depths count from the finished face: a face that is cut after the hole makes it shallower.

    Because: Too shallow, the thread or the pin has no room; too deep, it weakens what is below or comes out where it must not.
    Not so: blind 16 in a block of 15
    So: a thicker block, or blind 11
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for group in holes(asked, "too shallow", "too deep", "through the other side", "not through"):
        message = f"{called(group.line, group.feature)}: {_found(group, view.job.units)}{group.where}"
        steps = asked.steps(group.first.steps)
        yield remark(
            view, "hole-as-deep-as-asked", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "", line=group.line,
            by_hand="look at the depth of the step, at what is cut off that face before and after, and at the line",
        )  # fmt: skip


def _found(group: Group, units: str) -> str:
    first = group.first
    deep = fine(first.found, units)
    if first.state == "through the other side":
        return "it goes out at the other side, and is to be blind"
    if first.state == "not through":
        return f"it is to go through, and ends {deep} deep"
    which = "too shallow" if first.out < 0 else "too deep"
    return f"it is {deep} deep below the finished face, {fine(abs(first.out), units)} {which}"
