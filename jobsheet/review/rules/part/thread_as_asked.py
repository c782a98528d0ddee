"""Asks whether the threads of the drawing are cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, as_asked, called, holes
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("thread-as-asked", "Threads as asked", "rework")
def thread_as_asked(view: View) -> Iterator[Remark]:
    """A hole of the drawing is to have a thread, and none is cut, another, or one that is too short.

    Because: The bolt does not go in, or holds on too few turns.
    Not so: M8 blind 16, drilled and not tapped
    So: M8 blind 16, drilled 20 deep and tapped 16
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for group in holes(asked, "no thread", "thread too shallow"):
        message = f"{called(group.line, group.feature)}: {_found(group, view.job.units)}{group.where}"
        steps = asked.steps(group.first.steps)
        yield remark(
            view, "thread-as-asked", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "", line=group.line,
            by_hand="put in the tap, or mend its depth",
        )  # fmt: skip


def _found(group: Group, units: str) -> str:
    first = group.first
    if first.state == "no thread":
        return "another thread is cut" if first.steps else "no step cuts its thread"
    if group.feature.through:
        return f"its thread is to go through, and ends {fine(first.found, units)} deep"
    return f"its thread is {fine(first.found, units)} deep, {fine(abs(first.out), units)} too short"
