"""Asks whether round work is held so that it cannot roll."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import holding_words, says
from jobsheet.review.rule import View, remark, rule

_ROUND = r"round (?:bar|stock|steel|rod)|shaft|(?:bright|drawn|black|turned|ground) round|round|rod"
_HELD = r"vee|v[- ]?blocks?|v[- ]jaws?|collet|chuck|dividing head|soft jaws? bored|three[- ]jaw"


@rule("vee-for-round-work", "Vee jaws for round work", "hazard")
def vee_for_round_work(view: View) -> Iterator[Remark]:
    """Round stock between plain jaws: standing up, or lying with nothing under it.

    Because: Two lines of contact let it roll.
    Not so: round bar upright between plain jaws
    So: round bar in vee jaws; or lying on parallels, gripped at its middle
    From: GTZ, course in metalworking, drilling and clamping; J. Rose, Modern Machine Shop Practice, figures
    1511 to 1521
    """
    if not says(_ROUND, view.job.stock.condition):
        return
    for set_up in view.job.set_ups:
        words = (*holding_words(set_up), set_up.title)
        if not set_up.operations or not says("vise|vice|jaws?", set_up.holding.device) or says(_HELD, *words):
            continue
        upright = says("upright|stood up|on end|standing", *words)
        if not upright and says("parallels?|bed", set_up.holding.packing):
            continue
        text = f"{set_up.holding.packing}, vee block at the moving jaw".lstrip(", ")
        yield remark(
            view, "vee-for-round-work", "Round work between plain jaws can roll: vee jaws or vee blocks", set_up.operations[0].key,
            set_up=set_up.key, fix=Fix("Vee block at the moving jaw", set_field(f"holding:{set_up.key}", "packing", text)),
        )  # fmt: skip
