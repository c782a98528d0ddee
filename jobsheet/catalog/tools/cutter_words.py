"""What else stands in the line of a cutter or gauge, beside what `cutters.py` takes from it."""

from __future__ import annotations

import re

from jobsheet.model.quantity import Cutter
from jobsheet.remembered import remembered
from jobsheet.units.lazily import pattern

_TIP = pattern(r"(\d[\d.,/]*\s*(?:mm|in)?)\s+tip\b|\btip\s+(\d[\d.,/]*\s*(?:mm|in)?)", re.IGNORECASE)
#: Reading step of what is named, the finer first where names are alike [m]: as
#: such tools are sold (common practice).
_STEPS: tuple[tuple[str, float], ...] = (
    ("micrometers?|mikes?", 0.01e-3),
    ("indicators?|dial gauges?|clocks?", 0.01e-3),
    ("callipers?|calipers?|verniers?|depth gauges?|height gauges?", 0.02e-3),
    ("steel rules?|rulers?|rules?|tapes?", 0.5e-3),
)
#: Gauges that only say yes or no.
_FIXED = r"plugs?|no-go|go|(?:gap|ring|slot|snap|slip) gauges?|gauge blocks?"


@remembered(64)
def _pattern(words: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{words})\b", re.IGNORECASE)


def line_has(cutter: Cutter, *words: str) -> bool:
    """Whether the line of a cutter has one of these: `stub`, `hand tap`, `gun drill`; in the plural too."""
    either = "|".join(re.escape(word).replace(r"\ ", r"[\s-]+") + "s?" for word in words)
    return _pattern(either).search(cutter.text) is not None


def tip_of_line(cutter: Cutter) -> str:
    """The tip of an edge finder as its line has it, such as `10 mm`; nothing where it has none."""
    return next((tip for part in cutter.extra if (tip := tip_in(part))), "")


def tip_in(line: str) -> str:
    """The tip of a finder in its line as it was typed."""
    match = _TIP.search(line)
    return (match[1] or match[2]).strip() if match else ""


def reading(gauge: str) -> float | None:
    """How finely a gauge of that name reads [m]; None where nobody can say, and
    for gauges that only say yes or no.
    """
    if not gauge or _pattern(_FIXED).search(gauge):
        return None
    return next((step for names, step in _STEPS if _pattern(names).search(gauge)), None)
