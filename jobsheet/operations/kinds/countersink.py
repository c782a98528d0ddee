"""Countersinking: a cone at the mouth of a hole, to the diameter that the drawing asks for.

The quill is set from where the cutter touches the rim of the hole, so the depth is counted from there.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.speed import cone_depth
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_DRILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common, hole_words
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared.bite import Bite
from jobsheet.operations.shared.tally import Tally
from jobsheet.units.show import trimmed

#: A countersink whose angle is not written (common practice).
_USUAL_ANGLE = common.radians(90)


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    to: Quantity
    hole: Quantity | None = None
    feed: Quantity | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Cones",
        (
            Entry(
                name="cutter",
                title="Countersink",
                asks="cutter",
                choices=("countersink", "spot drill", "chamfer mill"),
                hint="with its angle, 90°, 82° or 60°: countersink 25 mm, 90°",
            ),
            drilling.PLACES,
            Entry(name="to", title="Diameter at the surface", asks="length", low="0.3 mm", high="120 mm"),
            drilling.HOLE,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)


def _angle(fields: Fields) -> float:
    return fields.cutter.point_angle or _USUAL_ANGLE


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque and thrust at the full diameter, where the cone cuts widest; a quarter of a drill's speed."""
    tally = Tally(setting.units)
    whole, diameter = drilling.diameter_of(fields.cutter), fields.to.value
    if diameter > whole * (1 + 1e-9):
        raise CalcError(
            "diameter at the surface",
            f"“{fields.to.text}”",
            f"at most the countersink, {hole_words.length(whole, setting)}",
        )
    hole = drilling.standing_hole(fields, setting, diameter)
    depth = tally.use("hole_depth", cone_depth, diameter=diameter, point_angle=_angle(fields), tip=hole)
    tally.show("effective_diameter", diameter)
    edges = drilling.edges_of(tally, fields.cutter)
    bite = Bite(
        diameter=diameter, feed=drilling.feed_of(fields), pilot=hole, edges=float(edges), cutter=fields.cutter
    )
    start = drilling.share_of_drill(setting, fields.cutter, "countersink")
    drilling.cut(tally, setting, fields, bite, depth, start)
    return tally.done()


def _words(fields: Fields) -> str:
    holes = hole_words.holes_words(len(fields.at))
    angle = trimmed(math.degrees(_angle(fields)), 1)
    return f"Countersink {holes} to ⌀{hole_words.bare(fields.to)}, {angle}°"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    angle = f"{trimmed(math.degrees(_angle(fields)), 1)}°"
    return hole_words.shorter("Countersink", len(fields.at), f"to ⌀{hole_words.bare(fields.to)}", angle)


def _stop(reckoned: Figures, setting: Setting) -> float:
    return drilling.settable(reckoned.number("hole_depth"), setting)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many, to what diameter, at what angle; the depth from the rim of the hole."""
    notes = ("depth from where it touches the rim",)
    return (
        drilling.row(
            fields,
            reckoned,
            setting,
            do=_words(fields),
            stop=_stop(reckoned, setting),
            notes=notes,
            hole="in",
        ),
    )


def dials(_fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds, quill stop counted from the rim."""
    return drilling.dials(
        reckoned, setting, _stop(reckoned, setting), "from where it touches the rim of the hole"
    )


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Cones. The hole below is still the one that later steps find: no holes are left."""
    return drilling.shapes(fields.at, fields.to.value, 0.0, _angle(fields))


#: A new countersink, to be changed.
EXAMPLE = {
    "cutter": "countersink 16 mm, 90°, 3 edges",
    "at": "10 mm, 10 mm",
    "to": "8 mm",
    "feed": "0.08 mm",
}


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | reading.hole_there(fields)


KIND = Kind(
    name="countersink", title="Countersink", icon="countersink", fields=Fields, form=FORM, figures=figures,
    rows=rows, dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="countersink", groups=("drilling",),
    roles=Roles(hole="countersink", feed="countersink", process="countersink"),
    reads=_reads,
    also=("csk", "chamfer hole"),
)  # fmt: skip
