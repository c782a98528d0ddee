"""What all hole kinds share: torque and thrust of a bite, the hand at the quill
lever, seconds, rows and dials.
"""

from __future__ import annotations

import math
from typing import Any

from jobsheet.catalog.cuts.feeds import share
from jobsheet.catalog.tools.cutters import short_name
from jobsheet.cutting.chisel_relief import relieved_thrust, relieved_torque
from jobsheet.cutting.drill_forces import drill_thrust, drill_torque, pilot_thrust, pilot_torque
from jobsheet.cutting.drill_lines import twist_drill_thrust, twist_drill_torque
from jobsheet.cutting.drill_point import STANDARD_POINT
from jobsheet.cutting.kienzle import power_from_torque
from jobsheet.cutting.quill import (
    push_from_thrust,
    thrust_from_push,
)
from jobsheet.cutting.removal import drilling_removal_rate
from jobsheet.cutting.strength import drill_strength
from jobsheet.cutting.times import drilling_time
from jobsheet.errors import CalcError, QuantityError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Places, Quantity
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial
from jobsheet.operations.shared import common
from jobsheet.operations.shared.bite import Bite, feed_at_thrust, wear_of
from jobsheet.operations.shared.fastest import edge_speed
from jobsheet.operations.shared.hole_words import length
from jobsheet.operations.shared.tally import DRILL_BAND, Tally
from jobsheet.units.grammar import read

PLACES = Entry(
    name="at",
    title="Places, x and y",
    asks="places",
    hint="such as 14, 12; 66, 12, or circle of 6 on 40 around 50, 30",
)
WITHIN = Entry(
    name="within",
    title="Places within, ±",
    asks="length",
    low="0.001 mm",
    high="10 mm",
    optional=True,
    hint="how far a place may be off, from the drawing",
)
FEED = Entry(
    name="feed", title="Feed per turn", asks="feed per turn", low="0.002 mm", high="2 mm", optional=True,
    hint="leave empty: as recommended",
)  # fmt: skip
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
HOLE = Entry(
    name="hole",
    title="Existing hole",
    asks="hole size",
    low="0.2 mm",
    high="300 mm",
    optional=True,
    hint="leave empty: the hole drilled at these places",
)
#: Cutting edges where none are written (common practice): core drill, counterbore and countersink; reamer.
#: Second method over first: what lies between is the usual spread (cutting-data section 1.5).
METHODS = (0.55, 1.6)
USUAL_EDGES = {"core drill": 3, "counterbore": 3, "countersink": 3, "reamer": 6}
#: A guide this much smaller than its hole lets the counterbore run out of line (common practice) [m].
_LOOSE_GUIDE = 0.3e-3


def diameter_of(cutter: Cutter) -> float:
    """The diameter of a tool [m]; it cannot be reckoned without."""
    if cutter.diameter is None:
        raise CalcError(cutter.kind, f"“{cutter.text}”", "written with its size")
    return cutter.diameter


def feed_of(fields: Any) -> float:
    """The feed per turn [m]; what is left empty was filled in before, where anything is known of it."""
    if fields.feed is None:
        raise CalcError("feed per turn", "empty", "typed: none is recommended for this")
    return float(fields.feed.value)


def standing_hole(fields: Any, setting: Setting, diameter: float) -> float:
    """The hole that a tool of this diameter opens [m]: the one that was typed, or the one drilled there."""
    hole = fields.hole.value if fields.hole is not None else setting.pilot
    if hole is None:
        raise CalcError("hole", "not drilled", "drilled at these places before this step, or typed here")
    if hole >= diameter * (1 - 1e-9):
        raise CalcError(
            "hole", length(hole, setting), f"smaller than what is cut, {length(diameter, setting)}"
        )
    return float(hole)


def edges_of(tally: Tally, cutter: Cutter) -> int:
    """The cutting edges: as written, or the usual number of its kind, which is then said."""
    if cutter.teeth is not None:
        return cutter.teeth
    usual = USUAL_EDGES.get(cutter.kind, 2)
    tally.caveat(f"The cutting edges are not written: {usual} are taken.")
    return usual


def guide_fits(tally: Tally, cutter: Cutter, hole: float, setting: Setting) -> None:
    """Whether the guide that is written of a counterbore, such as `pilot 6.6 mm`, goes into the hole."""
    for words in cutter.extra:
        try:
            guide = read(words.removeprefix("pilot"), "length", setting.units)
        except QuantityError:
            continue
        if guide > hole * (1 + 1e-9):
            raise CalcError(
                "pilot of the cutter", length(guide, setting), f"at most the hole, {length(hole, setting)}"
            )
        if hole - guide > _LOOSE_GUIDE:
            tally.caveat(
                f"The guide is loose: {length(guide, setting)} in a hole of {length(hole, setting)}; it may run out of line."
            )


def seat(tally: Tally, setting: Setting, fields: Any) -> Bite:
    """The bite of a counterbore or of an end mill in the hole that guides it."""
    diameter = diameter_of(fields.cutter)
    hole = standing_hole(fields, setting, diameter)
    guide_fits(tally, fields.cutter, hole, setting)
    edges = edges_of(tally, fields.cutter)
    return Bite(diameter=diameter, feed=feed_of(fields), pilot=hole, edges=float(edges), cutter=fields.cutter)


def share_of_drill(setting: Setting, cutter: Cutter, tool: str) -> float | None:
    """The start speed of a `counterbore` or `countersink` [m/s]: its share of a drill's in this metal."""
    drill = common.start_speed(setting, cutter, "drill")
    return None if drill is None else drill * share(tool, "speed").value


def settable(depth: float, setting: Setting) -> float:
    """A depth as a quill stop can be set [m]: to 0.01 mm, or to a thou."""
    step = 1e-5 if setting.units == "mm" else 25.4e-6
    return round(depth / step) * step


def _second(tally: Tally, setting: Setting, bite: Bite, torque: float, thrust: float) -> None:
    """A maker's lines for twist drills as a second opinion, both sharp; a word where the two differ much."""
    row = setting.material.k_second
    if row is None or bite.chisel != STANDARD_POINT:
        return
    k, feed, diameter = row.value, bite.feed, bite.diameter
    second = tally.figure("second_torque", twist_drill_torque, k=k, feed=feed, diameter=diameter)
    pushed = tally.figure("second_thrust", twist_drill_thrust, k=k, feed=feed, diameter=diameter)
    for name, ratio in (("torque", second / torque), ("thrust", pushed / thrust)):
        if not METHODS[0] <= ratio <= METHODS[1]:
            tally.caveat(
                f"Two methods disagree on the {name}: the second gives {ratio:.2f} of the first; take the larger."
            )
    tally.show("method_ratio", second / torque)


def forces(tally: Tally, setting: Setting, bite: Bite) -> tuple[float, float]:
    """Torque [N·m] and thrust [N]: the handbook's closed forms with the web, or those of enlarging."""
    if bite.pilot is not None:
        tally.show("pilot", bite.pilot)
        return _opened(tally, setting, bite, bite.pilot)
    torque, thrust = _solid(tally, setting, bite)
    if bite.relief is not None:
        tally.show("pilot", bite.relief)
        chisel = bite.chisel * bite.diameter
        opened = _opened(Tally(setting.units), setting, bite, chisel)
        over = {"pilot": bite.relief, "chisel": chisel}
        torque = tally.figure(
            "torque", relieved_torque, band=DRILL_BAND, solid=torque, opened=opened[0], **over
        )
        thrust = tally.figure(
            "thrust", relieved_thrust, band=DRILL_BAND, solid=thrust, opened=opened[1], **over
        )
    return torque, thrust


def _solid(tally: Tally, setting: Setting, bite: Bite) -> tuple[float, float]:
    """Into solid metal, with a second opinion."""
    material, wear = setting.material, wear_of(setting, bite)
    asked = {"feed": bite.feed, "diameter": bite.diameter, "chisel_ratio": bite.chisel, "wear": wear}
    torque = tally.figure("torque", drill_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
    thrust = tally.figure("thrust", drill_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
    _second(tally, setting, bite, torque / wear, thrust / wear)
    return torque, thrust


def _opened(tally: Tally, setting: Setting, bite: Bite, pilot: float) -> tuple[float, float]:
    """In a hole at least as wide as the chisel edge [m]."""
    material = setting.material
    asked = {
        "feed": bite.feed,
        "diameter": bite.diameter,
        "pilot": pilot,
        "edges": bite.edges,
        "wear": wear_of(setting, bite),
    }
    torque = tally.figure("torque", pilot_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
    thrust = tally.figure("thrust", pilot_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
    return torque, thrust


def turn(
    tally: Tally,
    setting: Setting,
    fields: Any,
    bite: Bite,
    torque: float,
    start: float | None,
    *,
    work: str = "drill",
    deep: float = 0.0,
) -> float:
    """Choose the spindle speed from the start speed [m/s]; power and removal follow. Returns it [rev/s].

    Its fastest is that of `work` in this metal, in a hole so many diameters `deep`.
    """
    choice = common.set_spindle(
        tally,
        setting,
        diameter=bite.diameter,
        torque=torque,
        asked=fields.spindle,
        asked_speed=fields.cutting_speed,
        start=start,
    )
    tally.edge(edge_speed(setting, fields.cutter, work, deep))
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


def cut(
    tally: Tally,
    setting: Setting,
    fields: Any,
    bite: Bite,
    depth: float,
    start: float | None,
    *,
    peck: Quantity | None = None,
    tip: float = 0.0,
    work: str = "drill",
) -> tuple[float, float]:
    """All figures of a bite: forces, speed, seconds, push. Returns the spindle
    speed [rev/s] and the torque [N·m].
    """
    torque, thrust = forces(tally, setting, bite)
    speed = turn(tally, setting, fields, bite, torque, start, work=work, deep=depth / bite.diameter)
    times(tally, bite, speed, depth, len(fields.at), peck=peck, tip=tip)
    push(tally, setting, thrust, bite)
    return speed, torque


def strength(tally: Tally, diameter: float, torque: float) -> None:
    """What of a drill's own strength the torque takes [m, N·m]."""
    breaks = tally.figure("drill_strength", drill_strength, diameter=diameter)
    tally.show("drill_strength_share", torque / breaks)


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
    tally.show("feed_at_easy_push", feed_at_thrust(setting, bite, easy))


def row(
    fields: Any,
    reckoned: Figures,
    setting: Setting,
    *,
    do: str,
    stop: float,
    notes: tuple[str, ...] = (),
    hole: str = "opens",
) -> Row:
    """The line of a hole step; `stop` is where the quill stop stands [m], `hole`
    what it does to the one that is there.
    """
    strokes = reckoned.count("strokes")
    words = [f"{reckoned.shown('time_each')} each"] if len(fields.at) > 1 else []
    if strokes > 1:
        words.append(f"in {strokes} pecks")
    if reckoned.get("pilot"):
        words.append(f"{hole} the {reckoned.shown('pilot')} hole")
    words += [note for note in (*notes, fields.note) if note]
    depth, unit = common.millimetres(stop, setting.units)
    return Row(
        do=fields.what or do,
        note=", ".join(words),
        cutter=fields.cutter.place or short_name(fields.cutter),
        spindle=f"{reckoned.number('spindle_speed') * 60:.0f}",
        pace=f"{reckoned.number('time_each'):.0f}",
        pace_unit="s to depth",
        depth=depth,
        depth_unit=unit,
        measure=fields.measure.said if fields.measure else "",
    )


def dials(reckoned: Figures, setting: Setting, stop: float, counted: str = "to the tip") -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop: the three things to set for a
    hole. `counted` says from where.
    """
    speed = reckoned.number("spindle_speed")
    strokes = reckoned.count("strokes")
    pushed = reckoned.value("lever_push")
    words = f"push {reckoned.shown('lever_push')}" if pushed else ""
    problem = "more than a strong push" if pushed and pushed > setting.shop.strong_push else ""
    number, unit = common.millimetres(stop, setting.units)
    return (
        common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, reckoned.shown("cutting_speed")),
        Dial(
            "Feed by the quill lever",
            f"{reckoned.number('time_each'):.0f}",
            "s to the depth",
            words,
            problem,
        ),
        Dial(
            "Set the quill stop",
            number,
            unit,
            counted if strokes == 1 else f"{counted}, {strokes} pecks",
        ),
    )


def _tip(reckoned: Figures, setting: Setting) -> float:
    """Where the quill stops for a cone [m]: at its tip."""
    return settable(reckoned.number("hole_depth"), setting)


def cone_row(fields: Any, reckoned: Figures, setting: Setting, do: str) -> Row:
    """The line of a spot or a centre: beside the size that was typed the other, diameter or depth."""
    other = (
        f"{reckoned.shown('hole_depth')} to the tip"
        if fields.to is not None
        else f"⌀{reckoned.shown('effective_diameter')} at the surface"
    )
    return row(fields, reckoned, setting, do=do, stop=_tip(reckoned, setting), notes=(other,))


def cone_dials(reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop of a spot or a centre."""
    wide = reckoned.shown("effective_diameter")
    return dials(reckoned, setting, _tip(reckoned, setting), f"to the tip, ⌀{wide} at the surface")


def shapes(at: Places, diameter: float, depth: float | None, angle: float | None = None) -> tuple[Hole, ...]:
    """The same round hole at every place."""
    return tuple(Hole(place.x.value, place.y.value, diameter, depth, angle) for place in at)
