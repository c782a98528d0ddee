"""Plunging: an end mill that cuts to its centre, used like a drill; its hole has a flat bottom.

Reckoned as a drill of the same size from solid (the handbook's closed form): a cutter without a point
pushes no easier. Feed is a quarter of a drill's (cutting-data section 3.4).
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_PLUNGED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common, hole_words
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared.bite import bite_of
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
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
        "Places",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("slot drill", "end mill"),
                hint="it must cut to its centre",
            ),
            drilling.PLACES,
            drilling.DEPTH,
            drilling.PECK,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_PLUNGED, common.WHAT, common.NOTE)),
)

#: An end mill plunges at three quarters of its speed (cutting-data section 3.4).
SPEED_SHARE = 0.75


def _diameter(fields: Fields) -> float:
    if fields.cutter.diameter is None:
        raise CalcError("cutter", f"“{fields.cutter.text}”", "written with its diameter")
    return fields.cutter.diameter


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque, thrust and seconds of a drill of that size."""
    tally = Tally(setting.units)
    bite = bite_of(fields.cutter, _diameter(fields), drilling.feed_of(fields), setting.pilot)
    torque, thrust = drilling.forces(tally, setting, bite)
    start = common.start_speed(setting, fields.cutter, "mill")
    speed = drilling.turn(
        tally, setting, fields, bite, torque, start * SPEED_SHARE if start else None, work="mill"
    )
    depth = drilling.depth_of(fields.depth, setting)
    drilling.times(tally, bite, speed, depth, len(fields.at), peck=fields.peck)
    drilling.push(tally, setting, thrust, bite)
    drilling.removal(tally, bite, speed)
    return tally.done()


def _words(fields: Fields) -> str:
    size = fields.cutter.size.removesuffix("mm").strip()
    return f"Plunge {hole_words.holes_words(len(fields.at))} {size}, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return hole_words.shorter(
        "Plunge", len(fields.at), hole_words.size_words(fields.cutter), hole_words.where(fields.depth)
    )


def _stop(fields: Fields, reckoned: Figures) -> float:
    """Where the quill stop stands [m]; a millimetre further for what goes through."""
    return round(reckoned.number("hole_depth") + (0.001 if fields.depth.through else 0.0), 4)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many, of what size, how deep."""
    return (drilling.row(fields, reckoned, setting, do=_words(fields), stop=_stop(fields, reckoned)),)


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.dials(reckoned, setting, _stop(fields, reckoned))


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The flat-bottomed holes it leaves."""
    diameter = _diameter(fields)
    return tuple(Hole(place.x.value, place.y.value, diameter, fields.depth.value) for place in fields.at)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Flat-bottomed holes."""
    return holes(fields)


#: A new plunge, to be changed.
EXAMPLE = {"cutter": "slot drill 10 mm", "at": "10 mm, 10 mm", "depth": "4 mm", "feed": "0.03 mm"}


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | {"pilot"} | reading.depth_through(fields)


KIND = Kind(
    name="plunge",
    title="Plunge",
    icon="plunge",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="plunge",
    groups=("milling", "drilling"),
    roles=Roles(hole="plunge", speed="mill", speed_share=SPEED_SHARE, feed="plunge", process="plunge"),
    holes=holes,
    reads=_reads,
    also=("start hole",),
)
