"""Asks whether a step that makes a size of the drawing has that size with its limits."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.words import said
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.lazily import pattern

_MAKES_SIZE = pattern(
    r"\bto (?:the )?(?:drawing )?size\b|\bto (?:Ø ?)?\d+[.,]\d+\b(?!\s*(?:deep|wide|off))", re.IGNORECASE
)


@rule("size-and-limits-entered", "Size and limits entered", "scrap")
def size_and_limits_entered(view: View) -> Iterator[Remark]:
    """A step that makes a size of the drawing has no size, or one without limits.

    A step says so in its own words (`to 40.00`, `to size`), or by a size to measure. Quiet for roughing, deburring and cuts
    to clean, and for missing limits where the note names general ones.

    Because: Remembered numbers get misread late in a job.
    Not so: mill the end to 80.0, and nothing under Measure
    So: mill the end to 80.0, measure 80 ±0.1
    From: common practice
    """
    general = said(f"{view.job.note} {view.job.part.drawing}", "general limits", "unless stated", "2768")
    for step in plan_of(view).steps:
        if not step.roles.sizes and step.roles.hole not in ("ream", "bore"):
            continue
        size = getattr(step.fields, "measure", None)
        if size is None:
            words = getattr(step.fields, "what", "")
            if not _MAKES_SIZE.search(words):
                continue
            message = "This step makes a size: enter the size and its limits from the drawing"
        elif size.high <= size.low and not general:
            message = f"{size.text} has no limits: enter them from the drawing, such as {size.text} ±0.1"
        else:
            continue
        yield remark(view, "size-and-limits-entered", message, step.key, set_up=step.set_up.key)
