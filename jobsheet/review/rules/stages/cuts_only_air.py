"""Asks whether a cut meets metal."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import taken_out
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.stages.course import Course, Cut, course_of


@rule("cuts-only-air", "A cut that meets metal", "rework", needs=Needs.STAGES)
def cuts_only_air(view: View) -> Iterator[Remark]:
    """A step that cuts, and takes nothing: the metal there has gone before, or the place, zero or depth is wrong.

    Because: Either the step is not needed, or it is not where it was meant to be.
    Not so: mill a slot where a pocket was milled before
    So: leave the step out, or put it where the metal is
    From: the solids of the plan
    """
    for fact in view.facts_of("cuts-air"):
        step = step_of(view, fact.key)
        if step is None:
            continue
        set_up, operation = step
        message = "This step takes no metal: it was cut before, or place, zero or depth is not what was meant"
        yield remark(
            view, "cuts-only-air", message, operation.key, set_up=set_up.key, fix=_not_needed(view, operation),
            by_hand="put it where the metal is: look at its place, the zero, the way it counts and the depth",
        )  # fmt: skip


def _not_needed(view: View, operation: Operation) -> Fix | None:
    """Without the step, where others took all of its metal before; one that lies beside the stock, or that has a size, is meant."""
    asked = getattr(operation.fields, "measure", None)
    course = course_of(view.job, view.reckoned.settings)
    cut = next((cut for cut in course.cuts if cut.key == operation.key), None)
    if (
        asked is not None
        or cut is None
        or any(not _over(at, cut, course) for sized in cut.shapes for at in sized.corners)
    ):
        return None
    return Fix(f"Take out step {operation.number}", taken_out(operation.key))


def _over(at: tuple[float, float], cut: Cut, course: Course) -> bool:
    """Whether a place lies over the stock as it was bought."""
    return all(
        low - 1e-9 <= value <= high + 1e-9
        for value, (low, high) in zip(cut.before.in_stock(*at), course.stock, strict=False)
    )
