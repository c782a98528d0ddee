"""Drill sizes that are named, not measured: `#7`, `H`."""

from __future__ import annotations

import re
from functools import cache

from jobsheet.catalog.reading.data import shipped
from jobsheet.errors import QuantityError
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern
from jobsheet.units.table import INCH

_NUMBERED = pattern(r"^\s*(?:#|№|no\.?\s*|number\s+)\s*(\d{1,3})\s*$", re.IGNORECASE)
_LETTERED = pattern(r"^\s*(?:letter\s+)?([A-Za-z])\s*$")


@cache
def named_sizes() -> dict[str, float]:
    """Diameter [m] by name; source of each row in `resources/drills.yaml`."""
    return {name: float(row["inch"]) * INCH for name, row in shipped("drills.yaml")["drills"].items()}


def name_in(text: str) -> str | None:
    """The drill's own name in this text (`No. 7` is `#7`), or None if it is not a named size."""
    if match := _NUMBERED.match(text):
        return f"#{int(match[1])}"
    if match := _LETTERED.match(text):
        return match[1].upper()
    return None


def read_drill_size(text: str, system: str = "mm") -> float:
    """The diameter [m] of a drill as it is named or measured.

    Raises
    ------
    QuantityError
        If it is neither a size nor a name that the standard has.
    """
    name = name_in(text)
    if name is None:
        return read(text, "length", system)
    size = named_sizes().get(name)
    if size is None:
        raise QuantityError(f"There is no drill {name}; numbers run from #1 to #80.", 0, len(text))
    return size
