"""A dovetail: a groove that is wider below, cut along a straight line. It is only there to
show what a kind gets for its roles.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.times import cutting_time
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Places, Quantity, Size, Tolerances
from jobsheet.model.shape import Groove
from jobsheet.operations import reads
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    line: Places
    depth: Depth
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Size | None = None
    tolerances: Tolerances | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Dovetail",
        (
            Entry(name="cutter", title="Cutter", asks="cutter", choices=("end mill", "slot drill")),
            Entry(name="line", title="From and to, x and y", asks="places"),
            Entry(name="depth", title="Depth", asks="depth", low="0.05 mm", high="200 mm"),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, common.WHAT, common.NOTE)),
)


def outline(fields):
    return tuple((place.x.value, place.y.value) for place in fields.line)


def figures(fields, setting) -> Figures:
    tally = Tally(setting.units)
    depth = drilling.depth_of(fields.depth, setting)
    cut = milling.Cut(
        cutter=fields.cutter, depth=depth, width=milling.diameter_of(fields.cutter), tooth=0.0, start=0.0, end=math.pi, wall=True
    )  # fmt: skip
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    way = math.dist(*outline(fields))
    each = tally.figure("time_each", cutting_time, length=way, feed=feed)
    tally.show("cutting_time", each)
    tally.show("path_length", way)
    tally.show("volume", depth * cut.width * way)
    return tally.done()


def rows(fields, found, setting):
    deep = fields.depth.value or setting.thickness
    return (milling.row(fields, found, setting, do="Dovetail", note="", total=deep, along="x"),)


def dials(fields, found, setting):
    return milling.dials(fields.depth.value or setting.thickness, found, setting, "x")


def sweep(fields, _setting):
    (x1, y1), (x2, y2) = outline(fields)
    return (Groove(x1, y1, x2, y2, milling.diameter_of(fields.cutter), fields.depth.value),)


KIND = Kind(
    name="made-up-dovetail",
    title="Dovetail",
    icon="slot",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=lambda _fields: "Dovetail",
    example={
        "cutter": "end mill 12 mm, 4 teeth, 30 mm out", "line": "15 mm, 25 mm; 60 mm, 25 mm", "depth": "4 mm",
        "feed_per_tooth": "0.03 mm",
    },
    word="dovetail",
    groups=("milling",),
    roles=Roles(mills="groove", speed="mill", full_width=True, closed=True),
    reads=lambda fields: reads.CUT | reads.depth_through(fields),
    outline=outline,
)  # fmt: skip
