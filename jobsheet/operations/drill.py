"""Drilling: from solid or after a smaller hole at the same places; spotting too, by a spot drill's cone.

Through the quill lever the feed is what the hand's push makes of it: the sheet gives seconds to the
depth and pecks instead of a handle pace.
"""

from __future__ import annotations

import math

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
from jobsheet.cutting.speed import cone_diameter
from jobsheet.cutting.strength import drill_strength
from jobsheet.cutting.times import drilling_time, point_length
from jobsheet.errors import CalcError
from jobsheet.model.figures import Figures
from jobsheet.model.quantity import Cutter, Depth, Places, Quantity, Size
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Sweep
from jobsheet.operations import common
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial, Group, Kind, fields_from
from jobsheet.operations.tally import DRILL_BAND, Tally
from jobsheet.units.show import trimmed


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    depth: Depth
    peck: Quantity | None = None
    feed: Quantity
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Size | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Holes",
        (
            Entry(name="cutter", title="Drill", asks="cutter", choices=("drill", "spot drill")),
            Entry(name="at", title="Places, x and y", asks="places", hint="such as 14, 12; 66, 12"),
            Entry(
                name="depth", title="Depth", asks="depth", low="0.05 mm", high="800 mm",
                hint="of the full diameter; to the tip for a spot drill",
            ),
            Entry(
                name="peck", title="Peck", asks="length", low="0.1 mm", high="500 mm", optional=True,
                hint="leave empty to drill in one go",
            ),
        ),
    ),
    Group(
        "Speed and feed",
        (
            Entry(name="feed", title="Feed a turn", asks="feed per turn", low="0.002 mm", high="2 mm"),
            common.SPINDLE,
            common.CUTTING_SPEED,
        ),
    ),
    Group("Check and words", (common.MEASURE, common.WHAT, common.NOTE)),
)  # fmt: skip


def diameter_cut(fields: Fields) -> float:
    """The diameter at the surface [m]: the drill's, or that of a spot drill's cone at its depth."""
    whole = fields.cutter.diameter
    if whole is None:
        raise CalcError("drill", f"“{fields.cutter.text}”", "written with its size")
    if fields.cutter.kind == "spot drill" and fields.depth.value is not None and fields.cutter.point_angle:
        return min(whole, cone_diameter(depth=fields.depth.value, point_angle=fields.cutter.point_angle))
    return whole


def figures(fields: Fields, setting: Setting) -> Figures:
    """Handbook torque and thrust with web, or in a hole that is there; push at the lever; seconds."""
    tally = Tally(setting.units)
    cutter, material, shop = fields.cutter, setting.material, setting.shop
    spotting = cutter.kind == "spot drill"
    diameter = diameter_cut(fields)
    if spotting:
        tally.show("effective_diameter", diameter)
        if fields.depth.through:
            raise CalcError("depth", "through", "a depth for a spot drill, such as 3 mm")
    pilot = setting.pilot if setting.pilot and setting.pilot < diameter * (1 - 1e-9) else None
    chisel = SPLIT_POINT if cutter.split_point else STANDARD_POINT
    if pilot is not None:
        tally.show("pilot", pilot)
    asked = {"feed": fields.feed.value, "diameter": diameter, "wear": shop.wear_drilling}
    if pilot is None:
        asked["chisel_ratio"] = chisel
        torque = tally.figure("torque", drill_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
        thrust = tally.figure("thrust", drill_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
    else:
        asked |= {"pilot": pilot, "edges": float(cutter.teeth or 2)}
        torque = tally.figure("torque", pilot_torque, band=DRILL_BAND, kd=material.kd_torque.value, **asked)
        thrust = tally.figure("thrust", pilot_thrust, band=DRILL_BAND, kd=material.kd_thrust.value, **asked)
    choice = common.set_spindle(
        tally, setting, diameter=diameter, torque=torque, asked=fields.spindle, asked_speed=fields.cutting_speed,
        start=common.start_speed(setting, cutter, "drill"),
    )  # fmt: skip
    speed = choice.at.speed
    tally.show("feed_per_turn", fields.feed.value)
    tally.figure("power", power_from_torque, band=DRILL_BAND, torque=torque, spindle_speed=speed)
    depth = fields.depth.value if fields.depth.value is not None else setting.thickness
    if depth <= 0:
        raise CalcError("depth", "through", "a depth in mm: the stock's height is not known here")
    tip = (
        0.0
        if spotting
        else point_length(diameter=diameter, point_angle=cutter.point_angle or common.radians(118))
    )
    beyond = tip if fields.depth.through or not spotting else 0.0
    tally.show("hole_depth", depth)
    strokes = max(1, math.ceil((depth + beyond) / fields.peck.value - 1e-9)) if fields.peck else 1
    tally.show("strokes", float(strokes))
    each = tally.figure(
        "time_each", drilling_time, depth=depth, diameter=diameter, feed=fields.feed.value, spindle_speed=speed,
        strokes=float(strokes),
    )  # fmt: skip
    tally.show("cutting_time", each * len(fields.at))
    if pilot is not None:
        tally.figure(
            "removal_rate",
            drilling_removal_rate,
            diameter=diameter,
            feed=fields.feed.value,
            spindle_speed=speed,
            pilot=pilot,
        )
    elif not spotting:
        tally.figure(
            "removal_rate",
            drilling_removal_rate,
            diameter=diameter,
            feed=fields.feed.value,
            spindle_speed=speed,
        )
    _push(tally, setting, thrust, diameter, pilot, chisel)
    if not spotting:
        strength = tally.figure("drill_strength", drill_strength, diameter=diameter)
        tally.show("drill_strength_share", torque / strength)
    return tally.done()


def _push(
    tally: Tally, setting: Setting, thrust: float, diameter: float, pilot: float | None, chisel: float
) -> None:
    """What the hand must push, and the feed that an easy push would give."""
    lever, shop = setting.machine.lever, setting.shop
    if lever is None:
        return
    geometry = {
        "lever": lever.length, "travel": lever.travel, "spring": lever.spring, "efficiency": shop.lever_efficiency,
    }  # fmt: skip
    push = tally.figure("lever_push", push_from_thrust, band=DRILL_BAND, thrust=thrust, **geometry)
    if push <= shop.easy_push:
        return
    easy = tally.use("feed_at_easy_push", thrust_from_push, push=shop.easy_push, **geometry)
    kd = setting.material.kd_thrust.value
    if pilot is not None:
        feed = pilot_feed_from_thrust(
            thrust=easy, kd=kd, diameter=diameter, pilot=pilot, wear=shop.wear_drilling
        )
    else:
        feed = feed_from_thrust(
            thrust=easy, kd=kd, diameter=diameter, chisel_ratio=chisel, wear=shop.wear_drilling
        )
    tally.show("feed_at_easy_push", feed)


def _hole_words(fields: Fields) -> str:
    count = len(fields.at)
    if fields.cutter.kind == "spot drill":
        size = f"⌀{trimmed(diameter_cut(fields) * 1e3, 2)}"
        return f"Spot {common.times(count, 'one hole', 'holes')} to {size}"
    size = fields.cutter.size.removesuffix("mm").strip()
    where = "through" if fields.depth.through else f"{fields.depth.text} deep"
    return f"Drill {common.times(count, 'one hole', 'holes')} {size}, {where}"


def rows(fields: Fields, found: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many holes, of what size, how deep, in how many pecks."""
    strokes = int(found.value("strokes") or 1)
    note = [f"{found.shown('time_each')} each"] if len(fields.at) > 1 else []
    if strokes > 1:
        note.append(f"in {strokes} pecks")
    if found.get("pilot"):
        note.append(f"opens the {found.shown('pilot')} hole")
    if fields.note:
        note.append(fields.note)
    depth, unit = common.millimetres(_stop(fields, found), setting.units)
    return (
        Row(
            do=fields.what or _hole_words(fields),
            note=", ".join(note),
            cutter=fields.cutter.place or short_name(fields.cutter),
            spindle=f"{(found.value('spindle_speed') or 0) * 60:.0f}",
            pace=f"{found.value('time_each') or 0:.0f}",
            pace_unit="s to depth",
            depth=depth,
            depth_unit=unit,
            measure=fields.measure.text if fields.measure else "",
        ),
    )


def _stop(fields: Fields, found: Figures) -> float:
    """Where the quill stop stands: the depth of the tip, a millimetre further for what goes through [m]."""
    depth = found.value("hole_depth") or 0.0
    if fields.cutter.kind == "spot drill":
        return depth
    tip = point_length(
        diameter=diameter_cut(fields), point_angle=fields.cutter.point_angle or common.radians(118)
    )
    return round(depth + tip + (0.001 if fields.depth.through else 0.0), 4)


def dials(fields: Fields, found: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    speed = found.value("spindle_speed") or 0.0
    strokes = int(found.value("strokes") or 1)
    push = found.value("lever_push")
    words = f"push {found.shown('lever_push')}" if push else ""
    problem = "more than a strong push" if push and push > setting.shop.strong_push else ""
    stop, unit = common.millimetres(_stop(fields, found), setting.units)
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
            "Set the quill stop", stop, unit, "to the tip" if strokes == 1 else f"to the tip, {strokes} pecks"
        ),
    )


def holes(fields: Fields) -> tuple[Hole, ...]:
    """The holes it leaves; a spotted cone is no pilot for what follows."""
    if fields.cutter.kind == "spot drill":
        return ()
    return tuple(shape for shape in _shapes(fields) if isinstance(shape, Hole))


def _shapes(fields: Fields) -> tuple[Sweep, ...]:
    diameter = diameter_cut(fields)
    straight = 0.0 if fields.cutter.kind == "spot drill" else fields.depth.value
    return tuple(
        Hole(place.x.value, place.y.value, diameter, straight, fields.cutter.point_angle)
        for place in fields.at
    )


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Round holes with their points."""
    return _shapes(fields)


def title_of(fields: Fields) -> str:
    """Short title for the row."""
    return fields.what or _hole_words(fields)


def blank(units: str) -> Fields:
    """A new hole, to be changed."""
    texts = {"cutter": "drill 5 mm", "at": "10 mm, 10 mm", "depth": "through", "feed": "0.08 mm"}
    made: Fields = fields_from(Fields, KIND.entries, texts, units)
    return made


KIND = Kind(
    name="drill", title="Drill", icon="drill", fields=Fields, form=FORM, figures=figures, rows=rows, dials=dials,
    sweep=sweep, title_of=title_of, blank=blank, groups=("drilling",), holes=holes,
)  # fmt: skip
