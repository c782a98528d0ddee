"""Asks whether the holes lie where the drawing has them."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import Group, all_shifted, as_asked, called, holes
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule

_BY_HAND = "look at the places of the step, the zero and the way it counts, and at the places of the line"


@rule("hole-on-its-place", "Holes on their places", "scrap")
def hole_on_its_place(view: View) -> Iterator[Remark]:
    """A hole is made beside the place that the drawing gives it: the place, the zero, or the way it counts is another.

    Because: A hole that is out of place is put right only with a new part.
    Not so: 20, 15 on the drawing, 20, 25 at the drill
    So: the place of the drawing, counted from its datum
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    together = all_shifted(asked)
    for set_up, groups in together.items():
        lines = ", ".join(str(group.line) for group in groups)
        message = f"All holes of this set-up (lines {lines}) are made {_most(groups, view)} beside their places: look at the zero"
        keys = dict.fromkeys(key for group in groups for key in group.first.steps)
        yield remark(
            view, "hole-on-its-place", message, *keys, set_up=set_up, line=groups[0].line, by_hand=_BY_HAND
        )
    told = {group.line for groups in together.values() for group in groups}
    for group in holes(asked, "shifted"):
        if group.line not in told:
            steps = asked.steps(group.first.steps)
            message = f"{called(group.line, group.feature)}: made {_most((group,), view)} beside its place{group.where}"
            yield remark(
                view, "hole-on-its-place", message, *group.first.steps, set_up=steps[0].set_up.key if steps else "",
                line=group.line, by_hand=_BY_HAND,
            )  # fmt: skip


def _most(groups: tuple[Group, ...], view: View) -> str:
    return fine(max(hole_found.out for group in groups for hole_found in group.places), view.job.units)
