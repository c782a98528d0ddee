"""What the kinds share that take a layer off the whole face that is up: times over passes
and layers, row, dials, shape, form.
"""

from __future__ import annotations

from typing import Any

from jobsheet.cutting.times import cutting_time
from jobsheet.model.figure import Figures
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Slab, Sweep
from jobsheet.operations import reads
from jobsheet.operations.kind import Dial, Group
from jobsheet.operations.manners import HOW_MILLED
from jobsheet.operations.shared import common
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally

#: A face is as long and as wide as the work, however high that is.
READS = reads.MILL | reads.FLAT
#: The groups of the form behind the cut itself.
FORM = (
    Group("Speed and feed", (*milling.FEED_ENTRIES, milling.ALONG, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)


def length_and_width(fields: Any, setting: Setting) -> tuple[float, float]:
    """The work along the feed and across it [m], as far as the layer goes: a flat on
    round bar is narrower than the bar.
    """
    along, across = (0, 1) if fields.along == "x" else (1, 0)
    spans = [setting.extent[0], setting.extent[1]]
    profile = setting.profile
    if profile is not None and (wide := profile.width(fields.depth.value)) is not None:
        spans[profile.cross] = min(spans[profile.cross], wide)
    return spans[along], spans[across]


def _volume(fields: Any, setting: Setting) -> float:
    """What the layer takes off [m³]: never more than of a box."""
    whole: float = fields.depth.value * setting.extent[0] * setting.extent[1]
    return whole if setting.profile is None else min(whole, setting.profile.layer(fields.depth.value))


def times(
    tally: Tally,
    fields: Any,
    setting: Setting,
    *,
    feed: float,
    length: float,
    width: float,
    side_by_side: int,
) -> Figures:
    """Figures of all passes over all layers, from one pass of that length and width [m]
    at a feed [m/s]; closes the tally.
    """
    layers = milling.layers_of(fields.depth.value, fields.layer)
    tally.show("width_of_cut", width)
    tally.show("passes", float(side_by_side * layers))
    tally.show("layers", float(layers))
    tally.show("path_length", length)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each * side_by_side * layers)
    tally.show("volume", _volume(fields, setting))
    return tally.done()


def rows(fields: Any, reckoned: Figures, setting: Setting, *, verb: str, passes: str) -> tuple[Row, ...]:
    """One line: how much comes off, in which passes."""
    shown, unit = common.millimetres(fields.depth.value, setting.units)
    note = f"{passes}, {reckoned.shown('time_each')} each"
    return (
        milling.row(
            fields, reckoned, setting, do=f"{verb} {shown} {unit} off", note=note, total=fields.depth.value, along=fields.along
        ),
    )  # fmt: skip


def dials(fields: Any, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle and depth."""
    return milling.dials(fields.depth.value, reckoned, setting, fields.along, milling.passes_words(reckoned))


def sweep(fields: Any, _setting: Setting) -> tuple[Sweep, ...]:
    """The layer that comes off."""
    return (Slab(fields.depth.value),)


def takes_off(fields: Any) -> float:
    """By how much the top of the work is lower afterwards [m]."""
    return float(fields.depth.value)
