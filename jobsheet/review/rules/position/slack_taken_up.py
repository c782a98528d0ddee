"""Asks whether a place that is reached from the high side has its backlash taken up."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import reads_table
from jobsheet.machine.dial_readings import length
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import HIGH_SIDE, TAKEN_UP, with_manner
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import how
from jobsheet.review.rule import View, remark, rule


@rule("slack-taken-up", "Backlash taken up", "scrap")
def slack_taken_up(view: View) -> Iterator[Remark]:
    """A step brings the table to its place from the high side, and it does not say that the backlash is taken up.

    Because: The screw has turned back: the table stands off the line by the backlash until the nut is loaded again.
    Not so: the rear side, reached from the high side
    So: back off half a turn and come up again to the rear side
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 121; common practice
    """
    for set_up, operation, _ in view.steps():
        machine = view.reckoned.settings[operation.key].machine
        if not how(operation, HIGH_SIDE) or how(operation, TAKEN_UP) or reads_table(machine):
            continue
        backlash = [
            handle for handle in machine.handles if handle.name in ("x", "y") and handle.backlash is not None
        ]
        most = max(backlash, key=lambda handle: handle.backlash or 0.0) if backlash else None
        amount = length(most, most.backlash or 0.0) if most is not None else "more than the backlash"
        message = f"Backlash is not taken up: back off {amount} or more and come up again"
        yield remark(
            view, "slack-taken-up", message, operation.key, set_up=set_up.key,
            fix=Fix("Say that it is taken up", set_field(operation.key, "how", with_manner(operation.fields, TAKEN_UP))),
        )  # fmt: skip
