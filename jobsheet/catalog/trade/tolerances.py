"""Limits of size as they are written: `40 ±0.03`, `16 H7`, `10 +0.05/0`, `25 -0.1`."""

from __future__ import annotations

import re

from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Size
from jobsheet.units.grammar import read, read_number
from jobsheet.units.lazily import pattern

_PLUS_MINUS = pattern(r"^(?P<size>.+?)\s*(?:±|\+/-|\+-|plus or minus)\s*(?P<tol>.+)$")
_TWO = pattern(
    r"^(?P<size>.+?)\s+(?P<first>[+\-−]?\s*[\d.,]+)\s*/\s*(?P<second>[+\-−]?\s*[\d.,]+)\s*(?P<unit>[^\d\s.,/]*)$"
)
_FIT = pattern(r"^(?P<size>.+?)\s*(?P<letter>[A-Za-z]{1,2})(?P<grade>\d{1,2})$")
#: ISO 286-1 (from memory): standard tolerance grades by range of nominal size [µm].
_RANGES = (3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0, 315.0, 400.0, 500.0)
_GRADES: dict[int, tuple[int, ...]] = {
    5: (4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27),
    6: (6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40),
    7: (10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63),
    8: (14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97),
    9: (25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155),
    10: (40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250),
    11: (60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400),
    12: (100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630),
    13: (140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970),
}
#: ISO 286-1 (from memory): how far the nearer limit lies from nought [µm], in the same ranges. Holes D to G
#: lie above by it, shafts d to g below; so do the upper limits of holes P below it, for grades above 7.
_AWAY: dict[str, tuple[int, ...]] = {
    "D": (20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230),
    "E": (14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135),
    "F": (6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68),
    "G": (2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20),
    "P": (6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68),
    "N": (4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0),
}


def _fit(letter: str, grade: int, nominal: float, text: str) -> tuple[float, float] | None:
    """The lower and the upper limit of a fit as distances from the nominal [m]; None
    for one that is not in the tables.
    """
    upper = letter.upper()
    if upper not in ("H", "JS", *_AWAY) or (upper in "PN" and (letter != upper or grade < 9)):
        return None
    width = _grade(nominal, grade, text)
    if upper == "JS":
        return -width / 2, width / 2
    away = 0.0
    if upper in _AWAY:
        away = next(a for top, a in zip(_RANGES, _AWAY[upper], strict=True) if nominal * 1e3 <= top) * 1e-6
    if upper in "PN":
        return -away - width, -away
    return (away, away + width) if letter == upper else (-away - width, -away)


def _grade(nominal: float, grade: int, text: str) -> float:
    """The width of a grade at this size [m]."""
    millimetres = nominal * 1e3
    if grade not in _GRADES:
        raise QuantityError(f"Grade {grade} is not in the table; grades 5 to 13 are.", 0, len(text))
    for upper, width in zip(_RANGES, _GRADES[grade], strict=True):
        if millimetres <= upper:
            return width * 1e-6
    raise QuantityError("Fits are known up to 500 mm; write the limits, such as 600 ±0.1.", 0, len(text))


def read_size(text: str, system: str = "mm") -> Size:
    """A size with its limits.

    Holes D, E, F, G, H and JS, their shafts, and the keyway fits N9 and P9 have their limits computed (ISO
    286-1); for another letter write the limits themselves.

    Raises
    ------
    QuantityError
        If it cannot be read, or a limit is not above zero.
    """
    written = text.strip()
    if match := _PLUS_MINUS.match(written):
        tolerance = _tolerance(match["tol"], match["size"], system)
        nominal = _nominal(match["size"], match["tol"], system)
        return _made(nominal, nominal - abs(tolerance), nominal + abs(tolerance), text)
    if match := _TWO.match(written):
        unit = match["unit"] or _unit_of(match["size"])
        nominal = _nominal(match["size"], unit, system)
        ends = sorted(read(f"{match[side]} {unit}", "length", system) for side in ("first", "second"))
        return _made(nominal, nominal + ends[0], nominal + ends[1], text)
    if (match := _FIT.match(written)) and match["letter"].upper() in ("H", "JS", *_AWAY):
        nominal = read(match["size"], "length", system)
        if (ends_of := _fit(match["letter"], int(match["grade"]), nominal, text)) is not None:
            return _made(nominal, nominal + ends_of[0], nominal + ends_of[1], text)
    if match and match["letter"].lower() not in ("mm", "in"):
        raise QuantityError(
            f"The limits of {match['letter']}{match['grade']} are not in the table; write them, such as 16 +0.02/0.",
            0,
            len(text),
        )
    nominal = read(written, "length", system)
    return _made(nominal, nominal, nominal, text)


def _unit_of(text: str) -> str:
    """The unit behind a number, or nothing."""
    return read_number(text)[1].strip()


def _nominal(size: str, behind: str, system: str) -> float:
    """The size before its tolerance; it takes the unit written behind the tolerance if it has none."""
    if _unit_of(size):
        return read(size, "length", system)
    unit = (
        behind
        if not re.match(r"[\s\d.,+\-−]", behind[:1] or "0")
        else (_unit_of(behind) if behind.strip() else "")
    )
    return read(f"{size} {unit}", "length", system)


def _tolerance(tolerance: str, size: str, system: str) -> float:
    """The tolerance; it takes the unit of the size if it has none of its own."""
    if _unit_of(tolerance):
        return read(tolerance, "length", system)
    return read(f"{tolerance} {_unit_of(size)}", "length", system)


def _made(nominal: float, low: float, high: float, text: str) -> Size:
    """The size, refused where it has no meaning."""
    if nominal <= 0:
        raise QuantityError(f"“{text.strip()}” must be above zero.", 0, len(text))
    if low <= 0:
        raise QuantityError(f"The lower limit of “{text.strip()}” must be above zero.", 0, len(text))
    return Size(nominal, low, high, text)
