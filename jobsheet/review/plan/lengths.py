"""Lengths in remarks and mends: as they would be typed, as a tool's line has them, and in a sentence."""

from __future__ import annotations

import math

from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


def typed(value: float, units: str, decimals: int = 2) -> str:
    """A length [m] as it may be typed into this job, with so many decimals of a millimetre: bare, in an inch job with its unit.

    Two decimals more in inches: no coarser than in millimetres.
    """
    if units == "in":
        return f"{trimmed(value / INCH, decimals + 2)} in"
    return trimmed(value * 1e3, decimals)


def millimetres(value: float) -> str:
    """A length [m] as a number of millimetres, for a tool's line."""
    return trimmed(value * 1e3, 2)


def length(value: float, units: str) -> str:
    """A length [m] in a sentence, in the job's units with their name."""
    return f"{trimmed(value * 1e3, 2)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"


def fine(value: float, units: str) -> str:
    """The same to a micrometre, for what is held against limits."""
    return f"{trimmed(value * 1e3, 3)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"


def finest(value: float, units: str, decimals: int = 4) -> str:
    """The same with so many decimals of a millimetre, or to a hundredth of a thou: feeds of a tooth, errors of a vice."""
    return f"{trimmed(value * 1e3, decimals)} mm" if units == "mm" else f"{trimmed(value / INCH, 5)} in"


def round_up(value: float, units: str) -> float:
    """A least size of common practice [m] as it is meant in inches: 0.08 in for 2 mm, 0.012 in for 0.3 mm, never less."""
    if units == "mm":
        return value
    line = (1e-2 if value >= 1e-3 else 1e-3 if value >= 0.1e-3 else 1e-4) * INCH
    return math.ceil(value / line - 1e-6) * line


def rounded(value: float, units: str) -> str:
    """The same in a sentence."""
    return fine(round_up(value, units), units)
