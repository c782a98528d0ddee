"""The highest speed marked on a cutter: it holds, whatever the machine could do."""

from __future__ import annotations

from jobsheet.limits.verdict import DOUBTFUL, by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS: frozenset[str] = frozenset()
#: Where it stands among limits of one share.
ORDER = 130
#: It only has to fit: where it does, it governs nothing.
FITS = True


def limit(figures: Figures, _setting: Setting, fields: object) -> Limit | None:
    """None where the cutter has no marked speed or does not turn."""
    cutter = getattr(fields, "cutter", None)
    speed = figures.value("spindle_speed")
    if cutter is None or cutter.marked_speed is None or speed is None:
        return None
    return by_factor(
        "marked-speed", "Marked speed", demand=speed, capacity=cutter.marked_speed, unit="rev/s",
        shown=f"{speed * 60:.0f} of {cutter.marked_speed * 60:.0f} rpm",
        tight=DOUBTFUL, when_tight="near what the cutter is marked for: no faster step",
        when_beyond="faster than the cutter is marked for: never; turn slower",
    )  # fmt: skip
