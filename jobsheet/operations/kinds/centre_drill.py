"""Centre drilling: the centre for a lathe's or a dividing head's point, by a drill with a point of its own.

The small point drills ahead and the cone of 60° follows it. To start a drill, a
spot drill is the better tool.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.cutting.drill_forces import drill_torque
from jobsheet.cutting.speed import cone_depth, cone_diameter
from jobsheet.errors import CalcError, JobsheetError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_DRILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common, hole_words
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared.bite import bite_of
from jobsheet.operations.shared.tally import DRILL_BAND, Tally
from jobsheet.units.show import trimmed

#: Form A of ISO 866, from memory: the point is about 1.25 of its diameter long, the body 2.5 of it thick.
POINT_LENGTH, BODY = 1.25, 2.5
#: The point itself is ground as a drill's (common practice).
_POINT = common.radians(118)
_CONE = common.radians(60)


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    to: Quantity | None = None
    depth: Quantity | None = None
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
        "Centres",
        (
            Entry(
                name="cutter", title="Centre drill", asks="cutter", choices=("centre drill",),
                hint="by the diameter of its point: centre drill 3.15 mm",
            ),
            drilling.PLACES,
            Entry(
                name="to", title="Diameter at the surface", asks="length", low="0.3 mm", high="40 mm", optional=True,
                hint="of the cone; or write the depth",
            ),
            Entry(
                name="depth", title="Depth to the tip", asks="length", low="0.1 mm", high="60 mm", optional=True,
                hint="instead of the diameter",
            ),
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _cone(fields: Fields) -> float:
    return fields.cutter.point_angle or _CONE


def centre_of(fields: Fields) -> tuple[float, float]:
    """Diameter at the surface and depth of the tip [m], whichever of them was typed."""
    point = drilling.diameter_of(fields.cutter)
    ahead = POINT_LENGTH * point
    if fields.to is not None and fields.depth is not None:
        raise CalcError(
            "depth", f"“{fields.depth.text}”", "left empty where the diameter at the surface is written"
        )
    if fields.to is not None:
        widest = BODY * point
        if not point * (1 - 1e-9) <= fields.to.value <= widest * (1 + 1e-9):
            raise CalcError(
                "diameter at the surface",
                f"“{fields.to.text}”",
                f"between the point, {_mm(point)}, and the body, about {_mm(widest)}: write another size of centre drill",
            )
        return fields.to.value, ahead + cone_depth(
            diameter=fields.to.value, point_angle=_cone(fields), tip=point
        )
    if fields.depth is None:
        raise CalcError("centre", "without a size", "given its diameter at the surface or its depth")
    depth = fields.depth.value
    if depth <= ahead:
        return point, depth
    return min(BODY * point, cone_diameter(depth=depth - ahead, point_angle=_cone(fields), tip=point)), depth


def _mm(value: float) -> str:
    return f"{trimmed(value * 1e3, 2)} mm"


def figures(fields: Fields, setting: Setting) -> Figures:
    """A drill of the diameter at the surface, with its web: more than point and
    cone ask; strength of the point.
    """
    tally = Tally(setting.units)
    diameter, depth = centre_of(fields)
    point = drilling.diameter_of(fields.cutter)
    tally.show("effective_diameter", diameter)
    if diameter <= point * (1 + 1e-9):
        tally.caveat("Only the point goes in: no cone is left for a centre; write a greater depth.")
    elif fields.depth is not None and diameter >= BODY * point * (1 - 1e-9):
        tally.caveat("The body goes in beyond its cone: write a smaller depth.")
    bite = bite_of(fields.cutter, diameter, drilling.feed_of(fields), None)
    drilling.cut(tally, setting, fields, bite, depth, common.start_speed(setting, fields.cutter, "drill"))
    alone = tally.use(
        "point_torque",
        drill_torque,
        kd=setting.material.kd_torque.value,
        feed=drilling.feed_of(fields),
        diameter=point,
        wear=common.wear(setting, fields.cutter, "drill"),
    )
    tally.show("point_torque", alone, DRILL_BAND)
    drilling.strength(tally, point, alone)
    return tally.done()


def _words(fields: Fields) -> str:
    centres = common.times(len(fields.at), "one centre", "centres")
    size = hole_words.size_words(fields.cutter)
    if fields.to is not None:
        return f"Drill {centres} {size}, to ⌀{hole_words.bare(fields.to)}"
    return f"Drill {centres} {size}, {fields.depth.text} deep" if fields.depth else f"Drill {centres} {size}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    count = common.times(len(fields.at), "one centre", "centres")
    return _words(fields), f"Drill {count} {hole_words.size_words(fields.cutter)}", f"Drill {count}"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many, with which point, to what diameter and how deep."""
    return (drilling.cone_row(fields, reckoned, setting, _words(fields)),)


def dials(_fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.cone_dials(reckoned, setting)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The hole of the point, and the cone about it; neither is a pilot for what follows."""
    try:
        diameter, depth = centre_of(fields)
    except JobsheetError:
        return ()
    point = drilling.diameter_of(fields.cutter)
    made: tuple[Hole, ...] = drilling.shapes(
        fields.at, point, max(0.0, depth - cone_depth(diameter=point, point_angle=_POINT)), _POINT
    )
    if diameter > point:
        made += drilling.shapes(fields.at, diameter, 0.0, _cone(fields))
    return made


#: A new centre, to be changed.
EXAMPLE = {"cutter": "centre drill 3.15 mm", "at": "10 mm, 10 mm", "to": "6 mm", "feed": "0.04 mm"}


KIND = Kind(
    name="centre-drill", title="Centre drill", icon="centre-drill", fields=Fields, form=FORM, figures=figures,
    rows=rows, dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="centre-drill", groups=("drilling",),
    roles=Roles(hole="spot", feed="drill", process="spot"),
    reads=reading.CUT,
    also=("center", "spot"),
)  # fmt: skip
