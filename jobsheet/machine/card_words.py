"""What the words of a machine card say: its column, its readout, how true its vice and
head were found, its largest drill.
"""

from __future__ import annotations

import datetime as dt
import re

from jobsheet.errors import JobsheetError
from jobsheet.model.machine import Machine
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

_ERROR = pattern(r"([\d.,]+\s*(?:mm|in\b|thou)?)\s+(?:in|over|per)\s+([\d.,]+\s*(?:mm|in\b)?)")
_VICE = pattern(r"\b(?:vise|vice)s?\b", re.IGNORECASE)
_TABLE = pattern(r"\b(?:table|glass|scales?)\b", re.IGNORECASE)
_TURNS = pattern(r"\b(?:round|ram|turret)\b", re.IGNORECASE)
_DAY = pattern(r"\d{4}-\d{2}-\d{2}")
_SLOTS = pattern(r"slots?\s+(?:of\s+)?([\d.,/]+\s*(?:mm|in\b|\")?)", re.IGNORECASE)
_SIZE = pattern(r"\s*([\d.,/]+\s*(?:mm|in\b|\")?)")


def loses_zero(machine: Machine) -> bool:
    """Whether x and y are lost where its head is moved: a round column turns, a
    ram slides and a turret swings.
    """
    return _TURNS.search(machine.column) is not None


def reads_table(machine: Machine) -> bool:
    """Whether its readout reads the table itself, not the screw."""
    return _TABLE.search(machine.readout) is not None


def vice_error(machine: Machine) -> tuple[float, float] | None:
    """Error and length of words such as `0.02 in 150 mm, vice indicated` [m]; a bare number is in mm."""
    match = _ERROR.search(machine.trammed)
    if match is None or _VICE.search(machine.trammed) is None:
        return None
    try:
        return read(match[1], "length", "mm"), read(match[2], "length", "mm")
    except JobsheetError:
        return None


def trammed_on(machine: Machine) -> dt.date | None:
    """The day on which its head was found square, or None."""
    return day(machine.trammed)


def day(text: str) -> dt.date | None:
    """The date that a text names, or None."""
    match = _DAY.search(text)
    try:
        return dt.date.fromisoformat(match[0]) if match else None
    except ValueError:
        return None


def largest_drill(machine: Machine) -> float | None:
    """The largest drill that the card notes [m], or None."""
    match = _SIZE.match(machine.largest_drill)
    try:
        return read(match[1], "length", "mm") if match else None
    except JobsheetError:
        return None


def slot_width(machine: Machine) -> float | None:
    """How wide the slots of its table are [m], or None: `3 slots 10 mm`."""
    match = _SLOTS.search(machine.table.slots) if machine.table is not None else None
    try:
        return read(match[1], "length", "mm") if match else None
    except JobsheetError:
        return None
