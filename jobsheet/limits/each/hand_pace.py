"""The pace that a hand winds evenly: too fast cannot be kept, too slow becomes jerks.

Goes by a factor, not by a chance: the pace is a workshop's own number (common practice 8-50 turns a minute).
"""

from __future__ import annotations

from typing import Any

from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"shop"})


def limit(figures: Figures, setting: Setting, _fields: Any = None) -> Limit | None:
    """None where no handle is wound for the feed."""
    pace = figures.value("handle_pace")
    if pace is None:
        return None
    fastest, slowest = setting.shop.fastest_pace, setting.shop.slowest_pace
    share, verdict, sentence = pace / fastest, "expected", ""
    shown = f"{pace * 60:.1f} of {fastest * 60:.0f} turns a minute"
    way = setting.shop.out_of_hand(pace)
    if way > 0:
        verdict = "beyond"
        sentence = (
            f"{pace * 60:.0f} turns a minute is more than a hand keeps even: lower the feed or the speed"
        )
    elif way < 0:
        share, verdict = slowest / pace, "tight"
        shown = f"{pace * 60:.1f}, at least {slowest * 60:.0f} turns a minute"
        sentence = f"one turn takes {1 / pace:.1f} s: hard to keep even; raise the feed or the speed"
    return Limit(
        name="hand-pace", title="Hand pace", demand=pace, capacity=fastest, unit="rev/s", share=share,
        verdict=verdict, low=fastest, high=fastest, shown=shown, sentence=sentence,
    )  # fmt: skip
