"""Lengths in the words of a limit, in the unit of the job: `204 of 420 mm`, `8.03 of 16.54 in`."""

from __future__ import annotations

from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


def of(needed: float, there: float, units: str, between: str = " of ") -> str:
    """What is needed and what there is [m], to a millimetre or a hundredth of an inch."""
    return f"{number(needed, units)}{between}{number(there, units)} {units}"


def number(value: float, units: str) -> str:
    """A length [m] to a millimetre or a hundredth of an inch, without its unit."""
    return trimmed(value / INCH, 2) if units == "in" else f"{value * 1e3:.0f}"


def put_in(value: float, units: str, digits: int = 6) -> str:
    """A length [m] as it is put into a formula, with its unit."""
    return f"{trimmed(value / INCH, 4)} in" if units == "in" else f"{value * 1e3:.{digits}g} mm"
