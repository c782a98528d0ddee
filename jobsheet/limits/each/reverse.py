"""Whether a tap under power can be brought out again, and whether something slips before it breaks."""

from __future__ import annotations

from typing import Any

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine"})


def limit(figures: Figures, setting: Setting, fields: Any) -> Limit | None:
    """None where nothing is tapped under power."""
    if figures.value("tap_strength") is None or figures.value("spindle_speed") is None:
        return None
    spindle = setting.machine.spindle
    slips = spindle.slips or getattr(fields.cutter, "holder", "") == "tapping head"
    if spindle.reverses and slips:
        return None
    why = (
        "this machine does not reverse: tap by hand"
        if not spindle.reverses
        else "nothing slips before the tap breaks: tap by hand, or with a tapping head that slips"
    )
    return by_factor(
        "reverse",
        "Tapping under power",
        demand=1.0,
        capacity=0.5,
        unit="-",
        shown="by hand only",
        when_beyond=why,
    )
