"""Slotting: a groove of the cutter's own width, in layers; its ends are where the cutter's centre stops.

Both walls are cut at once, one the conventional and one the climb way: a close width is cut with a smaller
cutter and opened side by side (a side mill step for each wall).
"""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Groove, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_MILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common, hole_words
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    ends: Places
    depth: Depth
    layer: Quantity | None = None
    open_ends: str = "closed"
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""

    @property
    def along(self) -> str:
        """The handle that feeds: that of the longer way between the ends."""
        (x1, y1), (x2, y2) = _ends(self)
        return "x" if abs(x2 - x1) >= abs(y2 - y1) else "y"


FORM = (
    Group(
        "Slot",
        (
            Entry(name="cutter", title="Cutter", asks="cutter", choices=("slot drill", "end mill")),
            Entry(
                name="ends",
                title="Ends, x and y",
                asks="places",
                hint="the cutter's centre at both ends: 25, 30; 75, 30",
            ),
            Entry(name="depth", title="Depth", asks="depth", low="0.05 mm", high="200 mm"),
            milling.LAYER,
            Entry(
                name="open_ends",
                title="Ends are",
                asks="choice",
                choices=("closed", "one open", "both open"),
                optional=True,
                hint="open: the cutter runs out of the work",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)


def _ends(fields: Fields) -> tuple[tuple[float, float], tuple[float, float]]:
    """The two ends of the cutter's centre [m]."""
    points = fields.ends.points
    if len(points) != 2:
        raise CalcError("ends", f"{len(points)} places", "two places, such as 25, 30; 75, 30")
    first, last = points
    return (first.x.value, first.y.value), (last.x.value, last.y.value)


def _length(fields: Fields) -> float:
    """The way of the cutter's centre [m]; an open end is run out by the cutter's radius."""
    (x1, y1), (x2, y2) = _ends(fields)
    out = {"closed": 0, "one open": 1, "both open": 2}[fields.open_ends]
    return math.hypot(x2 - x1, y2 - y1) + out * milling.diameter_of(fields.cutter) / 2


def figures(fields: Fields, setting: Setting) -> Figures:
    """A full-width cut of one layer; times over all layers."""
    tally = Tally(setting.units)
    diameter = milling.diameter_of(fields.cutter)
    depth = drilling.depth_of(fields.depth, setting)
    layers = milling.layers_of(depth, fields.layer)
    length = _length(fields)
    if length <= 0:
        raise CalcError("ends", f"“{fields.ends.text}”", "two different places")
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=depth / layers,
        width=diameter,
        tooth=0.0,
        start=0.0,
        end=math.pi,
        wall=True,
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    tally.show("width_of_cut", diameter)
    tally.show("passes", float(layers))
    tally.show("layers", float(layers))
    tally.show("hole_depth", depth)
    tally.show("path_length", length)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each * layers)
    tally.show("volume", _volume(fields, setting, depth, length))
    return tally.done()


def _volume(fields: Fields, setting: Setting, depth: float, length: float) -> float:
    """What comes out [m³]: of round bar and the like only what is there, as
    far as it lies over the middle.
    """
    diameter, closed = milling.diameter_of(fields.cutter), fields.open_ends == "closed"
    whole = depth * (diameter * length + (math.pi * diameter**2 / 4 if closed else 0.0))
    slanted = not any(a == b for a, b in zip(*_ends(fields), strict=True))
    if setting.profile is None or slanted:
        return whole
    along = 0 if fields.along == "x" else 1
    found = setting.profile.groove(along, length, diameter, depth, round_ends=closed)
    return whole if found is None else min(whole, found)


def _words(fields: Fields) -> str:
    size = fields.cutter.size.removesuffix("mm").strip()
    return f"Slot {size} wide, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return _words(fields), f"Slot {fields.cutter.size.removesuffix('mm').strip()} wide"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: width, depth, layers, from where to where."""
    layers = reckoned.count("layers")
    note = f"centre from {' to '.join(place.text for place in fields.ends.points)}"
    if layers > 1:
        note = f"{layers} layers, {note}"
    dialled = common.at_the_dials(setting, _ends(fields))
    note = f"{note}; {dialled}; {reckoned.shown('time_each')} each"
    total = reckoned.number("hole_depth")
    return (
        milling.row(
            fields,
            reckoned,
            setting,
            do=_words(fields),
            note=note,
            total=total,
            along=fields.along,
            readings=(dialled,),
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle, depth of a layer."""
    words = milling.layers_words(reckoned)
    return milling.dials(reckoned.number("hole_depth"), reckoned, setting, fields.along, words)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """A groove with round ends."""
    (x1, y1), (x2, y2) = _ends(fields)
    return (Groove(x1, y1, x2, y2, milling.diameter_of(fields.cutter), fields.depth.value),)


#: A new slot, to be changed.
EXAMPLE = {
    "cutter": "slot drill 10 mm, 30 mm out",
    "ends": "15 mm, 25 mm; 45 mm, 25 mm",
    "depth": "4 mm",
    "layer": "1 mm",
    "feed_per_tooth": "0.03 mm",
    "open_ends": "closed",
}


def outline(fields: Fields) -> tuple[tuple[float, float], ...]:
    """Its middle line, end to end [m]."""
    return tuple((place.x.value, place.y.value) for place in fields.ends)


_CLOSED = Roles(mills="groove", speed="mill", process="slot", full_width=True, closed=True)
_OPEN = replace(_CLOSED, closed=False)


def _roles(fields: Fields) -> Roles:
    """An end that is open lets the cutter in."""
    return _CLOSED if fields.open_ends == "closed" else _OPEN


def _reads(fields: Fields) -> frozenset[str]:
    return reading.MILL | {"profile"} | reading.depth_through(fields)


KIND = Kind(
    name="slot",
    title="Slot",
    icon="slot",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="slot",
    groups=("milling",),
    roles=_roles,
    outline=outline,
    reads=_reads,
    also=("groove",),
)
