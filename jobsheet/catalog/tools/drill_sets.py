"""The drills that exist near a diameter: numbers, letters, fractions of an inch, millimetres.

Numbers and letters are named one by one in `resources/drills.yaml`; the other two sets follow a rule, which
stands in `resources/drill-sets.yaml`.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.catalog.tools.drills import named_sizes
from jobsheet.cutting.inputs import positive
from jobsheet.errors import NoSuchEntry
from jobsheet.units.table import INCH

SETS = ("number", "letter", "fractional", "metric")
#: Two drills closer than this are the same size [m]: a tenth of what a micrometer shows.
SAME = 0.1e-6
_MILLIMETRE = 1e-3


class DrillSize(Struct, frozen=True):
    """One drill: its name as it is written and asked for, its diameter [m] and the set it belongs to."""

    name: str
    diameter: float
    set: str


@cache
def _rules() -> dict[str, Any]:
    data: dict[str, Any] = shipped("drill-sets.yaml")
    return data


def _number(text: str) -> tuple[Fraction, float]:
    """`1/64 in` or `0.05 mm`: the exact number, and its unit [m]."""
    number, unit = text.split()
    return Fraction(number), INCH if unit == "in" else _MILLIMETRE


def _steps(rule: dict[str, str]) -> list[tuple[Fraction, float]]:
    (first, unit), (last, _), (step, _) = (_number(rule[name]) for name in ("from", "to", "by"))
    return [(first + step * index, unit) for index in range(int((last - first) / step) + 1)]


def _name(number: Fraction, unit: float) -> str:
    """`13/64 in`, `1-1/16 in`, `5.1 mm`."""
    if unit == INCH:
        whole, rest = divmod(number, 1)
        parts = [str(whole)] if whole else []
        parts += [f"{rest.numerator}/{rest.denominator}"] if rest else []
        return f"{'-'.join(parts)} in"
    return f"{float(number):g} mm"


def _made(sizes: list[tuple[Fraction, float]], name: str) -> tuple[DrillSize, ...]:
    return tuple(DrillSize(_name(number, unit), float(number) * unit, name) for number, unit in sizes)


@cache
def drill_set(name: str) -> tuple[DrillSize, ...]:
    """Every drill of a set, from small to large.

    Raises
    ------
    NoSuchEntry
        If there is no such set.
    """
    rules = _rules()
    if name == "fractional":
        return _made(_steps(rules["fractional"]), name)
    if name == "metric":
        rule = rules["metric"]["hundredths"]
        first, last = (int(_number(rule[end])[0] * 100) for end in ("from", "to"))
        kept = {int(digit) for digit in rule["keep"]}
        small = [(Fraction(size, 100), _MILLIMETRE) for size in range(first, last + 1) if size % 10 in kept]
        return _made(small + [size for part in rules["metric"]["steps"] for size in _steps(part)], name)
    if name in ("number", "letter"):
        rows = [
            DrillSize(called, diameter, name)
            for called, diameter in named_sizes().items()
            if called.startswith("#") == (name == "number")
        ]
        return tuple(sorted(rows, key=lambda row: row.diameter))
    raise NoSuchEntry(f"There is no set of drills called “{name}”; there are {', '.join(SETS)}.")


@cache
def box(name: str) -> tuple[DrillSize, ...]:
    """The drills of a set as it is sold in one box, such as `1 to 13 mm by 0.5`.

    Raises
    ------
    NoSuchEntry
        If there is no such box.
    """
    rule = _rules()["boxes"].get(name)
    if rule is None:
        raise NoSuchEntry(f"There is no box of drills “{name}”; there are {', '.join(_rules()['boxes'])}.")
    sizes = _steps(rule)
    return _made(sizes, "fractional" if sizes[0][1] == INCH else "metric")


def boxes() -> tuple[str, ...]:
    """The names of the boxes."""
    return tuple(_rules()["boxes"])


def drills_between(smallest: float, largest: float) -> tuple[DrillSize, ...]:
    """Every drill of any set between two diameters [m], ends included, from small to large."""
    positive(smallest=smallest, largest=largest)
    drill_sizes = [
        drill
        for name in SETS
        for drill in drill_set(name)
        if smallest - SAME <= drill.diameter <= largest + SAME
    ]
    return tuple(sorted(drill_sizes, key=lambda drill: drill.diameter))
