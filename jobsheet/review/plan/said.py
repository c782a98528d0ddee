"""What the words of a plan say, read leniently and only where they are plain; and lengths as they would be typed."""

from __future__ import annotations

import re
from functools import cache

from jobsheet.model.job import Operation, SetUp
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


@cache
def _pattern(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)


def says(pattern: str, *texts: str) -> bool:
    """Whether one of these texts has the words: a pattern of whole words, capitals as they come."""
    return any(_pattern(pattern).search(text) for text in texts)


def words_of(operation: Operation) -> tuple[str, ...]:
    """A step's own words: what it does, with what, its note."""
    fields = operation.fields
    found = (getattr(fields, name, "") for name in ("what", "with_what", "note"))
    return tuple(text for text in found if text)


def holding_words(set_up: SetUp) -> tuple[str, ...]:
    """All words on how a set-up holds the work."""
    holding = set_up.holding
    return (holding.device, holding.packing, holding.stop, holding.note, set_up.title, set_up.note)


def typed(value: float, units: str, decimals: int = 2) -> str:
    """A length [m] as it may be typed into this job: bare in millimetres, with its unit in an inch job."""
    text = trimmed(value * 1e3, decimals)
    return text if units == "mm" else f"{text} mm"


def millimetres(value: float) -> str:
    """A length [m] as a number of millimetres, for a tool's line."""
    return trimmed(value * 1e3, 2)


def length(value: float, units: str) -> str:
    """A length [m] in a sentence, in the job's units with their name."""
    return f"{trimmed(value * 1e3, 2)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"
