"""A thread at the head of a line: `M8`, `M8x1.25`, `M10 x 25`, `1/4-20 UNC`. An
`x` behind it is a pitch or a depth.
"""

from __future__ import annotations

import re

from jobsheet.catalog.tools.threads import coarse_metric, read_thread
from jobsheet.errors import QuantityError
from jobsheet.finished.clauses import Said
from jobsheet.finished.scanned import Scanned
from jobsheet.model.quantity import Size, Thread
from jobsheet.units.grammar import read_number
from jobsheet.units.lazily import pattern

_METRIC = pattern(
    r"M\s?(?P<major>\d+(?:[.,]\d+)?)(?![\d.,]*\w)|M\s?(?P<joined>\d+(?:[.,]\d+)?)(?=[x×X*]\s?\d)"
)
_UNIFIED = pattern(
    r"(?P<name>(?:#\s?\d{1,2}|\d+/\d+|\d+-\d+/\d+)\s?-\s?\d{1,2}(?!\d|/)(?:\s*UN(?:C|F|EF)?)?|\d+\s?-\s?\d{1,2}\s*UN(?:C|F|EF)?)\b",
    re.IGNORECASE,
)
_CLASS = pattern(r"\s*-?\s*(?:[4-8][GHgh]|[123][AB])\b")
_CLASS_ALONE = pattern(r"(?:[4-8][GH]|[123]B)\b")
_NUMBER_BEHIND = pattern(r"\s*[x×X*]\s*(?P<number>\d+(?:[.,]\d+)?)(?P<more>\s*/|\s*(?:deep|mm|in)\b)?")
#: No pitch is larger than this where the table has no coarse one: a quarter of the diameter
#: (ISO 261, from memory: M1 x 0.25).
_LARGEST_PITCH = 0.25


def take_thread(line: Scanned, said: Said, *, alone: bool = False) -> bool:
    """The thread that stands next; `alone` where it only names a bolt."""
    start = line.at
    if match := line.take(_UNIFIED):
        _named(line, said, match["name"], start)
    elif match := line.take(_METRIC):
        major = match["major"] or match["joined"]
        _metric(line, said, major.replace(",", "."), start, alone)
    else:
        return False
    if not alone:
        said["what"] = "tapped hole"
    if behind := _CLASS.match(line.text, line.at):
        line.at = behind.end()
    return True


def _metric(line: Scanned, said: Said, major: str, start: int, alone: bool) -> None:
    """`M10`, and what the x behind it is."""
    diameter = read_number(major)[0] * 1e-3
    coarse = coarse_metric(diameter) if diameter > 0 else None
    behind = None if alone else _NUMBER_BEHIND.match(line.text, line.at)
    if behind is None or behind["more"]:
        _named(line, said, f"M{major}", start)
        return
    number = read_number(behind["number"])[0] * 1e-3
    largest = coarse.pitch if coarse is not None else _LARGEST_PITCH * diameter
    if number > largest * (1 + 1e-9):
        _named(line, said, f"M{major}", start)
        return
    line.at = behind.end()
    pitched = f"M{major}x{behind['number'].replace(',', '.')}"
    _named(line, said, pitched, start)
    said["pitch_or_depth"] = (f"M{major}", pitched, behind["number"], start, line.at)


def _named(line: Scanned, said: Said, name: str, start: int) -> None:
    try:
        thread = read_thread(name)
    except QuantityError as error:
        raise line.error(str(error), start, line.at) from None
    said["thread"] = Thread(thread.major, thread.pitch, thread.fine, " ".join(name.split()))
    said.setdefault("size", Size(thread.major, thread.major, thread.major, said["thread"].text))


def thread_class(line: Scanned, said: Said) -> bool:
    """`6H`, `2B`: how close the thread is; its tap decides it, so that nothing here reads it."""
    return said["what"] == "tapped hole" and line.take(_CLASS_ALONE) is not None
