"""Hole patterns in words: a row, a grid, a pitch circle, or angles on a circle.

    row of 5 from 10, 10, step 15               along x; add "at 30°" for another direction
    row of 5 from 10, 10 to 70, 40              first and last given
    grid of 3 × 2 from 10, 10, step 20 × 15     columns by rows
    circle of 6 on 40 around 50, 30             first hole in the direction of x; add "first at 15°"
    circle on 40 around 50, 30 at 0°, 90°, 200°

Angles count from the direction in which x counts up towards that of y.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Pattern, Place, Quantity
from jobsheet.units.grammar import read
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: More holes than this in one pattern are a slip of the pen.
MOST = 200
_N = r"(?P<count>\d+)"
_SIZE = r"(?:[^,;]|,(?!\s))+?"  # a comma inside a size is a decimal mark
_AT = rf"(?P<x>{_SIZE}),\s+(?P<y>{_SIZE})"
_ROW_STEP = re.compile(
    rf"^row of {_N} from {_AT},\s*step (?P<step>.+?)(?:\s+at (?P<angle>.+))?$", re.IGNORECASE
)
_ROW_TO = re.compile(rf"^row of {_N} from {_AT} to (?P<x2>{_SIZE}),\s+(?P<y2>{_SIZE})$", re.IGNORECASE)
_GRID = re.compile(
    rf"^grid of {_N}\s*[x×]\s*(?P<rows>\d+) from {_AT},\s*step (?P<step>.+?)\s*[x×]\s*(?P<step2>.+)$",
    re.IGNORECASE,
)
_CIRCLE = re.compile(
    rf"^circle of {_N} on (?P<on>.+?) around {_AT}(?:,?\s*first at (?P<angle>.+))?$", re.IGNORECASE
)
_ANGLES = re.compile(rf"^circle on (?P<on>.+?) around {_AT} at (?P<angles>.+)$", re.IGNORECASE)
_EXAMPLES = (
    "row of 5 from 10, 10, step 15; grid of 3 × 2 from 10, 10, step 20 × 15; circle of 6 on 40 around 50, 30"
)


#: Angles are kept to this share of a degree: a thousandth of a second, far finer than any head divides.
_FINE = 3600 * 1000


class PitchCircle(Struct, frozen=True, kw_only=True):
    """A circle of holes as a dividing head sees it: its middle and radius [m],
    and each hole's angle from the first.

    `angles` are exact [degrees, from 0 up to 360], in the order of the holes; `first` is where the first hole
    lies, from the direction in which x counts up towards that of y.
    """

    x: float
    y: float
    radius: float
    first: Fraction
    angles: tuple[Fraction, ...]


def is_pattern(text: str) -> bool:
    """Whether this is meant as a pattern, well written or not."""
    return text.strip().casefold().startswith(("row", "grid", "circle"))


def written(text: str) -> tuple[str, dict[str, str]] | None:
    """The kind of a generator, `row`, `grid` or `circle`, and its sizes as typed;
    None for other ways of writing one.
    """
    plain = " ".join(text.split())
    for kind, form in (("row", _ROW_STEP), ("grid", _GRID), ("circle", _CIRCLE)):
        if match := form.match(plain):
            return kind, {name: size or "" for name, size in match.groupdict().items()}
    return None


def read_pattern(text: str, units: str) -> Pattern:
    """The places of a pattern written in words.

    Raises
    ------
    QuantityError
        If it cannot be read, or has no or too many holes.
    """
    written = " ".join(text.split())
    for form, make in (
        (_ROW_STEP, _row_step),
        (_ROW_TO, _row_to),
        (_GRID, _grid),
        (_CIRCLE, _circle),
        (_ANGLES, _angles),
    ):
        match = form.match(written)
        if match:
            points = make(match, units)
            return Pattern(tuple(_place(x, y, units) for x, y in points), text.strip())
    raise QuantityError(f"“{written}” is not a pattern; write, for example, {_EXAMPLES}.", 0, len(text))


def pitch_circle(pattern: Pattern, units: str) -> PitchCircle | None:
    """The circle that a pattern was written as; None for a row or a grid."""
    written = " ".join(pattern.text.split())
    if match := _CIRCLE.match(written):
        count, first = _count(match), match["angle"]
        start = _degrees(first, units) if first else Fraction(0)
        angles = tuple(Fraction(360 * n, count) for n in range(count))
    elif match := _ANGLES.match(written):
        typed = [_degrees(part, units) for part in _parted(match["angles"])]
        start = typed[0]
        angles = tuple((angle - start) % 360 for angle in typed)
    else:
        return None
    return PitchCircle(
        x=_length(match["x"], units), y=_length(match["y"], units), radius=_radius(match, units), first=start, angles=angles,
    )  # fmt: skip


def _degrees(text: str, units: str) -> Fraction:
    return Fraction(round(math.degrees(_angle(text, units)) * _FINE), _FINE)


def _parted(angles: str) -> list[str]:
    return re.split(r",\s+|\s+and\s+", angles)


def _radius(match: re.Match[str], units: str) -> float:
    radius = _length(match["on"].replace("⌀", "").replace("Ø", "").replace("diameter", ""), units) / 2
    if radius <= 0:
        raise QuantityError("The diameter of a pitch circle must be above zero.")
    return radius


def _length(text: str, units: str) -> float:
    return read(text, "length", units)


def _angle(text: str, units: str) -> float:
    return read(text.replace("deg", "°") if "°" not in text else text, "angle", units)


def _count(match: re.Match[str], name: str = "count", least: int = 2) -> int:
    count = int(match[name])
    if not least <= count <= MOST:
        raise QuantityError(
            f"A pattern has {least} to {MOST} holes; {count} are written.", match.start(name), match.end(name)
        )
    return count


def _step(text: str, units: str) -> float:
    step = _length(text, units)
    if step == 0:
        raise QuantityError("The step of a pattern must not be zero.")
    return step


def _row_step(match: re.Match[str], units: str) -> list[tuple[float, float]]:
    x, y, step = _length(match["x"], units), _length(match["y"], units), _step(match["step"], units)
    angle = _angle(match["angle"], units) if match["angle"] else 0.0
    return [(x + n * step * math.cos(angle), y + n * step * math.sin(angle)) for n in range(_count(match))]


def _row_to(match: re.Match[str], units: str) -> list[tuple[float, float]]:
    x, y, x2, y2 = (_length(match[name], units) for name in ("x", "y", "x2", "y2"))
    last = _count(match) - 1
    return [(x + (x2 - x) * n / last, y + (y2 - y) * n / last) for n in range(last + 1)]


def _grid(match: re.Match[str], units: str) -> list[tuple[float, float]]:
    """Row by row, back and forth: the way a hand winds the least."""
    x, y = _length(match["x"], units), _length(match["y"], units)
    across, up = _step(match["step"], units), _step(match["step2"], units)
    columns, rows = _count(match, least=1), _count(match, "rows", least=1)
    if columns * rows > MOST or columns * rows < 2:
        raise QuantityError(f"A pattern has 2 to {MOST} holes; {columns * rows} are written.")
    points = []
    for row in range(rows):
        order = range(columns) if row % 2 == 0 else range(columns - 1, -1, -1)
        points += [(x + column * across, y + row * up) for column in order]
    return points


def _on(match: re.Match[str], units: str, angles: list[float]) -> list[tuple[float, float]]:
    radius = _radius(match, units)
    x, y = _length(match["x"], units), _length(match["y"], units)
    return [(x + radius * math.cos(angle), y + radius * math.sin(angle)) for angle in angles]


def _circle(match: re.Match[str], units: str) -> list[tuple[float, float]]:
    count = _count(match)
    first = _angle(match["angle"], units) if match["angle"] else 0.0
    return _on(match, units, [first + 2 * math.pi * n / count for n in range(count)])


def _angles(match: re.Match[str], units: str) -> list[tuple[float, float]]:
    angles = [_angle(part, units) for part in _parted(match["angles"])]
    if len(angles) > MOST:
        raise QuantityError(f"A pattern has 1 to {MOST} holes; {len(angles)} are written.")
    return _on(match, units, angles)


def _place(x: float, y: float, units: str) -> Place:
    """A computed place, worded to a thousandth of a millimetre or a tenth of a thou."""
    if units == "in":
        return Place(Quantity(x, f"{trimmed(x / INCH, 4)}"), Quantity(y, f"{trimmed(y / INCH, 4)}"))
    return Place(Quantity(x, trimmed(x * 1e3, 3)), Quantity(y, trimmed(y * 1e3, 3)))
