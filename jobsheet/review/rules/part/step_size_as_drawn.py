"""Asks whether a step names the size and the limits that the drawing has."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.asked_limits import SAME, Limited, last_size, limited, names, size_of
from jobsheet.review.plan.faces import Step
from jobsheet.review.rule import View, remark, rule


@rule("step-size-as-drawn", "Sizes in the steps as on the drawing", "scrap")
def step_size_as_drawn(view: View) -> Iterator[Remark]:
    """A step names a size with wider limits than the drawing gives it, or the last step of a size names another.

    Because: Who works by the sheet measures what the step says, not what the drawing says.
    Not so: 25 ±0.03 on the drawing, 25 ±0.1 in the step
    So: 25 ±0.03 in both
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    told: set[str] = set()
    sizes = tuple(limited(asked))
    for one in sizes:
        for step in asked.plan.steps:
            if not names(step, one) or step.key in told or any(_within(step, other) for other in sizes):
                continue
            size = size_of(step)
            if size.high <= size.low:
                continue  # without limits: another remark
            told.add(step.key)
            yield _told(view, step, one, "wider limits")
        last = last_size(one)
        if last is not None and last[0].key not in told and abs(last[1].nominal - one.size.nominal) > SAME:
            if one.size.low - SAME <= last[1].nominal <= one.size.high + SAME:
                continue
            told.add(last[0].key)
            yield _told(view, last[0], one, "another size")


def _within(step: Step, one: Limited) -> bool:
    """Whether the limits of a step lie within those of a size it names."""
    size = size_of(step)
    return names(step, one) and size.low >= one.size.low - 1e-9 and size.high <= one.size.high + 1e-9


def _told(view: View, step: Step, one: Limited, what: str) -> Remark:
    text = one.size.text.strip()
    message = f"The step names {size_of(step).said}, the drawing {text}: {what}"
    return remark(
        view, "step-size-as-drawn", message, step.key, set_up=step.set_up.key, line=one.line,
        fix=Fix(f"Write {text}", set_field(step.key, "measure", text)),
    )  # fmt: skip
