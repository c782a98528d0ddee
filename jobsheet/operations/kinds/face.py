"""Facing: taking a layer off the face that is up, in passes side by side.

The cut is reckoned from one edge: the mean chip is that of an edge cut as wide as the widest pass.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.times import cutting_time
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Quantity, Size, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Slab, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    depth: Quantity
    layer: Quantity | None = None
    width: Quantity | None = None
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Size | None = None
    tolerances: Tolerances | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Cut",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("face mill", "end mill", "slot drill"),
            ),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="200 mm"),
            milling.LAYER,
            Entry(
                name="width",
                title="Width of a pass",
                asks="length",
                low="0.1 mm",
                high="500 mm",
                optional=True,
                hint="leave empty: as wide as the cutter may",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, milling.ALONG, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, common.WHAT, common.NOTE)),
)

#: A face cut takes 60-75 % of the cutter where nothing is asked (common practice, cutting-data section 3.3).
USUAL_WIDTH = 0.6


def passes(fields: Fields, setting: Setting) -> tuple[tuple[float, ...], float]:
    """Widths of the passes side by side and the length of each [m], approach and overrun in it.

    The length is that of the work plus one diameter (makers' form, cutting-data section 1.10).
    """
    diameter = milling.diameter_of(fields.cutter)
    along, across = (0, 1) if fields.along == "x" else (1, 0)
    length, total = setting.extent[along], setting.extent[across]
    width = min(fields.width.value if fields.width else diameter * USUAL_WIDTH, total)
    count = max(1, math.ceil(total / width - 1e-9))
    widths = [width] * (count - 1) + [total - width * (count - 1)]
    return tuple(widths), length + diameter


def figures(fields: Fields, setting: Setting) -> Figures:
    """The widest pass, counted from one edge; times over all passes and layers."""
    tally = Tally(setting.units)
    widths, length = passes(fields, setting)
    widest = max(widths)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    start, end = milling.edge_arc(widest, milling.diameter_of(fields.cutter))
    cut = milling.Cut(
        cutter=fields.cutter, depth=fields.depth.value / layers, width=widest, tooth=0.0, start=start, end=end
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    tally.show("width_of_cut", widest)
    tally.show("passes", float(len(widths) * layers))
    tally.show("layers", float(layers))
    tally.show("path_length", length)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each * len(widths) * layers)
    tally.show("volume", fields.depth.value * setting.extent[0] * setting.extent[1])
    return tally.done()


def rows(fields: Fields, found: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much comes off, in how many passes."""
    widths, length = passes(fields, setting)
    shown, unit = common.millimetres(fields.depth.value, setting.units)
    unique = " and ".join(common.millimetres(width, setting.units)[0] for width in dict.fromkeys(widths))
    long, _ = common.millimetres(length, setting.units)
    count = common.times(len(widths), "one pass", "passes")
    note = f"{count} {unique} wide, {long} long, {found.shown('time_each')} each"
    do = f"Face {shown} {unit} off"
    return (
        milling.row(fields, found, setting, do=do, note=note, total=fields.depth.value, along=fields.along),
    )


def dials(fields: Fields, found: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle and depth."""
    return milling.dials(fields.depth.value, found, setting, fields.along, milling.passes_words(found))


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The layer that comes off."""
    return (Slab(fields.depth.value),)


def takes_off(fields: Fields) -> float:
    """By how much the top of the work is lower afterwards [m]."""
    return fields.depth.value


def _words(fields: Fields) -> str:
    return f"Face {fields.depth.text} off"


#: A new facing cut, to be changed.
EXAMPLE = {
    "cutter": "face mill 50 mm, 4 teeth, carbide",
    "depth": "0.5 mm",
    "feed_per_tooth": "0.05 mm",
    "along": "x",
}


KIND = Kind(
    name="face",
    title="Face",
    icon="face",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    example=EXAMPLE,
    word="face",
    groups=("milling",),
    roles=Roles(mills="flat", speed="mill", process="face"),
    takes_off=takes_off,
    reads=reading.CUT | reading.FLAT,
)
