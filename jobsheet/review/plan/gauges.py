"""Gauges as a plan names them: which one, and how finely it reads."""

from __future__ import annotations

from jobsheet.catalog.tools.cutter_words import reading
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.held import does


def named(step: Step) -> str:
    """The gauge that a step names: in its line of tolerances, or as its instrument."""
    asked, size = getattr(step.fields, "tolerances", None), getattr(step.fields, "measure", None)
    if asked is not None and asked.gauge:
        return str(asked.gauge)
    if size is not None and (size.instrument or size.goes):
        return str(size.instrument or "go and no-go gauge")
    return getattr(step.fields, "instrument", None) or ""


def reads_to(step: Step) -> float | None:
    """How finely the gauge of a step reads [m]; None where none is named, nobody
    can say, or it only says yes or no.
    """
    return reading(named(step))


def measures(step: Step) -> bool:
    """Whether a step is one that measures."""
    return does(step.operation, "measure") or (
        step.roles.beside == "bench" and step.fields.measure is not None
    )
