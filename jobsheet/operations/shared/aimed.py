"""What a step aims at, as a machinist says it: the face by its name and the size that is left there."""

from __future__ import annotations

from typing import Any

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.quantity import Quantity
from jobsheet.operations.kind import Aim
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

_NAMES = {
    "top": "Top",
    "bottom": "Bottom",
    "front": "Front",
    "rear": "Rear",
    "left": "Left end",
    "right": "Right end",
}
#: Where the sides of the work are as it lies, and along which of its sizes they end.
_SIDES = {"left": ("left", 0), "right": ("right", 0), "front": ("near", 1), "rear": ("far", 1)}
#: A step that leaves less than this below it goes through the whole height [m].
NEAR = 1e-6


def size_text(metres: float, units: str) -> str:
    """A size as drawings have it, one decimal at least: 40.0, 12.25; in inches three: 1.500."""
    unit, least, most = (1e-3, 1, 3) if units == "mm" else (INCH, 3, 4)
    text = trimmed(metres / unit, most)
    whole, _, decimals = text.partition(".")
    return f"{whole}.{decimals.ljust(least, '0')}"


def bare_length(quantity: Quantity) -> str:
    """A length as it was typed, without its millimetres."""
    return quantity.text.strip().removesuffix("mm").strip()


def top(fields: Any, aim: Aim, way: str = "") -> tuple[str, ...]:
    """A layer off the face that is up: `Top to 40.0, 1.5 off`; nothing where the height of the work is not known."""
    high = aim.extent[2]
    left = high - fields.depth.value
    if not aim.up or left <= 0:
        return ()
    return _to(_NAMES[aim.up], _aimed(fields, left, fields.depth.value), fields.depth, aim, way)


def side(fields: Any, aim: Aim) -> tuple[str, ...]:
    """A side over its whole height: `Right end to 80.0, 3 off`; nothing where it is a step or the work is not known."""
    place, axis = _SIDES[fields.side]
    face = getattr(aim, place)
    left = aim.extent[axis] - fields.width.value
    if not face or left <= 0 or fields.depth.value < aim.extent[2] - NEAR:
        return ()
    return _to(_NAMES[face], _aimed(fields, left, fields.width.value), fields.width, aim)


def _aimed(fields: Any, left: float, off: float) -> float:
    """The drawing's own size where it is one across the work, else what the step leaves [m]."""
    size = fields.measure
    across = size is not None and size.nominal and abs(size.nominal - left) < abs(size.nominal - off)
    return float(size.nominal) if across else left


def _to(face: str, size: float, off: Quantity, aim: Aim, way: str = "") -> tuple[str, ...]:
    to = f"{face} to {size_text(size, aim.units)}"
    how = f", {way}" if way else ""
    return tuple(dict.fromkeys((f"{to}, {bare_length(off)} off{how}", f"{to}{how}", to)))


def aim_of(lie: Any, extent: tuple[float, float, float], units: str) -> Aim:
    """What there is to aim at, from how the work lies and how large it is before the step."""
    return Aim(
        up=lie.up,
        near=lie.near,
        far=OPPOSITE[lie.near],
        left=lie.left,
        right=lie.right,
        extent=extent,
        units=units,
    )
