"""One number that somebody published, and how we come to it.

All rows together are in `published.py`. Each is a test, and a list of sources can be written from them.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

Mark = Literal["read", "part remembered", "remembered", "derived"]

MM = 1e-3
RPM = 1 / 60
PER_MINUTE = 1 / 60
MPA = 1e6
INCH = 25.4e-3
FPM = 0.3048 / 60
LBF = 4.4482216
INCH_POUND = LBF * INCH
HP = 745.7


@dataclass(frozen=True, slots=True)
class Row:
    """A published number; `ours` stands where it does not reproduce, with the reason in `note`."""

    id: str
    source: str
    mark: Mark
    what: str
    published: float
    tolerance: float
    calc: Callable[[], float]
    unit: str = ""
    ours: float | None = None
    note: str = ""
