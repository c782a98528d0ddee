"""Whether a tap under power can be brought out again, whether something slips before it
breaks, and lets go at the bottom.
"""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.tools.cutters import RELEASING, SLIPPING
from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine"})
#: Where it stands among limits of one share.
ORDER = 10
#: Why no good plan of the samples meets it.
UNMET = "it only ever says no: a tap under power that cannot come out"


def limit(figures: Figures, setting: Setting, fields: Any) -> Limit | None:
    """None where nothing is tapped under power."""
    if figures.value("tap_strength") is None or figures.value("spindle_speed") is None:
        return None
    spindle = setting.machine.spindle
    holder = getattr(fields.cutter, "holder", "")
    blind = fields.depth.value is not None
    if not spindle.reverses:
        why = "this machine does not reverse: tap by hand"
    elif not spindle.slips and holder not in SLIPPING:
        why = "nothing slips before the tap breaks: tap by hand, or with a tapping head that slips"
    elif blind and holder not in RELEASING:
        why = (
            "nothing lets go at the bottom of a blind hole: tap by hand, or in a depth-releasing tapping head"
        )
    else:
        return None
    return by_factor(
        "reverse",
        "Tapping under power",
        demand=1.0,
        capacity=0.5,
        unit="-",
        shown="by hand only",
        when_beyond=why,
    )
