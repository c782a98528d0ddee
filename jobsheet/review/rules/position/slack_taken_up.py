"""Asks whether a place that is reached from the high side has its backlash taken up."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.dial_readings import length
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import says, words_of
from jobsheet.review.rule import View, remark, rule

_HIGH = r"from the high side|from above the (?:line|size)|coming (?:back|down) (?:on)?to|back to the line"
_TAKEN_UP = r"back(?:ing)? off|backed off|come (?:up|back) again|past (?:the )?(?:line|slack|backlash)|take\w* up the (?:slack|backlash)"


@rule("slack-taken-up", "Backlash taken up", "scrap")
def slack_taken_up(view: View) -> Iterator[Remark]:
    """Words of a step bring the table to its place from the high side, and nothing says that the backlash is taken up.

    Because: The screw has turned back: the table stands off the line by the backlash until the nut is loaded again.
    Not so: the rear side, reached from the high side
    So: back off half a turn and come up again to the rear side
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 121; common practice
    """
    for set_up, operation, _ in view.steps():
        words = words_of(operation)
        machine = view.reckoned.settings[operation.key].machine
        if not says(_HIGH, *words) or says(_TAKEN_UP, *words) or says("table|glass|scales?", machine.readout):
            continue
        backlash = [one for one in machine.handles if one.name in ("x", "y") and one.backlash is not None]
        most = max(backlash, key=lambda one: one.backlash or 0.0) if backlash else None
        amount = length(most, most.backlash or 0.0) if most is not None else "more than the backlash"
        note = f"back off {amount} or more and come up again"
        message = f"Backlash is not taken up: {note}"
        yield remark(
            view, "slack-taken-up", message, operation.key, set_up=set_up.key,
            fix=Fix("Write how the backlash is taken up", set_field(operation.key, "note", note)),
        )  # fmt: skip
