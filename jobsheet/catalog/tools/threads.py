"""Threads: their major diameter and pitch, from the tables or from what was written."""

from __future__ import annotations

import re
from functools import cache

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Thread
from jobsheet.units.grammar import nearest, read_number
from jobsheet.units.lazily import pattern
from jobsheet.units.table import INCH

_METRIC = pattern(r"^\s*[Mm]\s*([\d.,]+)(?:\s*[x×X*]\s*([\d.,]+))?\s*$")
_UNIFIED = pattern(r"^\s*(#?\d[\d\s/\-]*?)\s*-\s*(\d{1,2})\s*(UNC|UNF|UNEF|UN)?\s*$", re.IGNORECASE)


class ThreadRow(Struct, frozen=True):
    """One row of the tables: sizes [m], the usual tap drill and the one for tough metal as named."""

    name: str
    major: float
    pitch: float
    fine: bool
    drill: str
    easier: str


def _inches(name: str) -> str:
    """A fraction with its unit, so that a metric job reads it as what it is."""
    return f"{name} in" if "/" in name else name


@cache
def thread_table() -> dict[str, ThreadRow]:
    """Every thread of the tables by its full name."""
    data = shipped("threads.yaml")
    rows = {}
    for name, row in data["metric"].items():
        fine = row["series"] == "fine"
        rows[name] = ThreadRow(
            name, float(row["major"]) * 1e-3, float(row["pitch"]) * 1e-3, fine, row["drill"], row["easier"]
        )
    for name, row in data["unified"].items():
        fine = name.endswith("UNF")
        rows[name] = ThreadRow(
            name,
            float(row["major"]) * INCH,
            INCH / float(row["tpi"]),
            fine,
            _inches(row["drill"]),
            _inches(row["easier"]),
        )
    return rows


def coarse_metric(major: float) -> ThreadRow | None:
    """The coarse thread of that major diameter [m]: what `M8` means (ISO 261)."""
    for row in thread_table().values():
        if row.name.startswith("M") and not row.fine and abs(row.major - major) < 1e-7:
            return row
    return None


def read_thread(text: str) -> Thread:
    """A thread as it is written: `M8`, `M8x1.25`, `5/16-18 UNC`, `#10-32`.

    Raises
    ------
    QuantityError
        If it cannot be read, or the size has no coarse pitch of its own.
    """
    written = text.strip()
    if match := _METRIC.match(written):
        major = read_number(match[1])[0] * 1e-3
        if major <= 0:
            raise QuantityError(f"“{written}” has no diameter; write M6 or M8x1.25.")
        row = coarse_metric(major)
        if match[2] is None:
            if row is None:
                raise QuantityError(
                    f"{written} has no coarse pitch in the table; write it, such as {written}x1."
                )
            return Thread(row.major, row.pitch, row.fine, text)
        pitch = read_number(match[2])[0] * 1e-3
        if not 0 < pitch < major:
            raise QuantityError(f"The pitch of “{written}” must lie between 0 and the diameter.")
        return Thread(major, pitch, row is None or pitch < row.pitch - 1e-9, text)
    if match := _UNIFIED.match(written):
        return _unified(match, written, text)
    near = nearest(written, tuple(thread_table()))
    hint = f" Did you mean {near}?" if near else " Write M6, M8x1.25 or 5/16-18 UNC."
    raise QuantityError(f"“{written}” is not a thread.{hint}", 0, len(text))


def _unified(match: re.Match[str], written: str, text: str) -> Thread:
    """A thread in inches: by its number, its fraction or its decimal."""
    size, tpi, series = match[1].strip(), int(match[2]), (match[3] or "").upper()
    for row in thread_table().values():
        if row.name.startswith(f"{size}-{tpi} "):
            if series in ("UNC", "UNF") and not row.name.endswith(series):
                raise QuantityError(f"{size}-{tpi} is {row.name.split()[-1]}, not {series}.", 0, len(text))
            return Thread(row.major, row.pitch, row.fine, text)
    if size.startswith("#"):
        number = int(size[1:])
        if number > 12:
            raise QuantityError(f"There is no thread {size}; numbers run from #0 to #12.", 0, len(text))
        major = 0.060 + 0.013 * number  # ASME B1.1: each number adds 0.013 in to 0.060 in
    else:
        major = read_number(size)[0]
    if tpi <= 0 or major <= 0:
        raise QuantityError(f"“{written}” is not a thread; write 5/16-18 UNC.", 0, len(text))
    return Thread(major * INCH, INCH / tpi, series in ("UNF", "UNEF"), text)


#: The choice of a workshop (`thread_height`) for which the drill of the tables
#: for tough metal is the usual one.
EASIER = "50 to 65 %"


#: The least height of thread that goes under that choice, with what the next drill of a set makes
#: of it (common practice, no source).
LEAST = 0.48


def _leaves(row: ThreadRow) -> float:
    """The height of thread that the easier drill of a row leaves: (D - d) / (1.299 P) (Virtual
    Machine Shop, course unit on tapping).
    """
    from jobsheet.catalog.tools.drills import read_drill_size
    from jobsheet.cutting.tapping import percent_of_thread

    return percent_of_thread(major=row.major, hole=read_drill_size(row.easier), pitch=row.pitch)


def tap_drill(thread: Thread, height: str = "") -> str | None:
    """The usual tap drill of that thread as it is named, or None if the table lacks it; a workshop that wants
    lower threads takes the easier one.
    """
    for row in thread_table().values():
        if abs(row.major - thread.major) < 1e-7 and abs(row.pitch - thread.pitch) < 1e-8:
            return row.easier if height == EASIER and _leaves(row) >= LEAST else row.drill
    return None
