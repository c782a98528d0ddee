"""Asks whether the machine can bring a tap out again."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.cutters import RELEASING
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.rule import View, remark, rule


@rule("no-power-tap-without-reverse", "Power tapping needs a reverse", "hazard")
def no_power_tap_without_reverse(view: View) -> Iterator[Remark]:
    """Tapping under power on a machine that cannot turn backward, or in a blind hole without a holder that lets go, or by a trainee.

    Because: The tap cannot be brought out again, or over-runs at the bottom, and breaks.
    Not so: tap under power on a machine without reverse
    So: tap by hand, guided by the spindle
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        if roles(operation).hole != "tap" or roles(operation).by_hand:
            continue
        machine = view.reckoned.settings[operation.key].machine
        if not machine.spindle.reverses:
            message = "This machine does not reverse: tap by hand"
        elif not operation.fields.depth.through and operation.fields.cutter.holder not in RELEASING:
            message = "Blind hole under power: the tap over-runs at the bottom; tap by hand, or in a depth-releasing tapping head"
        elif view.job.trainee:
            message = "A trainee's job: tap by hand"
        else:
            continue
        key = operation.key
        yield remark(
            view, "no-power-tap-without-reverse", message, key, set_up=set_up.key,
            fix=Fix("Tap by hand", set_field(key, "method", "by hand")),
        )  # fmt: skip
