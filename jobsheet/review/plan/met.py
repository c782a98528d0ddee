"""What a step may run into: the bodies of the holding where they stand by then, its cutter and its holder."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.held_work import Body
from jobsheet.review.plan.faces import Step
from jobsheet.stages.course import moved


def radius_of(step: Step) -> float:
    """Half of its cutter [m]; 0 where it has none."""
    return (getattr(getattr(step.fields, "cutter", None), "diameter", None) or 0.0) / 2


def stick_out_of(step: Step) -> float | None:
    """How far its cutter stands out of its holder [m], where that is said."""
    return getattr(getattr(step.fields, "cutter", None), "stick_out", None)


def as_now(bodies: tuple[Body, ...], first: Step, step: Step) -> tuple[Body, ...]:
    """The bodies from the left near corner of the work as it is by then: what was
    milled off a side does not move them.
    """
    left, near = moved(first.lie, step.lie)
    if not left and not near:
        return bodies
    return tuple(
        replace(
            body,
            low=(body.low[0] - left, body.low[1] - near, body.low[2]),
            high=(body.high[0] - left, body.high[1] - near, body.high[2]),
        )
        for body in bodies
    )
