"""Asks whether a cutter turns faster than is marked on it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.spindle import steps as speeds
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("below-the-marked-speed", "Below the marked speed", "hazard", needs=Needs.FIGURES)
def below_the_marked_speed(view: View) -> Iterator[Remark]:
    """The spindle turns faster than the highest speed entered for this cutter.

    Quiet where none is entered.

    Because: A counterweight thrown off a fly cutter went through several walls.
    Not so: 2000 rpm with a cutter marked 1500
    So: 1250 rpm
    From: common practice
    """
    for step in plan_of(view).steps:
        cutter = getattr(step.fields, "cutter", None)
        speed = step.figure("spindle_speed")
        if (
            cutter is None
            or not cutter.marked_speed
            or speed is None
            or speed <= cutter.marked_speed * (1 + 1e-9)
        ):
            continue
        message = f"Too fast for this cutter: {speed * 60:.0f} rpm, and {cutter.marked_speed * 60:.0f} rpm is marked on it"
        under = [speed for speed in speeds(step.setting.machine) if speed.speed <= cutter.marked_speed]
        text = f"{under[-1].marked} rpm" if under else f"{int(cutter.marked_speed * 60)} rpm"
        fix = Fix(text, set_field(step.key, "spindle", text)) if hasattr(step.fields, "spindle") else None
        yield remark(
            view, "below-the-marked-speed", message, step.key, set_up=step.set_up.key,
            fix=fix, others=(best_here(step.operation, step.setting),) if fix else (),
        )  # fmt: skip
