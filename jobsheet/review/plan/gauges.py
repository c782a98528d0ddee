"""Gauges as they are named in words: which one, and how finely it reads."""

from __future__ import annotations

from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.words import said

#: Reading step of what is named, the finer first where names are alike [m]: as such tools are sold (common practice).
_STEPS: tuple[tuple[tuple[str, ...], float], ...] = (
    (("micrometer", "mike"), 0.01e-3),
    (("indicator", "dial gauge", "clock"), 0.01e-3),
    (("calliper", "caliper", "vernier", "depth gauge", "height gauge"), 0.02e-3),
    (("steel rule", "ruler", "rule", "tape"), 0.5e-3),
)
#: Gauges that only say yes or no.
_FIXED = (
    "plug",
    "go",
    "no-go",
    "gap gauge",
    "ring gauge",
    "slot gauge",
    "snap gauge",
    "gauge block",
    "slip gauge",
)
MEASURING = (
    "measure", "measured", "measuring", "gauge", "gage", "micrometer", "calliper", "caliper", "vernier", "check the size", "plug gauge",
    "mike",
)  # fmt: skip


def named(step: Step) -> str:
    """The gauge that a step names, where it names one in its line of tolerances."""
    asked = getattr(step.fields, "tolerances", None)
    return asked.gauge if asked is not None else ""


def reading(words: str) -> float | None:
    """How finely it reads [m]; None where nobody can say, and for gauges that only say yes or no."""
    if said(words, *_FIXED):
        return None
    return next((step for names, step in _STEPS if said(words, *names)), None)


def measures(step: Step) -> bool:
    """Whether a step is one that measures."""
    if step.roles.beside != "bench":
        return False
    return step.fields.measure is not None or said(step.words, *MEASURING)
