"""Two hands on a tap wrench: easy, strong, and more than they give."""

from __future__ import annotations

from jobsheet.limits.verdict import by_chance, spread_between
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS: frozenset[str] = frozenset()
#: Where it stands among limits of one share.
ORDER = 80


def limit(figures: Figures, _setting: Setting, _fields: object) -> Limit | None:
    """None where no wrench is turned."""
    torque, easy, strong = (figures.value(name) for name in ("torque", "wrench_easy", "wrench_strong"))
    if torque is None or easy is None or strong is None:
        return None
    return by_chance(
        "wrench", "Tap wrench", demand=torque, capacity=strong, unit="N*m", spread=spread_between(easy, strong),
        happens=("tires", "tire"),
        shown=f"{torque:.2f} of {strong:.1f} N·m",
        when_tight="more than is comfortable: a longer wrench, or a larger hole",
        when_beyond="more than two hands give: a longer wrench, or a larger hole",
    )  # fmt: skip
