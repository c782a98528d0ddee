"""Enlarging: a larger drill or a core drill in a hole that is there.

The lips alone cut: where the hole is at least as wide as the chisel edge, the thrust falls to a fraction.
A core drill has no point of its own and more edges; neither begins without a hole.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.cutting.times import point_length
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
from jobsheet.operations.shared.bite import Bite, bite_of
from jobsheet.operations.shared.tally import Tally

#: A drill whose point is not written (common practice).
_USUAL_POINT = common.radians(118)


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    depth: Depth
    hole: Quantity | None = None
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
            Entry(
                name="cutter", title="Drill or core drill", asks="cutter", choices=("drill", "core drill"),
                hint="a core drill with its edges: core drill 15.7 mm, 4 edges",
            ),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(
                name="depth", title="Depth", asks="depth", low="0.05 mm", high="800 mm", hint="of the full diameter",
            ),
            drilling.HOLE,
            drilling.PECK,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _bite(tally: Tally, fields: Fields, setting: Setting) -> Bite:
    """The lips in the hole that is there; a drill in a hole narrower than its chisel
    edge is relieved of a part of that.
    """
    diameter, feed = drilling.diameter_of(fields.cutter), drilling.feed_of(fields)
    hole = drilling.standing_hole(fields, setting, diameter)
    if fields.cutter.kind == "core drill":
        edges = drilling.edges_of(tally, fields.cutter)
        return Bite(diameter=diameter, feed=feed, pilot=hole, edges=float(edges), cutter=fields.cutter)
    bite = bite_of(fields.cutter, diameter, feed, hole)
    if bite.pilot is None:
        tally.caveat(
            f"The hole of {hole_words.length(hole, setting)} is narrower than the chisel edge: it relieves only a part of it."
        )
    return bite


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque and thrust of the lips in the hole that is there; push at the lever; seconds; strength."""
    tally = Tally(setting.units)
    bite = _bite(tally, fields, setting)
    depth = drilling.depth_of(fields.depth, setting)
    start = common.start_speed(setting, fields.cutter, "drill", depth / bite.diameter)
    speed, torque = drilling.cut(
        tally, setting, fields, bite, depth, start, peck=fields.peck, tip=_tip(fields, bite.diameter)
    )
    drilling.removal(tally, bite, speed)
    if fields.cutter.kind == "drill":
        drilling.strength(tally, bite.diameter, torque)
    return tally.done()


def _tip(fields: Fields, diameter: float) -> float:
    """How far the point reaches beyond the full diameter [m]; a core drill's
    is cut off square, near enough.
    """
    if fields.cutter.kind == "core drill":
        return 0.0
    return point_length(diameter=diameter, point_angle=fields.cutter.point_angle or _USUAL_POINT)


def _words(fields: Fields) -> str:
    holes = hole_words.holes_words(len(fields.at))
    verb = "Core drill" if fields.cutter.kind == "core drill" else "Enlarge"
    return f"{verb} {holes} to {hole_words.size_words(fields.cutter)}, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    verb = "Core drill" if fields.cutter.kind == "core drill" else "Enlarge"
    size = f"to {hole_words.size_words(fields.cutter)}"
    return hole_words.shorter(verb, len(fields.at), size, hole_words.where(fields.depth))


def _stop(fields: Fields, reckoned: Figures, setting: Setting) -> float:
    """Where the quill stop stands: the depth of the tip, a millimetre further for what goes through [m]."""
    tip = _tip(fields, drilling.diameter_of(fields.cutter))
    beyond = tip + (0.001 if fields.depth.through else 0.0)
    return drilling.settable(reckoned.number("hole_depth") + round(beyond, 4), setting)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many holes, to what size, how deep, and what they were."""
    return (
        drilling.row(fields, reckoned, setting, do=_words(fields), stop=_stop(fields, reckoned, setting)),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.dials(reckoned, setting, _stop(fields, reckoned, setting))


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The holes it leaves, for what follows."""
    angle = None if fields.cutter.kind == "core drill" else fields.cutter.point_angle
    return drilling.shapes(fields.at, drilling.diameter_of(fields.cutter), fields.depth.value, angle)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Round holes."""
    return holes(fields)


#: A new enlarged hole, to be changed.
EXAMPLE = {"cutter": "drill 8 mm", "at": "10 mm, 10 mm", "depth": "through", "feed": "0.1 mm"}


KIND = Kind(
    name="enlarge", title="Enlarge", icon="enlarge", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="enlarge", groups=("drilling", "drill"),
    roles=Roles(hole="drill", opens=True, speed="drill", feed="drill", process="enlarge"), holes=holes,
    reads=reading.in_a_hole,
    also=("step drill", "open out"),
)  # fmt: skip
