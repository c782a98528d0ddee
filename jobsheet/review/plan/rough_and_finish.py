"""Roughing and finishing of one face or wall: which step is which, and how much the last one takes."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.review.plan.cuts import WALL, layer_of
from jobsheet.review.plan.faces import Plan, Step, width_of_limits
from jobsheet.units.show import plain, trimmed
from jobsheet.units.table import INCH

#: What is left for a finishing pass by a mend [m]: within the published tenth to
#: six tenths (common practice).
LEFT = 0.3e-3


class Last(Struct, frozen=True, kw_only=True):
    """The last pass of a face or wall: how thick it is [m], and whether something roughed before it."""

    step: Step
    thick: float
    rough: Step | None


def last_pass(plan: Plan, step: Step) -> Last | None:
    """What a step does last to a face or wall; None where it makes neither."""
    fields = step.fields
    if step.roles.mills == "flat":
        before = [
            other
            for other in plan.steps[: step.index]
            if other.set_up.key == step.set_up.key and step.lie.up in other.makes
        ]
        return Last(step=step, thick=layer_of(step) or 0.0, rough=before[-1] if before else None)
    if step.roles.mills == "wall" and fields.path is None:
        if fields.leave is not None:
            return Last(step=step, thick=fields.leave.value, rough=step)
        cut = fields.cut.value if fields.cut is not None else fields.width.value
        side = step.makes[0] if step.makes else ""
        before = [
            other
            for other in plan.steps[: step.index]
            if other.set_up.key == step.set_up.key and side and side in other.makes
        ]
        return Last(step=step, thick=min(cut, fields.width.value), rough=before[-1] if before else None)
    if step.roles.mills == "recess" and fields.leave is not None:
        return Last(step=step, thick=fields.leave.value, rough=step)
    return None


def close(step: Step, width: float) -> bool:
    """Whether the limits of its size are closer than that width in all [m]."""
    found = width_of_limits(step)
    return found is not None and found < width - 1e-9


def finishes(step: Step, width: float) -> bool:
    """Whether it is a milling step that makes a size with limits closer than that."""
    return step.roles.sizes and close(step, width)


def only_wall(step: Step) -> bool:
    """Whether a pocket's step takes only its wall."""
    return getattr(step.fields, "clear", "") == WALL


def length_text(value: float, units: str) -> str:
    """A length as it is typed, with its unit."""
    return f"{plain(value / INCH, 4)} in" if units == "in" else f"{trimmed(value * 1e3, 3)} mm"
