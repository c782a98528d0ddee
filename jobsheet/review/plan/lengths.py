"""Lengths in remarks and mends: as they would be typed, as a tool's line has them, and in a sentence."""

from __future__ import annotations

from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


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


def fine(value: float, units: str) -> str:
    """The same to a micrometre, for what is held against limits."""
    return f"{trimmed(value * 1e3, 3)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"
