"""What all hole kinds share: torque and thrust of a bite, the hand at the quill lever, seconds, rows and dials."""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct

from jobsheet.catalog.cutters import short_name
from jobsheet.cutting.drilling import (
    SPLIT_POINT,
    STANDARD_POINT,
    drill_thrust,
    drill_torque,
    pilot_thrust,
    pilot_torque,
)
from jobsheet.cutting.kienzle import power_from_torque
from jobsheet.cutting.quill import (
    feed_from_thrust,
    pilot_feed_from_thrust,
    push_from_thrust,
    thrust_from_push,
)
from jobsheet.cutting.removal import drilling_removal_rate
from jobsheet.cutting.times import drilling_time
from jobsheet.errors import CalcError
from jobsheet.model.figures import Figures
from jobsheet.model.quantity import Cutter, Depth, Quantity
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations import common
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial
from jobsheet.operations.tally import DRILL_BAND, Tally

PLACES = Entry(
    name="at",
    title="Places, x and y",
    asks="places",
    hint="such as 14, 12; 66, 12, or circle of 6 on 40 around 50, 30",
)
FEED = Entry(name="feed", title="Feed a turn", asks="feed per turn", low="0.002 mm", high="2 mm")
DEPTH = Entry(name="depth", title="Depth", asks="depth", low="0.05 mm", high="800 mm")
PECK = Entry(
    name="peck",
    title="Peck",
    asks="length",
    low="0.1 mm",
    high="500 mm",
    optional=True,
    hint="leave empty to drill in one go",
)


class Bite(Struct, frozen=True, kw_only=True):
    """What one turn of the tool takes: diameter, hole already there, feed a turn [m], cutting edges, chisel."""

    diameter: float
    feed: float
    pilot: float | None = None
    edges: float = 2.0
    chisel: float = STANDARD_POINT


def bite_of(cutter: Cutter, diameter: float, feed: float, hole: float | None) -> Bite:
    """The bite of a drill in what is there: a hole smaller than the chisel edge does not relieve it."""
    chisel = SPLIT_POINT if cutter.split_point else STANDARD_POINT
    pilot = hole if hole is not None and chisel * diameter <= hole < diameter * (1 - 1e-9) else None
    return Bite(diameter=diameter, feed=feed, pilot=pilot, edges=float(cutter.teeth or 2), chisel=chisel)


def forces(tally: Tally, setting: Setting, bite: Bite) -> tuple[float, float]:
    """Torque [N·m] and thrust [N]: the handbook's closed forms with the web, or those of enlarging."""
    material, wear = setting.material, setting.shop.wear_drilling
    if bite.pilot is None:
        asked = {
            "feed": bite.feed,
            "diameter": bite.diameter,
            "chisel_ratio": bite.chisel,
            "wear": wear,
        }
        torque = tally.figure("torque", drill_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
        thrust = tally.figure("thrust", drill_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
        return torque, thrust
    tally.show("pilot", bite.pilot)
    asked = {
        "feed": bite.feed,
        "diameter": bite.diameter,
        "pilot": bite.pilot,
        "edges": bite.edges,
        "wear": wear,
    }
    torque = tally.figure("torque", pilot_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
    thrust = tally.figure("thrust", pilot_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
    return torque, thrust


def turn(
    tally: Tally, setting: Setting, fields: Any, bite: Bite, torque: float, start: float | None
) -> float:
    """Choose the spindle speed from the start speed [m/s]; power and removal follow. Returns it [rev/s]."""
    choice = common.set_spindle(
        tally,
        setting,
        diameter=bite.diameter,
        torque=torque,
        asked=fields.spindle,
        asked_speed=fields.cutting_speed,
        start=start,
    )
    speed = choice.at.speed
    tally.show("feed_per_turn", bite.feed)
    tally.figure("power", power_from_torque, band=DRILL_BAND, torque=torque, spindle_speed=speed)
    return speed


def removal(tally: Tally, bite: Bite, speed: float) -> None:
    """The metal that a bite takes in a minute."""
    tally.figure(
        "removal_rate",
        drilling_removal_rate,
        diameter=bite.diameter,
        feed=bite.feed,
        spindle_speed=speed,
        pilot=bite.pilot or 0.0,
    )


def depth_of(depth: Depth, setting: Setting) -> float:
    """How deep it goes [m]; through takes the height of the work."""
    if depth.value is not None:
        return depth.value
    if setting.thickness <= 0:
        raise CalcError("depth", "through", "a depth in mm: the height of the work is not known here")
    return setting.thickness


def times(
    tally: Tally,
    bite: Bite,
    speed: float,
    depth: float,
    holes: int,
    *,
    peck: Quantity | None = None,
    tip: float = 0.0,
) -> None:
    """Seconds for one hole and minutes for all, in pecks where they are asked for.

    The allowance of 0.3 D for the point is kept for every tool (a spot drill's depth is to its tip
    already): a hand begins gently.
    """
    tally.show("hole_depth", depth)
    strokes = max(1, math.ceil((depth + tip) / peck.value - 1e-9)) if peck is not None else 1
    tally.show("strokes", float(strokes))
    each = tally.figure(
        "time_each",
        drilling_time,
        depth=depth,
        diameter=bite.diameter,
        feed=bite.feed,
        spindle_speed=speed,
        strokes=float(strokes),
    )
    tally.show("cutting_time", each * holes)


def push(tally: Tally, setting: Setting, thrust: float, bite: Bite) -> None:
    """What the hand must push, and the feed that an easy push would give where that is less."""
    lever, shop = setting.machine.lever, setting.shop
    if lever is None:
        return
    geometry = {
        "lever": lever.length,
        "travel": lever.travel,
        "spring": lever.spring,
        "efficiency": shop.lever_efficiency,
    }
    pushed = tally.figure("lever_push", push_from_thrust, band=DRILL_BAND, thrust=thrust, **geometry)
    if pushed <= shop.easy_push:
        return
    easy = tally.use("feed_at_easy_push", thrust_from_push, push=shop.easy_push, **geometry)
    asked = {"thrust": easy, "kd": setting.material.kd_thrust.value, "diameter": bite.diameter}
    wear = shop.wear_drilling
    if bite.pilot is not None:
        feed = pilot_feed_from_thrust(**asked, pilot=bite.pilot, edges=bite.edges, wear=wear)
    else:
        feed = feed_from_thrust(**asked, chisel_ratio=bite.chisel, wear=wear)
    tally.show("feed_at_easy_push", feed)


def row(
    fields: Any, found: Figures, setting: Setting, *, do: str, stop: float, notes: tuple[str, ...] = ()
) -> Row:
    """The line of a hole step; `stop` is where the quill stop stands [m]."""
    strokes = int(found.value("strokes") or 1)
    words = [f"{found.shown('time_each')} each"] if len(fields.at) > 1 else []
    if strokes > 1:
        words.append(f"in {strokes} pecks")
    if found.get("pilot"):
        words.append(f"opens the {found.shown('pilot')} hole")
    words += [note for note in (*notes, fields.note) if note]
    depth, unit = common.millimetres(stop, setting.units)
    return Row(
        do=fields.what or do,
        note=", ".join(words),
        cutter=fields.cutter.place or short_name(fields.cutter),
        spindle=f"{(found.value('spindle_speed') or 0) * 60:.0f}",
        pace=f"{found.value('time_each') or 0:.0f}",
        pace_unit="s to depth",
        depth=depth,
        depth_unit=unit,
        measure=fields.measure.text if fields.measure else "",
    )


def dials(found: Figures, setting: Setting, stop: float) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop: the three things to set for a hole."""
    speed = found.value("spindle_speed") or 0.0
    strokes = int(found.value("strokes") or 1)
    pushed = found.value("lever_push")
    words = f"push {found.shown('lever_push')}" if pushed else ""
    problem = "more than a strong push" if pushed and pushed > setting.shop.strong_push else ""
    number, unit = common.millimetres(stop, setting.units)
    return (
        common.spindle_dial(setting, found.shown("spindle_speed"), speed, found.shown("cutting_speed")),
        Dial(
            "Feed by the quill lever",
            f"{found.value('time_each') or 0:.0f}",
            "s to the depth",
            words,
            problem,
        ),
        Dial(
            "Set the quill stop",
            number,
            unit,
            "to the tip" if strokes == 1 else f"to the tip, {strokes} pecks",
        ),
    )


def holes_words(count: int) -> str:
    """`one hole`, `4 holes`."""
    return common.times(count, "one hole", "holes")


def where(depth: Depth) -> str:
    """`through`, or how deep."""
    return "through" if depth.through else f"{depth.text} deep"
