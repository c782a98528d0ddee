"""The pace that a hand winds evenly: too fast cannot be kept, too slow becomes jerks.

Evenness governs, not strength. Up to the workshop's own two numbers nine in ten
keep it; what lies beyond is a band.
"""

from __future__ import annotations

import math

from jobsheet.limits.verdict import by_chance
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"shop"})
#: Where it stands among limits of one share.
ORDER = 50


#: Every other person jerks at 80 turns a minute and at 5, 1.6 times outside what nine in ten keep
#: even; the spread makes 8 and 50 just `expected` (holding-and-more-kinds section C1, with its
#: correction; common practice, no source).
WIDER, SPREAD = 1.6, 0.366
HAPPENS = ("jerks", "jerk")
WORKING = "half of all hands jerk at 1.6 times the workshop's fastest pace and at its slowest divided by 1.6; common practice, no source"


def limit(figures: Figures, setting: Setting, _fields: object = None) -> Limit | None:
    """None where no handle is wound for the feed."""
    pace = figures.value("handle_pace")
    if pace is None:
        return None
    fastest, slowest = setting.shop.fastest_pace * WIDER, setting.shop.slowest_pace / WIDER
    fast, slow = pace / fastest, slowest / pace if pace > 0 else math.inf
    turns = f"{pace * 60:.1f}"
    if fast >= slow:
        return by_chance(
            "hand-pace", "Hand pace", demand=pace, capacity=fastest, unit="rev/s", spread=SPREAD, happens=HAPPENS,
            shown=f"{turns} of {fastest * 60:.0f} turns a minute",
            when_tight=f"{pace * 60:.0f} turns a minute is hard to keep even: lower the feed or the speed",
            when_beyond=f"{pace * 60:.0f} turns a minute is faster than a hand winds evenly: lower the feed or the speed",
            working=WORKING,
        )  # fmt: skip
    words = f"one turn takes {1 / pace:.1f} s" if pace > 0 else "the handle stands"
    return by_chance(
        # Too slow is turned round: what is asked is the slowest that a hand keeps, what there is the pace.
        "hand-pace", "Hand pace", demand=slowest, capacity=pace, unit="rev/s", spread=SPREAD, happens=HAPPENS,
        shown=f"{turns}, at least {slowest * 60:.0f} turns a minute",
        when_tight=f"{words}: hard to keep even; raise the feed or the speed",
        when_beyond=f"{words}: slower than a hand winds evenly; raise the feed or the speed",
        working=WORKING,
    )  # fmt: skip
