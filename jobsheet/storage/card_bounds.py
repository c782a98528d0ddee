"""Between what the figures of a machine card can lie: a card beyond is a slip,
and every figure would rest on it.

A bound is wide: it tells a slip of the pen or of the unit, not a good machine from a bad one.
Each has its source; *common sense* says only that no manual milling machine is so, *common
practice* that the trade knows none.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.units.grammar import read


class Bound(Struct, frozen=True):
    """The least and the most, as one writes them, and where that comes from."""

    low: str
    high: str
    source: str = "common sense, no source"


_LOSS = "a share of what goes in: never more than all; common practice, no source, for the least"
_PRACTICE = "common practice, no source"
_SPEED = Bound("1 rpm", "60000 rpm", _PRACTICE)
_TRAVEL = Bound("1 mm", "20 m")
_LENGTH = Bound("1 mm", "20 m")
_MASS = Bound("0.1 kg", "100000 kg")
_EFFICIENCY = Bound("0.02", "1", _LOSS)

#: Place of the field in a card, the numbers of lists left out -> its bounds.
BOUNDS: dict[str, Bound] = {
    "noise": Bound("20 dB(A)", "140 dB(A)"),
    "mass": _MASS,
    "frame stiffness": Bound("0.01 N/µm", "10000 N/µm"),
    "gib drag": Bound("0.1 N", "50000 N"),
    "daylight.least": Bound("0.1 mm", "20 m"),
    "daylight.greatest": _LENGTH,
    "travel": _TRAVEL,
    "table.length": _LENGTH,
    "table.width": _LENGTH,
    "table.load": _MASS,
    "spindle.power": Bound("1 W", "200 kW"),
    "spindle.short peak": Bound(
        "1", "10", "a drive gives at least what its plate says; common sense for the most"
    ),
    "spindle.ranges.efficiency": _EFFICIENCY,
    "spindle.ranges.cap": Bound("0.01 N·m", "100000 N·m"),
    "spindle.ranges.base speed": _SPEED,
    "spindle.ranges.lowest": _SPEED,
    "spindle.ranges.highest": _SPEED,
    "spindle.ranges.steps.speed": _SPEED,
    "spindle.ranges.steps.measured": _SPEED,
    "handles.a turn": Bound("0.01 mm", "1 m"),
    "handles.a line": Bound("0.0001 mm", "100 mm"),
    "handles.backlash": Bound("0.0001 mm", "20 mm"),
    "handles.crank radius": Bound("5 mm", "1 m"),
    "handles.screw efficiency": _EFFICIENCY,
    "quill lever.length": Bound("10 mm", "2 m"),
    "quill lever.travel a turn": Bound("1 mm", "2 m"),
    "quill lever.spring": Bound("0.01 N", "5000 N"),
    "vices.jaw width": Bound("5 mm", "2 m"),
    "vices.jaw depth": Bound("1 mm", "1 m"),
    "vices.opening": Bound("1 mm", "5 m"),
    "vices.bed height": Bound("1 mm", "2 m"),
    "vices.mass": _MASS,
    "vices.screw lead": Bound("0.1 mm", "100 mm"),
    "vices.usual torque": Bound("0.1 N·m", "2000 N·m"),
    "vices.screw efficiency": _EFFICIENCY,
}


def outside(place: str, typed: str, value: float, measures: str) -> str:
    """A sentence where a figure of a card lies outside its bounds, nothing where it does not.

    Raises
    ------
    KeyError
        If nobody has said between what that field can lie: a new field needs its bounds.
    """
    bound = BOUNDS[place]
    # Turned round, so that what is no number at all is outside too.
    if not value >= read(bound.low, measures) * (1 - 1e-9):
        return f"“{typed}” is less than it can be: it must be at least {bound.low}"
    if not value <= read(bound.high, measures) * (1 + 1e-9):
        return f"“{typed}” is more than it can be: it can be at most {bound.high}"
    return ""


def number_in(text: str) -> float:
    """A bare factor, such as 1.8 of `1.8 single phase`.

    Raises
    ------
    QuantityError
        If it is none.
    """
    first = text.split(maxsplit=1)[0] if text.split() else ""
    if not first.replace(".", "", 1).isdecimal() or not first.isascii() or len(first) > 9:
        raise QuantityError(f"“{text}” is not a number; write 1.8")
    return float(first)
