"""A keyway for a parallel key: a closed slot whose width is the cutter's and whose depth is a fit.

Depth is measured from the top of a round shaft at its highest line, as drawings give it.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Place, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Groove, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_MILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    start: Places
    length: Quantity
    along: str = "x"
    depth: Quantity
    layer: Quantity | None = None
    shaft: Quantity | None = None
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
    def around(self) -> tuple[tuple[float, float], ...]:
        """Where the cutter's centre begins and ends [m]. Raises CalcError where it goes nowhere."""
        first, way = _first(self), _way(self)
        x, y = first.x.value, first.y.value
        return ((x, y), (x + way, y)) if self.along == "x" else ((x, y), (x, y + way))


FORM = (
    Group(
        "Keyway",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("slot drill", "end mill"),
                hint="as wide as the key",
            ),
            Entry(name="start", title="First centre, x and y", asks="places", hint="such as 20, 0"),
            Entry(
                name="length",
                title="Length over the round ends",
                asks="length",
                low="0.5 mm",
                high="1 m",
            ),
            milling.ALONG,
            Entry(name="depth", title="Depth", asks="length", low="0.05 mm", high="60 mm"),
            milling.LAYER,
            Entry(
                name="shaft",
                title="Shaft diameter",
                asks="length",
                low="2 mm",
                high="500 mm",
                optional=True,
                hint="depth then counts from its highest line",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)


def _way(fields: Fields) -> float:
    """The way of the cutter's centre [m]."""
    way = fields.length.value - milling.diameter_of(fields.cutter)
    if way <= 0:
        raise CalcError("length", fields.length.text, "more than the width of the cutter")
    return way


def _first(fields: Fields) -> Place:
    points = fields.start.points
    if len(points) != 1:
        raise CalcError("first centre", f"{len(points)} places", "one place, such as 20, 0")
    return points[0]


def crown(width: float, shaft: float) -> float:
    """How much the shaft's top stands above the edges of a keyway of that width [m] (a circle's segment)."""
    if width >= shaft:
        raise CalcError("shaft diameter", f"{shaft * 1e3:.4g} mm", "more than the width of the keyway")
    return (shaft - math.sqrt(shaft**2 - width**2)) / 2


def figures(fields: Fields, setting: Setting) -> Figures:
    """A full-width cut of one layer; on a shaft the flat that the cutter finds first is counted off."""
    tally = Tally(setting.units)
    width = milling.diameter_of(fields.cutter)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    way = _way(fields)
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=fields.depth.value / layers,
        width=width,
        tooth=0.0,
        start=0.0,
        end=math.pi,
        wall=True,
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    if fields.shaft is not None:
        tally.show("crown", crown(width, fields.shaft.value))
    tally.show("width_of_cut", width)
    tally.show("passes", float(layers))
    tally.show("layers", float(layers))
    tally.show("path_length", way)
    each = tally.figure("time_each", cutting_time, length=way, feed=feed)
    tally.show("cutting_time", each * layers)
    tally.show("volume", _volume(fields, setting, way))
    return tally.done()


def _volume(fields: Fields, setting: Setting, way: float) -> float:
    """What comes out [m³]: of a round bar only what is there, which is less at the sides
    of the keyway than along its middle.
    """
    width, depth = milling.diameter_of(fields.cutter), fields.depth.value
    whole = depth * (width * way + math.pi * width**2 / 4)
    along = 0 if fields.along == "x" else 1
    found = (
        setting.profile.groove(along, way, width, depth, round_ends=True)
        if setting.profile is not None
        else None
    )
    return whole if found is None else min(whole, found)


def _words(fields: Fields) -> str:
    size = fields.cutter.size.removesuffix("mm").strip()
    return f"Cut the keyway {size} × {fields.length.text}, {fields.depth.text} deep"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    size = f"{fields.cutter.size.removesuffix('mm').strip()} × {fields.length.text}"
    return _words(fields), f"Keyway {size}, {fields.depth.text} deep", f"Keyway {size}"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: width, length, depth and layers; on a shaft what the flat counts."""
    layers = reckoned.count("layers")
    parts = [f"{layers} layers" if layers > 1 else "", f"first centre at {_first(fields).text}"]
    if reckoned.get("crown"):
        parts.append(f"depth from the highest line; the flat stands {reckoned.shown('crown')} lower")
    note = ", ".join(part for part in parts if part)
    return (
        milling.row(
            fields,
            reckoned,
            setting,
            do=_words(fields),
            note=note,
            total=fields.depth.value,
            along=fields.along,
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle, depth of a layer."""
    return milling.dials(fields.depth.value, reckoned, setting, fields.along, milling.layers_words(reckoned))


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """A groove with round ends."""
    begin, end = fields.around
    return (Groove(*begin, *end, milling.diameter_of(fields.cutter), fields.depth.value),)


#: A new keyway, to be changed.
EXAMPLE = {
    "cutter": "slot drill 6 mm, 20 mm out",
    "start": "15 mm, 25 mm",
    "length": "25 mm",
    "along": "x",
    "depth": "3.5 mm",
    "layer": "0.6 mm",
    "feed_per_tooth": "0.02 mm",
}


def outline(fields: Fields) -> tuple[tuple[float, float], ...]:
    """The way of the cutter's centre, from the start [m]."""
    first = next(iter(fields.start))
    x, y = first.x.value, first.y.value
    way = fields.length.value - (fields.cutter.diameter or 0.0)
    return ((x, y), (x + way, y)) if fields.along == "x" else ((x, y), (x, y + way))


KIND = Kind(
    name="keyway",
    title="Keyway",
    icon="keyway",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="keyway",
    groups=("milling",),
    roles=Roles(mills="groove", speed="mill", full_width=True, closed=True, keyed=True, process="keyway"),
    outline=outline,
    reads=reading.MILL | {"profile"},
    also=("groove", "keyseat"),
)
