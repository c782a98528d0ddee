"""Tapping by hand with a set of taps, each started in the spindle, which is turned by hand and guides it.

The first threads are cut with the tap in the spindle, so that it stands square; then a wrench does the rest.
The figures are those of the heaviest tap of the set in the hole that is really there.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Places, Quantity, Several, Thread, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_DRILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared import thread_work as threads
from jobsheet.operations.shared.tally import Tally

#: Threads that hold a tap square by themselves (common practice).
USUAL_START = 3
_SETS = ("taper, plug, bottoming", "taper, plug", "taper", "plug", "bottoming")
_RHYTHM = ("each half turn", "each turn", "every two turns", "not at all")


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    thread: Thread
    at: Places
    within: Quantity | None = None
    depth: Depth
    hole: Quantity | None = None
    taps: str = "taper, plug"
    start: int | None = None
    back_off: str = "each turn"
    condition: str = "sharp and oiled"
    wrench: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Thread",
        (
            Entry(name="cutter", title="Taps", asks="cutter", choices=("tap",)),
            Entry(name="thread", title="Thread", asks="thread"),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(name="depth", title="Depth of thread", asks="depth", low="0.5 mm", high="300 mm"),
            drilling.HOLE,
        ),
    ),
    Group(
        "By hand",
        (
            Entry(name="taps", title="Taps, in this order", asks="choice", choices=_SETS, optional=True),
            Entry(
                name="start", title="Threads started in the spindle", asks="count", low="1", high="20", optional=True,
                hint=f"leave empty: {USUAL_START}",
            ),
            Entry(name="back_off", title="Back off to break the chip", asks="choice", choices=_RHYTHM, optional=True),
            Entry(
                name="condition", title="State of the taps", asks="choice",
                choices=("sharp and oiled", "used", "dull", "dry"), optional=True,
            ),
            Entry(
                name="wrench", title="Wrench, whole length", asks="length", low="40 mm", high="1 m", optional=True,
                hint="leave empty: usual for this thread",
            ),
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _hole(fields: Fields, setting: Setting) -> float:
    """The hole that the thread is cut in [m]; without one, the usual drill is named."""
    if fields.hole is None and setting.pilot is None:
        from jobsheet.catalog.tools.threads import tap_drill

        usual = tap_drill(fields.thread, setting.shop.thread_height)
        hint = f"; the usual drill is {usual}" if usual else ""
        raise CalcError(
            "hole", "not drilled", f"drilled at these places before it is tapped, or typed here{hint}"
        )
    return drilling.standing_hole(fields, setting, fields.thread.major)


def figures(fields: Fields, setting: Setting) -> Figures:
    """Torque of the heaviest tap of the set; what two hands give; no speed, for the power is off."""
    tally = Tally(setting.units)
    styles = tuple(fields.taps.split(", "))
    torque = threads.thread_torque(
        tally, setting, fields.thread, _hole(fields, setting), styles, fields.condition
    )
    long = threads.wrench_length(fields.thread, fields.wrench)
    if long is None:
        tally.caveat("No wrench is usual for a thread of this size: write its length.")
    else:
        threads.wrench(tally, setting, long, torque)
    if not fields.depth.through and "bottoming" not in styles:
        tally.caveat("In a blind hole the last threads stay shallow without a bottoming tap.")
    if fields.back_off == "not at all" and setting.material.chips == "long":
        tally.caveat("Long chips jam a hand tap that is never backed off: break them each turn.")
    deep = fields.depth.value if fields.depth.value is not None else setting.thickness
    if deep > 0 and _started(fields) * fields.thread.pitch > deep * (1 + 1e-9):
        tally.caveat("The spindle would start more threads than the depth has: write fewer.")
    return tally.done()


def _started(fields: Fields) -> int:
    return fields.start if fields.start is not None else USUAL_START


def _words(fields: Fields) -> str:
    count = len(fields.at)
    where = "through" if fields.depth.through else f"{fields.depth.text} deep"
    return f"Tap {fields.thread.text if count == 1 else f'{count} × {fields.thread.text}'} by hand, {where}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    name = fields.thread.text if len(fields.at) == 1 else f"{len(fields.at)} × {fields.thread.text}"
    where = "through" if fields.depth.through else f"{fields.depth.text} deep"
    return _words(fields), f"Tap {name}, {where}", f"Tap {name}"


def _way(fields: Fields) -> str:
    started = common.times(_started(fields), "one thread", "threads")
    rhythm = f"back off {fields.back_off}" if fields.back_off != "not at all" else "no backing off"
    return f"{started} with the spindle turned by hand, then the wrench; {rhythm}"


def rows(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Row, ...]:
    """One line: thread, depth, the taps in their order, how they are started, the height of thread."""
    note = (fields.taps, _way(fields), f"{reckoned.shown('percent_thread')} thread", fields.note)
    return (
        Row(
            do=fields.what or _words(fields),
            note="; ".join(part for part in note if part),
            cutter=fields.cutter.place or short_name(fields.cutter),
            pace_unit="by hand",
            depth="" if fields.depth.through else fields.depth.text,
            depth_unit="through" if fields.depth.through else "",
            power_off=True,
            measure=fields.measure.said if fields.measure else f"{fields.thread.text} gauge",
        ),
    )


def dials(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Dial, ...]:
    """Power off, the wrench, the depth."""
    long = threads.wrench_length(fields.thread, fields.wrench)
    easy, asks = reckoned.get("wrench_easy"), reckoned.get("torque")
    comfortable = f"{easy.shown} is comfortable, wrench {long * 1e3:.0f} mm" if easy and long else ""
    return (
        Dial("Spindle", "power off", "", "at the isolator; turn it by hand to start the tap"),
        Dial("Turn by hand", asks.shown.split(" ")[0] if asks else "–", "N·m", comfortable),
        Dial(
            "Thread depth",
            "through" if fields.depth.through else fields.depth.text,
            "",
            f"{reckoned.shown('percent_thread')} thread, back off {fields.back_off}",
        ),
    )


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The thread's bore at its major diameter; drawn as a thread."""
    return tuple(
        Hole(place.x.value, place.y.value, fields.thread.major, fields.depth.value, None, threaded=True)
        for place in fields.at
    )


#: A new thread, to be changed.
EXAMPLE = {
    "cutter": "taps M6", "thread": "M6", "at": "10 mm, 10 mm", "depth": "through", "taps": "taper, plug",
    "back_off": "each turn", "condition": "sharp and oiled",
}  # fmt: skip


def _reads(fields: Fields) -> frozenset[str]:
    own = frozenset({"material", "shop", "units"})
    return own | reading.hole_there(fields) | reading.depth_through(fields)


KIND = Kind(
    name="hand-tap", title="Tap by hand", icon="hand-tap", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="hand-tap", groups=("tapping", "tap"),
    roles=Roles(hole="tap", by_hand=True),
    reads=_reads,
    also=("thread",),
)  # fmt: skip
