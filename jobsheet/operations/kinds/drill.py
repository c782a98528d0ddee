"""Drilling: from solid or after a smaller hole at the same places; spotting too, by a spot drill's cone.

Through the quill lever the feed is what the hand's push makes of it: the sheet gives seconds to the
depth and pecks instead of a handle pace.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.speed import cone_diameter
from jobsheet.cutting.strength import drill_strength
from jobsheet.cutting.times import point_length
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Places, Quantity, Several, Tolerances
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
from jobsheet.operations.shared.tally import Tally
from jobsheet.units.show import trimmed


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    depth: Depth
    peck: Quantity | None = None
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
        "Holes",
        (
            Entry(name="cutter", title="Drill", asks="cutter", choices=("drill", "spot drill")),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(
                name="depth",
                title="Depth",
                asks="depth",
                low="0.05 mm",
                high="800 mm",
                hint="of the full diameter; to the tip for a spot drill",
            ),
            drilling.PECK,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)


def diameter_cut(fields: Fields) -> float:
    """The diameter at the surface [m]: the drill's, or that of a spot drill's cone at its depth."""
    whole = fields.cutter.diameter
    if whole is None:
        raise CalcError("drill", f"“{fields.cutter.text}”", "written with its size")
    if _spotting(fields) and fields.depth.value is not None and fields.cutter.point_angle:
        return min(whole, cone_diameter(depth=fields.depth.value, point_angle=fields.cutter.point_angle))
    return whole


def _spotting(fields: Fields) -> bool:
    return fields.cutter.kind == "spot drill"


def _tip(fields: Fields) -> float:
    """How far the point reaches beyond the full diameter [m]; a spot drill's depth is to its tip already."""
    if _spotting(fields):
        return 0.0
    angle = fields.cutter.point_angle or common.radians(118)
    return point_length(diameter=diameter_cut(fields), point_angle=angle)


def figures(fields: Fields, setting: Setting) -> Figures:
    """Handbook torque and thrust with web, or in a hole that is there; push at the lever; seconds."""
    tally = Tally(setting.units)
    diameter = diameter_cut(fields)
    if _spotting(fields):
        tally.show("effective_diameter", diameter)
        if fields.depth.through:
            raise CalcError("depth", "through", "a depth for a spot drill, such as 3 mm")
    bite = bite_of(fields.cutter, diameter, drilling.feed_of(fields), setting.pilot)
    torque, thrust = drilling.forces(tally, setting, bite)
    depth = drilling.depth_of(fields.depth, setting)
    start = common.start_speed(setting, fields.cutter, "drill", depth / diameter)
    speed = drilling.turn(tally, setting, fields, bite, torque, start, deep=depth / diameter)
    drilling.times(tally, bite, speed, depth, len(fields.at), peck=fields.peck, tip=_tip(fields))
    drilling.push(tally, setting, thrust, bite)
    if not _spotting(fields):
        drilling.removal(tally, bite, speed)
        strength = tally.figure("drill_strength", drill_strength, diameter=diameter)
        tally.show("drill_strength_share", torque / strength)
    return tally.done()


def _words(fields: Fields) -> str:
    holes = hole_words.holes_words(len(fields.at))
    if _spotting(fields):
        return f"Spot {holes} to ⌀{trimmed(diameter_cut(fields) * 1e3, 2)}"
    size = fields.cutter.size.removesuffix("mm").strip()
    return f"Drill {holes} {size}, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    if _spotting(fields):
        return hole_words.shorter("Spot", len(fields.at), f"to ⌀{trimmed(diameter_cut(fields) * 1e3, 2)}", "")
    size = hole_words.size_words(fields.cutter)
    return hole_words.shorter("Drill", len(fields.at), size, hole_words.where(fields.depth))


def _stop(fields: Fields, reckoned: Figures) -> float:
    """Where the quill stop stands: the depth of the tip, a millimetre further for what goes through [m]."""
    depth = reckoned.number("hole_depth")
    return round(depth + _tip(fields) + (0.001 if fields.depth.through else 0.0), 4)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many holes, of what size, how deep, in how many pecks."""
    return (drilling.row(fields, reckoned, setting, do=_words(fields), stop=_stop(fields, reckoned)),)


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.dials(reckoned, setting, _stop(fields, reckoned))


def _shapes(fields: Fields) -> tuple[Hole, ...]:
    diameter = diameter_cut(fields)
    straight = 0.0 if _spotting(fields) else fields.depth.value
    return tuple(
        Hole(place.x.value, place.y.value, diameter, straight, fields.cutter.point_angle)
        for place in fields.at
    )


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The holes it leaves; a spotted cone is no pilot for what follows."""
    return () if _spotting(fields) else _shapes(fields)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Round holes with their points."""
    return _shapes(fields)


#: A new hole, to be changed.
EXAMPLE = {"cutter": "drill 5 mm", "at": "10 mm, 10 mm", "depth": "through", "feed": "0.08 mm"}


_ROLES = Roles(hole="drill", speed="drill", feed="drill", process="drill")
_SPOTS = replace(_ROLES, hole="spot")


def _roles(fields: Fields) -> Roles:
    """A spot drill in it spots; so does a centre drill."""
    return _SPOTS if fields.cutter.kind in ("spot drill", "centre drill") else _ROLES


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | {"pilot"} | reading.depth_through(fields)


KIND = Kind(
    name="drill",
    title="Drill",
    icon="drill",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="drill",
    groups=("drilling",),
    roles=_roles,
    holes=holes,
    reads=_reads,
    also=("hole",),
)
