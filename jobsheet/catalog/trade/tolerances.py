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
}


def _grade(nominal: float, grade: int, text: str) -> float:
    """The width of a grade at this size [m]."""
    millimetres = nominal * 1e3
    if grade not in _GRADES:
        raise QuantityError(f"Grade {grade} is not in the table; grades 5 to 11 are.", 0, len(text))
    for upper, width in zip(_RANGES, _GRADES[grade], strict=True):
        if millimetres <= upper:
            return width * 1e-6
    raise QuantityError("Fits are known up to 500 mm; write the limits, such as 600 ±0.1.", 0, len(text))


def read_size(text: str, system: str = "mm") -> Size:
    """A size with its limits.

    Only `H` and `JS` holes and `h` and `js` shafts have their limits computed (ISO 286-1: the zero
    line is one of them, or halves the grade); for another letter write the limits themselves.

    Raises
    ------
    QuantityError
        If it cannot be read, or the lower limit is above the upper one.
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
    if (match := _FIT.match(written)) and (match["letter"] in ("H", "h", "JS", "js")):
        nominal = read(match["size"], "length", system)
        width = _grade(nominal, int(match["grade"]), text)
        if match["letter"] == "H":
            return _made(nominal, nominal, nominal + width, text)
        if match["letter"] == "h":
            return _made(nominal, nominal - width, nominal, text)
        return _made(nominal, nominal - width / 2, nominal + width / 2, text)
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
    return Size(nominal, low, high, text)
