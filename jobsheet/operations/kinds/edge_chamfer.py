"""Chamfering edges with a pointed cutter: a small triangle off each edge, quickly and lightly.

The triangle is reckoned as a cut half as wide as it is deep (the same area), at the cutter's diameter
where it cuts: near the tip the edge runs slower than the shank would suggest.
"""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Bevel, Sweep
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
    size: Quantity
    below: Quantity | None = None
    edges: str = "all round the top"
    length: Quantity | None = None
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Chamfer",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("chamfer mill", "countersink", "spot drill"),
            ),
            Entry(
                name="size",
                title="Size",
                asks="length",
                low="0.05 mm",
                high="20 mm",
                hint="its leg on the top face",
            ),
            Entry(
                name="below",
                title="Tip below the chamfer",
                asks="length",
                low="0 mm",
                high="20 mm",
                optional=True,
                hint="leave empty: 1 mm, so that the tip does not rub",
            ),
            Entry(
                name="edges",
                title="Edges",
                asks="choice",
                choices=("all round the top", "one edge"),
                optional=True,
            ),
            Entry(
                name="length",
                title="Length",
                asks="length",
                low="0.1 mm",
                high="10 m",
                optional=True,
                hint="leave empty: the whole edge or all round",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, milling.ALONG, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)

#: How far the tip stands below the chamfer where nothing is asked [m] (common practice).
USUAL_BELOW = 1e-3


def _half_angle(cutter: Cutter) -> float:
    angle = cutter.point_angle or math.radians(90)
    if angle >= math.pi:
        raise CalcError("cutter", f"“{cutter.text}”", "pointed, such as chamfer mill 10 mm, 90°, 4 teeth")
    return angle / 2


def _reach(fields: Fields) -> tuple[float, float]:
    """Depth of the tip below the top face, and the cutter's diameter there at the top of the chamfer [m]."""
    half = _half_angle(fields.cutter)
    height = fields.size.value / math.tan(half)
    below = fields.below.value if fields.below else USUAL_BELOW
    depth = below + height
    across = 2 * depth * math.tan(half)
    whole = milling.diameter_of(fields.cutter)
    if across > whole * (1 + 1e-9):
        raise CalcError(
            "tip below the chamfer",
            f"{below * 1e3:.3g} mm",
            f"less: the cutter is {whole * 1e3:.4g} mm across",
        )
    return depth, across


def _length(fields: Fields, setting: Setting) -> float:
    """How much edge is broken [m]."""
    if fields.length is not None:
        return fields.length.value
    long, wide, _ = setting.extent
    if fields.edges == "one edge":
        return long if fields.along == "x" else wide
    round_about = setting.profile.rim((long, wide)) if setting.profile is not None else None
    return round_about or 2 * (long + wide)


def figures(fields: Fields, setting: Setting) -> Figures:
    """A light cut of the triangle's area at the diameter where it cuts."""
    tally = Tally(setting.units)
    depth, across = _reach(fields)
    height = fields.size.value / math.tan(_half_angle(fields.cutter))
    cutter = replace(fields.cutter, diameter=across, stick_out=None)
    start, end = milling.edge_arc(fields.size.value / 2, across)
    cut = milling.Cut(
        cutter=cutter, depth=height, width=fields.size.value / 2, tooth=0.0, start=start, end=end
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    length = _length(fields, setting)
    tally.show("effective_diameter", across)
    tally.show("hole_depth", depth)
    tally.show("passes", 1.0)
    tally.show("layers", 1.0)
    tally.show("path_length", length)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each)
    tally.show("volume", fields.size.value * height / 2 * length)
    return tally.done()


def _words(fields: Fields) -> str:
    where = "all round" if fields.edges != "one edge" else "one edge"
    return f"Chamfer {where}, {fields.size.text}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return _words(fields), f"Chamfer {fields.size.text}"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: size, how far the tip reaches, which edges."""
    note = f"tip {reckoned.shown('hole_depth')} below the top; {reckoned.shown('time_each')} in all"
    total = reckoned.number("hole_depth")
    return (
        milling.row(fields, reckoned, setting, do=_words(fields), note=note, total=total, along=fields.along),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle, depth of the tip."""
    return milling.dials(reckoned.number("hole_depth"), reckoned, setting, fields.along, "to the tip")


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Broken top edges."""
    return (Bevel(fields.size.value),)


#: A new chamfer, to be changed.
EXAMPLE = {
    "cutter": "chamfer mill 10 mm, 90°, 4 teeth",
    "size": "0.5 mm",
    "edges": "all round the top",
    "feed_per_tooth": "0.03 mm",
    "along": "x",
}


def _reads(fields: Fields) -> frozenset[str]:
    """The edges all round are as long as the work, where their length is not said."""
    return reading.MILL if fields.length is not None else reading.MILL | reading.FLAT | {"extent.z"}


KIND = Kind(
    name="edge-chamfer",
    title="Chamfer edges",
    icon="chamfer",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="edge-chamfer",
    groups=("milling",),
    roles=Roles(mills="edge", process="chamfer"),
    reads=_reads,
    also=("break edges", "bevel"),
)
