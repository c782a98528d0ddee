"""Fly cutting: one tooth over the middle of the face, a fine finish and a hammering load.

The cut is centred: the tooth enters and leaves at both sides of the work. Between two passes of the
tooth nothing cuts, so the peak of the torque is several times its mean.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
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
                title="Fly cutter",
                asks="cutter",
                choices=("fly cutter",),
                hint="its swing, such as fly cutter 60 mm, carbide",
            ),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="20 mm"),
            milling.LAYER,
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, milling.ALONG, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, common.WHAT, common.NOTE)),
)


def _width(fields: Fields, setting: Setting) -> float:
    """The work across the feed [m]; the swing must reach over it."""
    width = setting.extent[1 if fields.along == "x" else 0]
    diameter = milling.diameter_of(fields.cutter)
    if width >= diameter:
        raise CalcError(
            "fly cutter",
            f"{diameter * 1e3:.4g} mm across",
            f"wider than the work, {width * 1e3:.4g} mm: it cuts once over the whole face",
        )
    return width


def figures(fields: Fields, setting: Setting) -> Figures:
    """A centred cut over the whole width; mean and peak beside each other."""
    tally = Tally(setting.units)
    diameter, width = milling.diameter_of(fields.cutter), _width(fields, setting)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    half = math.asin(width / diameter)
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=fields.depth.value / layers,
        width=width,
        tooth=0.0,
        start=math.pi / 2 - half,
        end=math.pi / 2 + half,
    )
    _, feed, forces = milling.run(tally, cut, setting, milling.asked_of(fields))
    if not forces.always_in_cut:
        tally.caveat("The tooth cuts air between two cuts: belts and keys feel the peak, not the mean.")
    length = setting.extent[0 if fields.along == "x" else 1] + diameter
    tally.show("width_of_cut", width)
    tally.show("passes", float(layers))
    tally.show("layers", float(layers))
    tally.show("path_length", length)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each * layers)
    tally.show("volume", fields.depth.value * setting.extent[0] * setting.extent[1])
    return tally.done()


def rows(fields: Fields, found: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much comes off the whole face."""
    shown, unit = common.millimetres(fields.depth.value, setting.units)
    note = f"{milling.passes_words(found)}, {found.shown('time_each')} each"
    do = f"Fly-cut {shown} {unit} off"
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
    return f"Fly-cut {fields.depth.text} off"


#: A new fly cut, to be changed.
EXAMPLE = {
    "cutter": "fly cutter 80 mm, carbide",
    "depth": "0.2 mm",
    "feed_per_tooth": "0.1 mm",
    "along": "x",
}


KIND = Kind(
    name="fly-cut",
    title="Fly cut",
    icon="fly-cut",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    example=EXAMPLE,
    word="fly-cut",
    groups=("milling",),
    roles=Roles(mills="flat", speed="mill"),
    takes_off=takes_off,
    reads=reading.CUT | reading.FLAT,
)
