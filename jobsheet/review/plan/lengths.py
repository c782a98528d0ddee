"""Lengths in remarks and mends: as they would be typed, as a tool's line has them, and in a sentence."""

from __future__ import annotations

import math

from jobsheet.units.show import trimmed
from jobsheet.units.table import FOOT, INCH


def typed(value: float, units: str, decimals: int = 2) -> str:
    """A length [m] as it may be typed into this job, with so many decimals of a millimetre: bare, in an inch job with its unit.

    Two decimals more in inches: no coarser than in millimetres.
    """
    if units == "in":
        return f"{trimmed(value / INCH, decimals + 2)} in"
    return trimmed(value * 1e3, decimals)


def length(value: float, units: str) -> str:
    """A length [m] in a sentence, in the job's units with their name."""
    return f"{trimmed(value * 1e3, 2)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"


def for_tool(value: float, units: str, part: int = 16) -> str:
    """The size of a tool [m] for its line: in an inch job the fraction that is no smaller, by sixteenths unless `part` says otherwise."""
    if units == "mm":
        return length(value, units)
    whole, rest = divmod(math.ceil(value / INCH * part - 1e-6), part)
    common = math.gcd(rest, part)
    parts = [str(whole)] if whole else []
    parts += [f"{rest // common}/{part // common}"] if rest else []
    return f"{'-'.join(parts)} in"


def place_text(at: tuple[float, float], units: str) -> str:
    """A place [m] as it is typed, to a micrometre or finer."""
    return ", ".join(finest(value, units).replace("−", "-") for value in at)


def edge_speeds(cut: float, other: float, units: str) -> tuple[str, str]:
    """Two cutting speeds [m/s] for one sentence, the first with its unit: `43 m/min` and `24`, `141 ft/min` and `79`."""
    unit, size = ("m/min", 1 / 60) if units == "mm" else ("ft/min", FOOT / 60)
    return f"{cut / size:.0f} {unit}", f"{other / size:.0f}"


def fine(value: float, units: str) -> str:
    """The same to a micrometre, for what is held against limits."""
    return f"{trimmed(value * 1e3, 3)} mm" if units == "mm" else f"{trimmed(value / INCH, 4)} in"


def apart(one: float, other: float, units: str) -> tuple[str, str]:
    """Two lengths [m] of which one is more than the other: to a micrometre, finer where both would read the same."""
    size, unit, first = (1e3, "mm", 3) if units == "mm" else (1 / INCH, "in", 4)
    for decimals in range(first, first + 4):
        said = tuple(f"{trimmed(value * size, decimals)} {unit}" for value in (one, other))
        if said[0] != said[1]:
            break
    return said[0], said[1]


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
