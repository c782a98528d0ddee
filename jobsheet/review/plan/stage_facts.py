"""Facts of the solids by the step that they are about."""

from __future__ import annotations

from jobsheet.model.job import Operation, SetUp
from jobsheet.review.rule import View


def step_of(view: View, key: str) -> tuple[SetUp, Operation] | None:
    """The step of a fact and its set-up; None where the plan has changed since the solids were made."""
    try:
        return view.job.find(key)
    except KeyError:
        return None
