"""Asks whether the size of a step has limits."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.manners import TO_SIZE
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import how
from jobsheet.review.rule import View, remark, rule


@rule("size-and-limits-entered", "Size and limits entered", "scrap")
def size_and_limits_entered(view: View) -> Iterator[Remark]:
    """A step that makes a size of the drawing has one without limits, or says that it is cut to size and names none.

    Quiet for roughing, deburring and cuts to clean, and for missing limits where the part has general ones.

    Because: Remembered numbers get misread late in a job.
    Not so: mill the end, to the measured size, and nothing under Measure
    So: mill the end, to the measured size, measure 80 ±0.1
    From: common practice
    """
    general = bool(view.job.part.general_limits.strip())
    for step in plan_of(view).steps:
        if not step.roles.sizes and step.roles.hole not in ("ream", "bore"):
            continue
        size = getattr(step.fields, "measure", None)
        if size is None or not size.nominal:
            if not how(step.operation, TO_SIZE):
                continue
            message = "This step makes a size: enter the size and its limits from the drawing"
        elif size.high <= size.low and not general:
            message = f"{size.said} has no limits: enter them from the drawing, such as {size.said} ±0.1"
        else:
            continue
        yield remark(view, "size-and-limits-entered", message, step.key, set_up=step.set_up.key)
