"""Tapping a drilled hole: by hand with the tap guided by the spindle, or under
power where the machine reverses.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.cutting.kienzle import power_from_torque
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
from jobsheet.operations.shared.fastest import edge_speed
from jobsheet.operations.shared.tally import Tally

BY_HAND, POWER = "by hand", "under power"


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    thread: Thread
    at: Places
    within: Quantity | None = None
    depth: Depth
    method: str = BY_HAND
    hole: Quantity | None = None
    condition: str = "sharp and oiled"
    wrench: Quantity | None = None
    spindle: Quantity | None = None
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
            Entry(name="at", title="Places, x and y", asks="places", hint="such as 14, 12; 66, 12"),
            drilling.WITHIN,
            Entry(name="depth", title="Depth of thread", asks="depth", low="0.5 mm", high="300 mm"),
            Entry(
                name="hole", title="Hole it is cut in", asks="hole size", low="0.3 mm", high="80 mm", optional=True,
                hint="leave empty: the hole drilled there",
            ),
        ),
    ),
    Group(
        "Way of tapping",
        (
            Entry(name="method", title="Way", asks="choice", choices=(BY_HAND, POWER)),
            Entry(
                name="condition", title="State of the tap", asks="choice",
                choices=("sharp and oiled", "used", "dull", "dry"), optional=True,
            ),
            Entry(
                name="wrench", title="Wrench, whole length", asks="length", low="40 mm", high="1 m", optional=True,
                hint="leave empty: usual for this thread",
            ),
            common.SPINDLE,
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _hole(fields: Fields, setting: Setting) -> float:
    """The hole that the thread is cut in [m]: the one drilled there, or the one that was typed."""
    if fields.hole is not None:
        return fields.hole.value
    if setting.pilot is not None:
        return setting.pilot
    from jobsheet.catalog.tools.threads import tap_drill

    usual = tap_drill(fields.thread, setting.shop.thread_height)
    hint = f"; the usual drill is {usual}" if usual else ""
    raise CalcError(
        "hole", "not drilled", f"drilled at these places before it is tapped, or typed here{hint}"
    )


def figures(fields: Fields, setting: Setting) -> Figures:
    """The tap maker's torque from the hole that is really there, times the state of the tap."""
    tally = Tally(setting.units)
    thread = fields.thread
    torque = threads.thread_torque(
        tally, setting, thread, _hole(fields, setting), (fields.cutter.style,), fields.condition
    )
    if fields.method == BY_HAND:
        length = threads.wrench_length(thread, fields.wrench)
        if length is not None:
            threads.wrench(tally, setting, length, torque)
        return tally.done()
    choice = common.set_spindle(
        tally, setting, diameter=thread.major, torque=torque, asked=fields.spindle, asked_speed=None,
        start=common.start_speed(setting, fields.cutter, "tap"),
    )  # fmt: skip
    tally.edge(edge_speed(setting, fields.cutter, "tap"))
    speed = choice.at.speed
    tally.show("feed_per_turn", thread.pitch)
    tally.figure("power", power_from_torque, band=threads.TAP_BAND, torque=torque, spindle_speed=speed)
    depth = fields.depth.value if fields.depth.value is not None else setting.thickness
    # In and out again at the same speed, five threads of lead and a turn to clear (common practice).
    turns = 2 * (depth / thread.pitch + 6)
    each = tally.show("time_each", turns / speed)
    tally.show("cutting_time", each * len(fields.at))
    return tally.done()


def _words(fields: Fields) -> str:
    count = len(fields.at)
    where = "through" if fields.depth.through else f"{fields.depth.text} deep"
    name = fields.thread.text if count == 1 else f"{count} × {fields.thread.text}"
    return f"Tap {name} {where}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    count = len(fields.at)
    return _words(fields), f"Tap {fields.thread.text if count == 1 else f'{count} × {fields.thread.text}'}"


def rows(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Row, ...]:
    """One line: thread, depth, way, and the height of thread that the hole gives."""
    by_hand = fields.method == BY_HAND
    note = [f"{reckoned.shown('percent_thread')} thread"]
    if by_hand:
        note.insert(0, "by hand, guided by the spindle")
    if fields.cutter.style:
        note.append(fields.cutter.style)
    if fields.note:
        note.append(fields.note)
    return (
        Row(
            do=fields.what or _words(fields),
            note=", ".join(note),
            cutter=fields.cutter.place or short_name(fields.cutter),
            spindle="" if by_hand else f"{reckoned.number('spindle_speed') * 60:.0f}",
            pace="" if by_hand else f"{reckoned.number('time_each'):.0f}",
            pace_unit="by hand" if by_hand else "s in and out",
            depth="" if fields.depth.through else fields.depth.text,
            depth_unit="through" if fields.depth.through else "",
            power_off=by_hand,
            measure=fields.measure.said if fields.measure else f"{fields.thread.text} gauge",
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """By hand: power off, wrench, depth. Under power: speed, in and out, depth."""
    depth = Dial(
        "Thread depth",
        "through" if fields.depth.through else fields.depth.text,
        "",
        f"{reckoned.shown('percent_thread')} thread",
    )
    if fields.method == BY_HAND:
        length = threads.wrench_length(fields.thread, fields.wrench)
        easy, asks = reckoned.shown("wrench_easy", "–"), reckoned.shown("torque")
        return (
            Dial("Spindle", "power off", "", "at the isolator, wrench on"),
            Dial("Turn by hand", asks.split(" ")[0], "N·m", f"{easy} is comfortable, wrench {length * 1e3:.0f} mm" if length else ""),
            depth,
        )  # fmt: skip
    speed = reckoned.number("spindle_speed")
    problem = "" if setting.machine.spindle.reverses else "this machine does not reverse"
    return (
        common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, reckoned.shown("cutting_speed")),
        Dial("In and out again", f"{reckoned.number('time_each'):.0f}", "s", "reverse to come out", problem),
        depth,
    )


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The thread's bore at its major diameter; drawn as a thread."""
    return tuple(
        Hole(place.x.value, place.y.value, fields.thread.major, fields.depth.value, None, threaded=True)
        for place in fields.at
    )


#: A new thread, to be changed.
EXAMPLE = {
    "cutter": "taps M6, taper and plug",
    "thread": "M6",
    "at": "10 mm, 10 mm",
    "depth": "through",
    "method": BY_HAND,
    "condition": "sharp and oiled",
}


_BY_POWER = Roles(hole="tap", process="tap")
_BY_HAND = replace(_BY_POWER, by_hand=True)


def _roles(fields: Fields) -> Roles:
    """Turned by the spindle, or by hand in it."""
    return _BY_POWER if fields.method == POWER else _BY_HAND


def _reads(fields: Fields) -> frozenset[str]:
    return reading.CUT | {"pilot"} | reading.depth_through(fields)


KIND = Kind(
    name="tap", title="Tap", icon="tap", fields=Fields, form=FORM, figures=figures, rows=rows, dials=dials,
    sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="tap", groups=("tapping",),
    roles=_roles,
    reads=_reads,
    also=("thread", "power"),
)  # fmt: skip
