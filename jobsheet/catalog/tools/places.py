"""Places as people write them: `drawer 2 no. 7` is number 7 in drawer 2, however it is spelled."""

from __future__ import annotations

import re

from jobsheet.units.lazily import pattern

_PLACE = pattern(r"^(?P<where>.*?)[\s,]*(?:\b(?:no\.?|place|number)\s*(?P<number>\S+))?$", re.IGNORECASE)


def parted(place: str) -> tuple[str, str]:
    """Where it is, and its number there; either may be empty. Blanks and capitals do not count."""
    match = _PLACE.match(place.strip())
    if match is None:
        return " ".join(place.casefold().split()), ""
    return " ".join((match["where"] or "").casefold().split()), (match["number"] or "").casefold()


def lies_in(place: str, asked: str) -> bool:
    """Whether what lies in `place` is found by somebody who was told `asked`:
    the same place, or the drawer alone.
    """
    (where, number), (drawer, wanted) = parted(place), parted(asked)
    return where == drawer and wanted in ("", number)


def in_order(place: str) -> tuple[tuple[int, int, str], ...]:
    """To sort by: drawer 2 before drawer 10; nothing comes last."""
    parts = re.findall(r"\d+|\D+", " ".join(parted(place)).strip())
    return tuple((0, int(part), "") if part.isdigit() else (1, 0, part) for part in parts) or ((2, 0, ""),)
