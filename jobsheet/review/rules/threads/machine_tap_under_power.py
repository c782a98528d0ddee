"""Asks whether a tap under power is made for it, and whether something slips."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.cutter_words import line_has
from jobsheet.catalog.tools.cutters import SLIPPING
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.rule import Needs, View, remark, rule


@rule("machine-tap-under-power", "Machine tap under power", "hazard", needs=Needs.FIGURES)
def machine_tap_under_power(view: View) -> Iterator[Remark]:
    """Tapping under power with a hand tap, or without anything that can slip. How fast it may turn is the cutting speed's limit.

    Because: Several things must be right at once, and hand taps are not made for it: it breaks, or takes the work along.
    Not so: hand tap under power in a plain chuck
    So: machine tap in a tapping head, slowly; or by hand
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        if roles(operation).hole != "tap" or roles(operation).by_hand:
            continue
        machine = view.reckoned.settings[operation.key].machine
        if not machine.spindle.reverses:
            continue  # said by no-power-tap-without-reverse
        cutter = operation.fields.cutter
        if line_has(cutter, "hand tap"):
            message = "A hand tap is not made for power: take a machine tap, or tap by hand"
        elif cutter.holder not in SLIPPING and not machine.spindle.slips:
            message = "Nothing slips here when the tap binds: a tapping head, or tap by hand"
        else:
            continue
        yield remark(
            view, "machine-tap-under-power", message, operation.key, set_up=set_up.key,
            fix=Fix("Tap by hand", set_field(operation.key, "method", "by hand")),
        )  # fmt: skip
