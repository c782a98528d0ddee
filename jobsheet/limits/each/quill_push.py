"""The push on the quill lever: what an arm keeps up for as long as one stroke lasts.

A strong push is one of seconds: it counts whole to some 13 s, half after a minute.
"""

from __future__ import annotations

from jobsheet.cutting.reference import PECK
from jobsheet.limits.verdict import by_chance
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"shop"})
#: Where it stands among limits of one share.
ORDER = 60


#: Of the strongest push of people, as a standard deviation of its logarithm
#: (holding-and-more-kinds section C1: published).
SPREAD = 0.30
#: So long [s] a push is whole in any case; the power law has no value for nought.
_MOMENT = 1.0


def limit(figures: Figures, setting: Setting, _fields: object = None) -> Limit | None:
    """None where nothing is fed by the lever."""
    push = figures.value("lever_push")
    if push is None:
        return None
    lasts = longest_peck(figures)
    part = share_of_strength(lasts)
    strong = setting.shop.strong_push * part
    rest = "" if part >= 1 else f": {part * 100:.0f} % of a strong push is what an arm keeps up so long"
    return by_chance(
        "quill-push", "Quill push", demand=push, capacity=strong, unit="N", spread=SPREAD,
        happens=("tires", "tire"), shown=f"{push:.0f} of {strong:.0f} N",
        when_tight="only for seconds: pecks rest the arm, and a pilot hole makes it easy",
        when_beyond="more than an arm gives: drill a pilot hole first, or feed less a turn",
        working=f"one stroke lasts {lasts:.0f} s{rest}",
    )  # fmt: skip


def longest_peck(figures: Figures) -> float:
    """How long the arm pushes without a rest [s]."""
    strokes = figures.count("strokes")
    return max(0.0, figures.number("time_each") - PECK * (strokes - 1)) / strokes


def share_of_strength(seconds: float) -> float:
    """The part of a strong push that is kept up so long: a power law through
    50 % for 63 s and 80 % for 21 s.
    """
    return min(1.0, 0.5 * float((max(seconds, _MOMENT) / 63.3) ** -0.433))
