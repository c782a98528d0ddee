"""Asks whether something is left on for what is done to the part afterwards."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View, remark, rule


@rule("allowance-for-the-later-process", "Allowance for the later process", "scrap")
def allowance_for_the_later_process(view: View) -> Iterator[Remark]:
    """The part is hardened, plated or ground afterwards, and it is not said how much is left on for it. Nought is said too.

    Because: Distortion and growth are removed afterwards, not before.
    Not so: hardened and ground
    So: hardened and ground, 0.3 left on for them
    From: from memory of shop practice
    """
    later, left = view.job.part.later.strip(), view.job.part.allowance
    if not later or left is not None:
        return
    message = f"{later[:1].upper()}{later[1:]} afterwards: enter what is left on for it, 0 where nothing is"
    yield remark(
        view, "allowance-for-the-later-process", message, *(step.key for step in plan_of(view).steps[:1])
    )
