"""Asks whether the plan was made from the drawing as it is now."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.rule import View, remark, rule
from jobsheet.storage.plan_mark import plan_mark


@rule("drawing-as-planned", "The drawing as it was planned from", "habit")
def drawing_as_planned(view: View) -> Iterator[Remark]:
    """Each plan keeps the drawing's revision that it was made from; another one may have other sizes.

    Because: The sheet says the new letter and still has the old sizes.
    Not so: type revision D over C, print
    So: look through the sizes against the new drawing, then give the plan its next number
    From: common practice
    """
    job = view.job
    if not job.revisions or not job.revisions[-1].drawing:
        return
    last = job.revisions[-1]
    now = job.part.revision.strip()
    if not now or now.casefold() == last.drawing.strip().casefold():
        return
    message = (
        f"The drawing is at revision {now}; plan {plan_mark(last.number)} was made from {last.drawing}: look through every size, then "
        "give the plan its next number"
    )
    # It is about the whole job; it stands at the first step, where a reader begins.
    first = tuple(operation.key for _, operation in job.operations())[:1]
    yield remark(view, "drawing-as-planned", message, *first)
