"""Boring with a single point in a boring head: a hole made true and to its size, in cuts on the diameter.

One edge is always in the cut. Its chip is as thick as the feed per turn; its width is half of the cut on the
diameter; specific force times both, at half the diameter, is the torque.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.cutting.chip import SQUARE, chip_thickness
from jobsheet.cutting.deflection import HSS_MODULUS, cutter_stiffness, deflection
from jobsheet.cutting.drill_lines import kienzle_drill_torque
from jobsheet.cutting.feed import axial_feed
from jobsheet.cutting.kienzle import power_from_torque, specific_cutting_force
from jobsheet.cutting.removal import drilling_removal_rate
from jobsheet.cutting.strength import bending_stress
from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Places, Quantity, Several, Size, Tolerances
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
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.fastest import edge_speed
from jobsheet.operations.shared.tally import KIENZLE_BAND, Tally

FINE, LEVER = "fine feed", "lever"
#: The way before the edge touches, as for a drill (common practice) [m].
_APPROACH = 1e-3
#: A steel bar further out than this many diameters chatters (common practice).
_LONGEST_BAR = 4.0
#: A tool may give way by this much in roughing (cutting-data section 1.7, common practice) [m].
_MOST_SPRING = 0.05e-3


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    to: Size
    depth: Depth
    hole: Quantity | None = None
    cut: Quantity | None = None
    leave: Quantity | None = None
    by: str = FINE
    feed: Quantity | None = None
    angle: Quantity | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Bores",
        (
            Entry(
                name="cutter", title="Boring bar", asks="cutter", choices=("boring head",),
                hint="its bar and how far it is out: boring bar 12 mm, 50 mm out",
            ),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(name="to", title="Finished diameter", asks="size", hint="with its limits, such as 30 H7"),
            drilling.DEPTH,
            drilling.HOLE,
            Entry(
                name="cut", title="Cut on the diameter", asks="length", low="0.01 mm", high="20 mm", optional=True,
                hint="leave empty to take it at once",
            ),
            Entry(
                name="leave", title="Last cut on the diameter", asks="length", low="0.01 mm", high="5 mm",
                optional=True, hint="taken by itself at the end",
            ),
        ),
    ),
    Group(
        "Speed and feed",
        (
            Entry(name="by", title="Fed down by", asks="choice", choices=(FINE, LEVER), optional=True),
            drilling.FEED,
            Entry(
                name="angle", title="Entering angle", asks="angle", low="15°", high="90°", optional=True,
                hint="of the edge to the wall; leave empty: 90°",
            ),
            common.SPINDLE,
            common.CUTTING_SPEED,
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


class _Cuts(Struct, frozen=True):
    """How the metal between hole and bore is taken: rough cuts, each on the
    diameter, and where they end [m].
    """

    hole: float
    rough: int
    each: float
    ends: float


def _cuts(fields: Fields, setting: Setting) -> _Cuts:
    hole = drilling.standing_hole(fields, setting, fields.to.nominal)
    last = fields.leave.value if fields.leave is not None else 0.0
    whole = fields.to.nominal - hole
    if last >= whole * (1 - 1e-9):
        raise CalcError(
            "last cut on the diameter",
            f"“{fields.leave.text if fields.leave else ''}”",
            f"less than all there is to take, {hole_words.length(round(whole, 6), setting)}",
        )
    total = whole - last
    count = max(1, math.ceil(total / fields.cut.value - 1e-9)) if fields.cut is not None else 1
    return _Cuts(hole, count, total / count, hole + total)


def figures(fields: Fields, setting: Setting) -> Figures:
    """The widest of the rough cuts at its largest diameter: force, torque, power; the bar; seconds."""
    tally = Tally(setting.units)
    cuts = _cuts(fields, setting)
    tally.show("pilot", cuts.hole)
    feed, inner = drilling.feed_of(fields), cuts.ends - cuts.each
    chip = tally.figure(
        "chip_thickness", chip_thickness, feed_per_tooth=feed, angle=SQUARE,
        entering_angle=fields.angle.value if fields.angle else SQUARE,
    )  # fmt: skip
    kc = tally.figure(
        "specific_force", specific_cutting_force, kc11=setting.material.kc11.value, mc=setting.material.mc.value,
        h=chip, wear=common.wear(setting, fields.cutter, "mill"),
    )  # fmt: skip
    torque = tally.figure(
        "torque", kienzle_drill_torque, band=KIENZLE_BAND, kc=kc, feed=feed, diameter=cuts.ends, pilot=inner
    )
    choice = common.set_spindle(
        tally, setting, diameter=fields.to.nominal, torque=torque, asked=fields.spindle,
        asked_speed=fields.cutting_speed, start=common.start_speed(setting, fields.cutter, "mill"),
    )  # fmt: skip
    tally.edge(edge_speed(setting, fields.cutter, "mill"))
    speed = choice.at.speed
    tally.show("feed_per_turn", feed)
    tally.figure("power", power_from_torque, band=KIENZLE_BAND, torque=torque, spindle_speed=speed)
    tally.figure(
        "removal_rate", drilling_removal_rate, diameter=cuts.ends, feed=feed, spindle_speed=speed, pilot=inner
    )
    down = tally.figure("down_feed", axial_feed, feed=feed, spindle_speed=speed)
    _pace(tally, fields, setting, down)
    _bar(tally, fields, kc * feed * cuts.each / 2)
    depth = tally.show("hole_depth", drilling.depth_of(fields.depth, setting))
    passes = cuts.rough + (1 if fields.leave is not None else 0)
    each = tally.figure("time_each", cutting_time, length=depth + _APPROACH, feed=down)
    tally.show("cut_on_diameter", cuts.each)
    tally.show("passes", float(passes))
    tally.show("cutting_time", each * passes * len(fields.at))
    return tally.done()


def _pace(tally: Tally, fields: Fields, setting: Setting, down: float) -> None:
    """The pace of the handle that feeds down; without one the lever must do."""
    if fields.by != FINE:
        return
    handle = common.depth_handle(setting.machine)
    if handle is None:
        tally.caveat("This machine has no fine feed downward on its card: feed by the lever.")
        return
    common.set_pace(tally, handle, down)


def _bar(tally: Tally, fields: Fields, force: float) -> None:
    """How the bar gives way under the force on the edge [N]; nothing where
    its size or reach is not written.
    """
    bar, out = fields.cutter.diameter, fields.cutter.stick_out
    if bar is not None and bar >= fields.to.nominal:
        raise CalcError(
            "boring bar", f"“{fields.cutter.text}”", "thinner than the bore; write the size of the bar"
        )
    if bar is None or out is None:
        return
    stiffness = tally.figure(
        "cutter_stiffness", cutter_stiffness, modulus=HSS_MODULUS, diameter=bar, length=out
    )
    tally.figure("bending_stress", bending_stress, force=force, length=out, diameter=bar)
    if tally.figure("bar_spring", deflection, force=force, stiffness=stiffness) > _MOST_SPRING:
        tally.caveat("The bar gives way by more than 0.05 mm: take less on the diameter, or a stouter bar.")
    if out > bar * _LONGEST_BAR * (1 + 1e-9):
        tally.caveat("The bar stands out more than four times its diameter: it is likely to chatter.")


def _size(fields: Fields) -> str:
    return fields.to.text.strip().removesuffix("mm").strip()


def _words(fields: Fields) -> str:
    return f"Bore {hole_words.holes_words(len(fields.at))} {_size(fields)}, {hole_words.where(fields.depth)}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return hole_words.shorter("Bore", len(fields.at), _size(fields), hole_words.where(fields.depth))


def _cut_words(fields: Fields, reckoned: Figures) -> str:
    passes = reckoned.count("passes")
    rough = passes - (1 if fields.leave is not None else 0)
    words = f"{common.times(rough, 'one cut', 'cuts')} of {reckoned.shown('cut_on_diameter')} on the diameter"
    return f"{words}, last {fields.leave.text}" if fields.leave is not None else words


def _stop(fields: Fields, reckoned: Figures, setting: Setting) -> float:
    beyond = _APPROACH if fields.depth.through else 0.0
    return drilling.settable(reckoned.number("hole_depth") + beyond, setting)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: size, depth, the cuts on the diameter, and what to measure."""
    pace, handle = reckoned.value("seconds_a_turn"), common.depth_handle(setting.machine)
    note = (f"opens the {reckoned.shown('pilot')} hole", _cut_words(fields, reckoned), fields.note)
    depth, unit = common.millimetres(_stop(fields, reckoned, setting), setting.units)
    return (
        Row(
            do=fields.what or _words(fields),
            note=", ".join(part for part in note if part),
            cutter=fields.cutter.place or short_name(fields.cutter),
            spindle=f"{reckoned.number('spindle_speed') * 60:.0f}",
            pace=common.one_decimal(pace) if pace else f"{reckoned.number('time_each'):.0f}",
            pace_unit=f"s a turn, {handle.name}" if pace and handle else "s to depth",
            depth=depth,
            depth_unit=unit,
            measure=fields.measure.said if fields.measure else fields.to.text,
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, the feed down, and what the head is moved out by."""
    speed, pace = reckoned.number("spindle_speed"), reckoned.value("seconds_a_turn")
    handle = common.depth_handle(setting.machine)
    seconds = f"{reckoned.number('time_each'):.0f}"
    stop = hole_words.length(_stop(fields, reckoned, setting), setting)
    number, unit = common.millimetres(round(reckoned.number("cut_on_diameter"), 6), setting.units)
    feed = (
        Dial(
            f"Wind the {handle.name} handle", common.one_decimal(pace), "s a turn", f"{seconds} s to {stop}",
            milling.pace_problem(reckoned, setting),
        )
        if pace and handle
        else Dial("Feed by the quill lever", seconds, "s to the depth", f"stop at {stop}")
    )  # fmt: skip
    return (
        common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, reckoned.shown("cutting_speed")),
        feed,
        Dial("Set the boring head out", number, f"{unit} on the diameter", _cut_words(fields, reckoned)),
    )


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The holes it leaves, for what follows."""
    return drilling.shapes(fields.at, fields.to.nominal, fields.depth.value)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Round holes."""
    return holes(fields)


#: A new bore, to be changed.
EXAMPLE = {
    "cutter": "boring bar 8 mm, 30 mm out", "at": "10 mm, 10 mm", "to": "20 mm", "depth": "through",
    "cut": "0.5 mm", "feed": "0.05 mm",
}  # fmt: skip


KIND = Kind(
    name="bore", title="Bore", icon="bore", fields=Fields, form=FORM, figures=figures, rows=rows, dials=dials,
    sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="bore", groups=("drilling",),
    roles=Roles(hole="bore", process="bore"), holes=holes,
    reads=reading.in_a_hole,
    also=("hole to size",),
)  # fmt: skip
