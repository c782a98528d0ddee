"""Whether work, vice, holder and cutter fit under the spindle, and whether
the spindle comes down far enough.
"""

from __future__ import annotations

from jobsheet.limits.in_units import number, of
from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "shop", "top", "units"})
#: Where it stands among limits of one share.
ORDER = 150
#: It only has to fit: where it does, it governs nothing.
FITS = True

#: Room over the work to get in and out [m] (common practice).
ROOM = 0.010


def tool_length(fields: object, setting: Setting) -> float | None:
    """From the spindle nose to the tip [m]: the holder and what stands out of
    it; None where that is not written.
    """
    cutter = getattr(fields, "cutter", None)
    if cutter is None or cutter.stick_out is None:
        return None
    return float(setting.shop.holder_length + cutter.stick_out)


def limit(_figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where the card, the height of the work or the length of the tool is not known."""
    long, daylight, top = tool_length(fields, setting), setting.machine.daylight, setting.top
    if long is None or daylight is None or top is None:
        return None
    needed, (least, greatest), units = top + long + ROOM, daylight, setting.units
    words = f"work {number(top, units)} over the table, tool {number(long, units)}, room {number(ROOM, units)} {units}"
    found = by_factor(
        "headroom", "Headroom", demand=needed, capacity=greatest, unit="m",
        shown=of(needed, greatest, units), when_beyond=f"does not fit under the spindle: lower packing or a shorter tool; {words}",
        working=words,
    )  # fmt: skip
    if top + long < least:
        return by_factor(
            "headroom", "Headroom", demand=least, capacity=top + long, unit="m",
            shown=of(top + long, least, units, ", at least "),
            when_beyond="the spindle does not come down to the work: stand it higher", working=words,
        )  # fmt: skip
    return found
