"""Spotfacing: a rough face round a hole made flat and square to it, just to clean or to a small depth."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

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

#: What a face takes to come clean where no depth is written: judgement, for the
#: seconds and the picture only [m].
TO_CLEAN = 0.5e-3
#: Deeper than this share of the diameter it is a counterbore (judgement).
_SHALLOW = 0.25


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    depth: Quantity | None = None
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
        "Faces round holes",
        (
            Entry(
                name="cutter", title="Counterbore", asks="cutter", choices=("counterbore", "end mill", "slot drill"),
                hint="counterbore 20 mm, 3 edges, pilot 8.4 mm",
            ),
            drilling.PLACES,
            Entry(
                name="depth", title="Depth", asks="length", low="0.05 mm", high="20 mm", optional=True,
                hint="leave empty: just to clean",
            ),
            drilling.HOLE,
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _depth(fields: Fields) -> float:
    return fields.depth.value if fields.depth is not None else TO_CLEAN


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque and thrust of the edges in the hole that is there, once the whole face is met; seconds."""
    tally = Tally(setting.units)
    bite = drilling.seat(tally, setting, fields)
    start = drilling.share_of_drill(setting, fields.cutter, "counterbore")
    if fields.depth is None:
        tally.caveat(f"Just to clean: the time is for {hole_words.length(TO_CLEAN, setting)}.")
    elif fields.depth.value > bite.diameter * _SHALLOW:
        tally.caveat("This is deep for a spotface: choose a counterbore step if a head is to sink in.")
    drilling.cut(tally, setting, fields, bite, _depth(fields), start)
    return tally.done()


def _words(fields: Fields) -> str:
    count = common.times(len(fields.at), "one face", "faces")
    deep = f"{fields.depth.text} deep" if fields.depth is not None else "just to clean"
    return f"Spotface {count} {hole_words.size_words(fields.cutter)}, {deep}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    size = hole_words.size_words(fields.cutter)
    deep = f"{fields.depth.text} deep" if fields.depth is not None else "just to clean"
    times = f"{len(fields.at)} × " if len(fields.at) > 1 else ""
    return _words(fields), f"Spotface {times}{size}, {deep}", f"Spotface {times}{size}"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many faces, how wide, how deep; no stop where it is just to clean."""
    made = drilling.row(fields, reckoned, setting, do=_words(fields), stop=_depth(fields), hole="round")
    if fields.depth is None:
        return (replace(made, depth="", depth_unit="to clean"),)
    return (made,)


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds, and the quill stop or the eye."""
    first, second, stop = drilling.dials(
        reckoned, setting, _depth(fields), "from where the edges touch the face"
    )
    if fields.depth is None:
        stop = Dial("Feed down", "to clean", "", "until the face is bright all round")
    return (first, second, stop)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Flat round faces. The hole below them is still the one that later steps find: no holes are left."""
    return drilling.shapes(fields.at, drilling.diameter_of(fields.cutter), _depth(fields))


#: A new face round a hole, to be changed.
EXAMPLE = {"cutter": "counterbore 16 mm, 3 edges", "at": "10 mm, 10 mm", "feed": "0.08 mm"}


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | reading.hole_there(fields)


KIND = Kind(
    name="spotface", title="Spotface", icon="spotface", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="spotface", groups=("drilling",),
    roles=Roles(hole="counterbore", process="counterbore"),
    reads=_reads,
    also=("seat",),
)  # fmt: skip
