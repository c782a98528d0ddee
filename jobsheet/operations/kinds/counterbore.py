"""Counterboring: a flat-bottomed seat for a screw's head, in a hole that guides the cutter.

Reckoned as a tool that enlarges; its speed is half to two thirds of a drill's.
"""

from __future__ import annotations

from msgspec import Struct

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
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    depth: Quantity
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
        "Seats",
        (
            Entry(
                name="cutter", title="Counterbore", asks="cutter", choices=("counterbore", "end mill", "slot drill"),
                hint="counterbore 11 mm, 3 edges, pilot 6.6 mm",
            ),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(name="depth", title="Depth", asks="length", low="0.05 mm", high="200 mm", hint="from the face down"),
            drilling.HOLE,
            drilling.PECK,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque and thrust of the edges in the hole that is there; push at the lever; seconds."""
    tally = Tally(setting.units)
    bite = drilling.seat(tally, setting, fields)
    start = drilling.share_of_drill(setting, fields.cutter, "counterbore")
    speed, _ = drilling.cut(tally, setting, fields, bite, fields.depth.value, start, peck=fields.peck)
    drilling.removal(tally, bite, speed)
    return tally.done()


def _words(fields: Fields) -> str:
    count = hole_words.holes_words(len(fields.at))
    return f"Counterbore {count} {hole_words.size_words(fields.cutter)}, {fields.depth.text} deep"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return hole_words.shorter(
        "Counterbore", len(fields.at), hole_words.size_words(fields.cutter), f"{fields.depth.text} deep"
    )


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many seats, of what size, how deep."""
    return (
        drilling.row(fields, reckoned, setting, do=_words(fields), stop=fields.depth.value, hole="round"),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop counted from the face."""
    return drilling.dials(reckoned, setting, fields.depth.value, "from where the edges touch the face")


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Flat-bottomed holes. The hole below them is still the one that later steps find: no holes are left."""
    return drilling.shapes(fields.at, drilling.diameter_of(fields.cutter), fields.depth.value)


#: A new seat, to be changed.
EXAMPLE = {"cutter": "counterbore 10 mm, 3 edges", "at": "10 mm, 10 mm", "depth": "5 mm", "feed": "0.08 mm"}


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | reading.hole_there(fields)


KIND = Kind(
    name="counterbore", title="Counterbore", icon="counterbore", fields=Fields, form=FORM, figures=figures,
    rows=rows, dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="counterbore", groups=("drilling",),
    roles=Roles(hole="counterbore", feed="counterbore", process="counterbore"),
    reads=_reads,
    also=("cbore", "cap screw", "seat"),
)  # fmt: skip
