"""Layers as a hand sets them: on lines of the dial that sets the depth, and
no more of them than were meant.
"""

from __future__ import annotations

from math import ceil, floor

from jobsheet.model.machine import Handle
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.common import depth_handle
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: Where no handle sets a depth: a hundredth, or a thou (common practice) [m].
_USUAL = {"mm": 1e-5, "in": 1e-3 * INCH}
#: By so much floats miss what they are meant to be: lines of a dial, and anything else.
_ROUNDING, A_HAIR = 1e-6, 1e-9
#: Depths that differ by less are one [m].
_SAME = 1e-7


def _line(setting: Setting) -> tuple[float, Handle | None]:
    handle = depth_handle(setting.machine)
    return (handle.line, handle) if handle is not None else (_USUAL[setting.units], None)


def on_a_line(depth: float, setting: Setting, *, up: bool = False) -> float:
    """The nearest depth [m] that stands on a line of the dial, no deeper; or with `up` no less deep.

    Lines are counted from every whole turn anew, as on the dial: those of some
    do not come out even in a turn.
    """
    line, handle = _line(setting)
    whole, rest = 0.0, depth
    if handle is not None:
        turns = floor(depth / handle.travel + A_HAIR)
        whole, rest = turns * handle.travel, max(0.0, depth - turns * handle.travel)
    count = ceil(rest / line - _ROUNDING) if up else floor(rest / line + _ROUNDING)
    return whole + (count * line if handle is None else min(count * line, handle.travel))


def layer_text(total: float, count: int, setting: Setting) -> str:
    """The layer as it is typed that makes so many of a depth [m]: on a line;
    nothing where it is taken at once.
    """
    if count <= 1:
        return ""
    depth = on_a_line(total / count, setting, up=True)
    if (
        ceil(total / depth - A_HAIR) != count
    ):  # between two lines of the dial: the finer, in a layer or two more
        depth = on_a_line(total / count, setting)
        if depth <= 0:
            return length_text(ceil(total / count * 1e6 - _ROUNDING) / 1e6, setting.units)
    return length_text(depth, dial_units(setting))


def evenly(total: float, count: int, setting: Setting) -> bool:
    """Whether so many equal layers of a depth [m] all end on lines of the dial."""
    each = total / count
    return abs(on_a_line(each, setting, up=True) - each) < _SAME


def dial_units(setting: Setting) -> str:
    """In what the dial of the depth is divided: a layer is typed as it is set."""
    handle = depth_handle(setting.machine)
    return handle.dial if handle is not None and handle.dial in _USUAL else setting.units


def length_text(value: float, units: str) -> str:
    """A length [m] as it is typed, to a tenth of a micrometre or a hundredth of a thou:
    what stands on a line stays there.
    """
    unit, decimals = (INCH, 5) if units == "in" else (1e-3, 4)
    return f"{trimmed(value / unit, decimals)} {units}"
