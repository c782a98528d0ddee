"""Reaming: the last few tenths on the diameter of a drilled hole, to its size and finish.

Reckoned as a tool that enlarges, with the factor for its edges. Slow (half to two thirds of a drill's speed)
and with a feed by its edges: a reamer that is fed too little rubs.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import reamer_feed
from jobsheet.catalog.tools.reaming import reaming_stock
from jobsheet.cutting.feed import axial_feed, feed_per_turn
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
from jobsheet.operations.shared.bite import Bite
from jobsheet.operations.shared.tally import Tally

#: How far the lead of a machine reamer goes out beyond a through hole (common practice) [m].
_LEAD = 2e-3


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    depth: Depth
    hole: Quantity | None = None
    feed: Quantity | None = None
    feed_per_edge: Quantity | None = None
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
                name="cutter", title="Reamer", asks="cutter", choices=("reamer",),
                hint="with its fit and edges: reamer 16 H7, 6 edges",
            ),
            drilling.PLACES,
            drilling.WITHIN,
            drilling.DEPTH,
            drilling.HOLE,
        ),
    ),
    Group(
        "Speed and feed",
        (
            replace(drilling.FEED, optional=True, high="5 mm", hint="leave empty: by its edges"),
            Entry(
                name="feed_per_edge", title="Feed an edge", asks="feed per tooth", low="0.005 mm", high="0.5 mm",
                optional=True, hint="instead of the feed per turn",
            ),
            common.SPINDLE,
            common.CUTTING_SPEED,
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _feed(tally: Tally, fields: Fields, edges: int) -> float:
    """Feed per turn [m]: as typed, by the edge, or where a reamer of so many edges starts."""
    if fields.feed is not None and fields.feed_per_edge is not None:
        raise CalcError(
            "feed an edge", f"“{fields.feed_per_edge.text}”", "left empty where the feed per turn is written"
        )
    if fields.feed is not None:
        return fields.feed.value
    if fields.feed_per_edge is None:
        tally.caveat("No feed is written: the start for a reamer of so many edges is taken.")
        return reamer_feed(edges).value
    tooth = tally.show("feed_per_tooth", fields.feed_per_edge.value)
    return tally.use("feed_per_turn", feed_per_turn, feed_per_tooth=tooth, teeth=float(edges))


def _stock(tally: Tally, setting: Setting, diameter: float, hole: float) -> None:
    """What is left for the reamer, and a word where that is not what a reamer wants."""
    stock, usual = tally.show("ream_stock", diameter - hole), reaming_stock(diameter)
    if usual.low * (1 - 1e-6) <= stock <= usual.high * (1 + 1e-6):
        return
    why = "it rubs with less" if stock < usual.low else "drill or bore nearer to size first"
    low, high = (hole_words.length(round(one, 5), setting) for one in (usual.low, usual.high))
    tally.caveat(
        f"{hole_words.length(round(stock, 6), setting)} is left on the diameter; a reamer of this size takes {low} to {high}: {why}."
    )


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque and thrust by the edges and the stock; the way down by hand; seconds."""
    tally = Tally(setting.units)
    diameter = drilling.diameter_of(fields.cutter)
    hole = drilling.standing_hole(fields, setting, diameter)
    _stock(tally, setting, diameter, hole)
    edges = drilling.edges_of(tally, fields.cutter)
    bite = Bite(
        diameter=diameter,
        feed=_feed(tally, fields, edges),
        pilot=hole,
        edges=float(edges),
        cutter=fields.cutter,
    )
    depth = drilling.depth_of(fields.depth, setting)
    start = common.start_speed(setting, fields.cutter, "ream", depth / diameter)
    speed, _ = drilling.cut(tally, setting, fields, bite, depth, start, work="ream")
    tally.figure("down_feed", axial_feed, feed=bite.feed, spindle_speed=speed)
    drilling.removal(tally, bite, speed)
    return tally.done()


def _words(fields: Fields) -> str:
    holes = hole_words.holes_words(len(fields.at))
    return f"Ream {holes} {hole_words.size_words(fields.cutter)}, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return hole_words.shorter(
        "Ream", len(fields.at), hole_words.size_words(fields.cutter), hole_words.where(fields.depth)
    )


def _stop(fields: Fields, reckoned: Figures, setting: Setting) -> float:
    """Where the quill stop stands: the depth, and the lead beyond what goes through [m]."""
    beyond = _LEAD if fields.depth.through else 0.0
    return drilling.settable(reckoned.number("hole_depth") + beyond, setting)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many holes, to what size, how deep, and what is left for the reamer."""
    notes = (f"{reckoned.shown('ream_stock')} on the diameter", f"{reckoned.shown('down_feed')} down")
    made = drilling.row(
        fields,
        reckoned,
        setting,
        do=_words(fields),
        stop=_stop(fields, reckoned, setting),
        notes=notes,
        hole="in",
    )
    if (
        not made.measure
        and hole_words.size_words(fields.cutter)[-1:].isdigit()
        and " H" in fields.cutter.size
    ):
        made = replace(made, measure=f"{hole_words.size_words(fields.cutter)} gauge")
    return (made,)


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.dials(reckoned, setting, _stop(fields, reckoned, setting), "to the end of its lead")


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The holes it leaves, for what follows."""
    return drilling.shapes(fields.at, drilling.diameter_of(fields.cutter), fields.depth.value)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Round holes."""
    return holes(fields)


#: A new reamed hole, to be changed.
EXAMPLE = {"cutter": "reamer 8 H7, 6 edges", "at": "10 mm, 10 mm", "depth": "through", "feed": "0.3 mm"}


KIND = Kind(
    name="ream", title="Ream", icon="ream", fields=Fields, form=FORM, figures=figures, rows=rows, dials=dials,
    sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="ream", groups=("drilling",),
    roles=Roles(hole="ream", speed="ream", feed="ream", process="ream"), holes=holes,
    reads=reading.in_a_hole,
    also=("hole to size", "fit"),
)  # fmt: skip
