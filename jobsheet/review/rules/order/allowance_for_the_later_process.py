"""Asks whether something is left on for what is done to the part afterwards."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.words import said
from jobsheet.review.rule import View, remark, rule

_LATER = (
    "harden", "hardened", "hardening", "ground", "grind", "grinding", "plate", "plated", "plating", "nitride", "nitrided",
    "anodise", "anodised", "anodize", "anodized", "case hardened", "carburise", "carburised", "lap", "lapped", "honed",
)  # fmt: skip


@rule("allowance-for-the-later-process", "Allowance for the later process", "scrap")
def allowance_for_the_later_process(view: View) -> Iterator[Remark]:
    """The part is hardened, plated or ground afterwards, and nothing says how much is left on for it.

    A number behind the process counts as the allowance, nought too; so do the words of a step that leaves some.

    Because: Distortion and growth are removed afterwards, not before.
    Not so: hardened and ground
    So: hardened and ground, 0.3 left on the top
    From: from memory of shop practice
    """
    job = view.job
    later = job.part.later
    if (
        not said(later, *_LATER)
        or re.search(r"\d", later)
        or said(later, "no allowance", "nothing left", "none")
    ):
        return
    steps = plan_of(view).steps
    if any(
        said(step.words, "allowance", "left for grinding", "for grinding", "for plating", "for hardening")
        for step in steps
    ):
        return
    message = f"{later.strip()[:1].upper()}{later.strip()[1:]} afterwards: enter the allowance for it, such as “{later.strip()}, 0.3 left on”"
    yield remark(view, "allowance-for-the-later-process", message, *(step.key for step in steps[:1]))
