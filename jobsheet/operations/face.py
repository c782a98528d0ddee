"""Facing: taking a layer off the face that is up, in passes side by side.

The cut is reckoned from one edge: the mean chip is that of an edge cut as wide as the widest pass.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.catalog.cutters import short_name
from jobsheet.cutting.chip import mean_chip_thickness
from jobsheet.cutting.kienzle import milling_power, specific_cutting_force, torque_from_power
from jobsheet.cutting.removal import milling_removal_rate
from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figures import Figures
from jobsheet.model.quantity import Cutter, Quantity, Size
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Slab, Sweep
from jobsheet.operations import common
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial, Group, Kind, fields_from
from jobsheet.operations.tally import KIENZLE_BAND, Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    depth: Quantity
    layer: Quantity | None = None
    width: Quantity | None = None
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Size | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Cut",
        (
            Entry(
                name="cutter", title="Cutter", asks="cutter",
                choices=("face mill", "fly cutter", "end mill", "slot drill"),
            ),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="200 mm"),
            Entry(
                name="layer", title="Depth of a layer", asks="length", low="0.01 mm", high="50 mm", optional=True,
                hint="leave empty to take it at once",
            ),
            Entry(
                name="width", title="Width of a pass", asks="length", low="0.1 mm", high="500 mm", optional=True,
                hint="leave empty: as wide as the cutter may",
            ),
        ),
    ),
    Group(
        "Speed and feed",
        (
            Entry(
                name="feed_per_tooth", title="Feed a tooth", asks="feed per tooth", low="0.001 mm", high="2 mm",
                optional=True,
            ),
            Entry(
                name="feed", title="Table feed", asks="feed", low="1 mm/min", high="5000 mm/min", optional=True,
                hint="instead of the feed a tooth",
            ),
            Entry(name="along", title="Feed along", asks="choice", choices=("x", "y"), optional=True),
            common.SPINDLE,
            common.CUTTING_SPEED,
        ),
    ),
    Group("Check and words", (common.MEASURE, common.WHAT, common.NOTE)),
)  # fmt: skip

#: A face cut takes 60-75 % of the cutter where nothing is asked (common practice, cutting-data section 3.3).
USUAL_WIDTH = 0.6


def passes(fields: Fields, setting: Setting) -> tuple[tuple[float, ...], float]:
    """Widths of the passes side by side and the length of each [m], approach and overrun in it.

    The length is that of the work plus one diameter (makers' form, cutting-data section 1.10).
    """
    diameter = fields.cutter.diameter or 0.0
    along, across = (0, 1) if fields.along == "x" else (1, 0)
    length, total = setting.extent[along], setting.extent[across]
    width = fields.width.value if fields.width else min(diameter * USUAL_WIDTH, total)
    width = min(width, total)
    count = max(1, math.ceil(total / width - 1e-9))
    widths = [width] * (count - 1) + [total - width * (count - 1)]
    return tuple(widths), length + diameter


def figures(fields: Fields, setting: Setting) -> Figures:
    """Kienzle's power at the exact mean chip of an edge cut; torque from it; pace of the handle."""
    cutter = fields.cutter
    if cutter.diameter is None:
        raise CalcError("cutter", f"“{cutter.text}”", "written with its diameter")
    if cutter.teeth is None:
        raise CalcError("cutter", f"“{cutter.text}”", "written with its number of teeth, such as 4 teeth")
    if fields.feed is None and fields.feed_per_tooth is None:
        raise CalcError("feed", "empty", "given as a feed a tooth or as a table feed")
    tally = Tally(setting.units)
    widths, length = passes(fields, setting)
    widest = max(widths)
    if widest > cutter.diameter * (1 + 1e-9):
        raise CalcError(
            "width of a pass", f"{widest * 1e3:.4g} mm", f"at most the cutter, {cutter.diameter * 1e3:.4g} mm"
        )
    layers = math.ceil(fields.depth.value / fields.layer.value - 1e-9) if fields.layer else 1
    depth = fields.depth.value / layers
    start = common.start_speed(setting, cutter, "mill")
    # The torque does not hang on the speed as long as the feed a tooth stays: one reckoning serves the choice.
    # A table feed in mm/min changes the chip with the speed, so the speed comes first there.
    guess = 0.0
    if fields.feed_per_tooth and not fields.feed:
        guess = _torque(
            Tally(setting.units), fields, setting, depth, widest, fields.feed_per_tooth.value, 1.0
        )[1]
    choice = common.set_spindle(
        tally, setting, diameter=cutter.diameter, torque=guess, asked=fields.spindle,
        asked_speed=fields.cutting_speed, start=start,
    )  # fmt: skip
    speed = choice.at.speed
    feed, tooth = common.set_table_feed(
        tally, teeth=cutter.teeth, speed=speed, per_tooth=fields.feed_per_tooth, feed=fields.feed
    )
    handle = setting.machine.handle(fields.along)
    if handle:
        common.set_pace(tally, handle, feed)
    _torque(tally, fields, setting, depth, widest, tooth, speed)
    tally.show("width_of_cut", widest)
    tally.show("passes", float(len(widths) * layers))
    tally.show("layers", float(layers))
    tally.show("path_length", length)
    tally.figure("removal_rate", milling_removal_rate, depth=depth, width=widest, table_feed=feed)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    tally.show("cutting_time", each * len(widths) * layers)
    tally.show("volume", fields.depth.value * setting.extent[0] * setting.extent[1])
    return tally.done()


def _torque(
    tally: Tally, fields: Fields, setting: Setting, depth: float, width: float, tooth: float, speed: float
) -> tuple[float, float]:
    """Power [W] and torque [N·m] of the widest pass."""
    cutter, material = fields.cutter, setting.material
    assert cutter.diameter is not None
    assert cutter.teeth is not None
    chip = tally.figure(
        "chip_thickness", mean_chip_thickness, feed_per_tooth=tooth, width=width, diameter=cutter.diameter
    )
    kc = tally.figure(
        "specific_force", specific_cutting_force, kc11=material.kc11.value, mc=material.mc.value, h=chip,
        wear=setting.shop.wear_milling,
    )  # fmt: skip
    power = tally.figure(
        "power", milling_power, band=KIENZLE_BAND, depth=depth, width=width,
        table_feed=tooth * cutter.teeth * speed, kc=kc,
    )  # fmt: skip
    torque = tally.figure("torque", torque_from_power, band=KIENZLE_BAND, power=power, spindle_speed=speed)
    return power, torque


def rows(fields: Fields, found: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much comes off, in how many passes."""
    widths, length = passes(fields, setting)
    shown, unit = common.millimetres(fields.depth.value, setting.units)
    layers = int(found.value("layers") or 1)
    each, _ = common.millimetres(fields.depth.value / layers, setting.units)
    unique = " and ".join(common.millimetres(width, setting.units)[0] for width in dict.fromkeys(widths))
    long, _ = common.millimetres(length, setting.units)
    note = f"{common.times(len(widths), 'one pass', 'passes')} {unique} wide, {long} long, {found.shown('time_each')} each"
    if fields.note:
        note = f"{note}; {fields.note}"
    pace = found.value("seconds_a_turn")
    return (
        Row(
            do=fields.what or f"Face {shown} {unit} off",
            note=note,
            cutter=fields.cutter.place or short_name(fields.cutter),
            spindle=f"{(found.value('spindle_speed') or 0) * 60:.0f}",
            pace=common.one_decimal(pace) if pace else "",
            pace_unit=f"s a turn, {fields.along}" if pace else "",
            depth=f"{layers} × {each}" if layers > 1 else each,
            depth_unit=unit,
            measure=fields.measure.text if fields.measure else "",
        ),
    )


def dials(fields: Fields, found: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle and depth."""
    speed = found.value("spindle_speed") or 0.0
    pace = found.value("seconds_a_turn")
    axis = fields.along.upper()
    handle = common.depth_handle(setting.machine)
    layers = int(found.value("layers") or 1)
    each, unit = common.millimetres(fields.depth.value / layers, setting.units)
    note = f"{common.times(int(found.value('passes') or 1), 'one pass', 'passes')}"
    if handle:
        from jobsheet.machine.handles import dial_text, reading

        note = (
            f"each {dial_text(handle, reading(handle, fields.depth.value / layers))}, {handle.name} · {note}"
        )
    return (
        common.spindle_dial(setting, found.shown("spindle_speed"), speed, found.shown("cutting_speed")),
        Dial(
            f"Wind the {axis} handle", common.one_decimal(pace) if pace else "–", "s a turn", found.shown("handle_pace"),
            _pace_problem(found, setting),
        ),
        Dial("Raise the knee" if handle and handle.name == "knee" else "Set the depth", f"{layers} × {each}" if layers > 1 else each, unit, note),
    )  # fmt: skip


def _pace_problem(found: Figures, setting: Setting) -> str:
    pace = found.value("handle_pace")
    if pace is None:
        return ""
    if pace > setting.shop.fastest_pace:
        return "faster than a hand keeps even"
    return "slower than a hand keeps even" if pace < setting.shop.slowest_pace else ""


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The layer that comes off."""
    return (Slab(fields.depth.value),)


def takes_off(fields: Fields) -> float:
    """By how much the top of the work is lower afterwards [m]."""
    return fields.depth.value


def title_of(fields: Fields) -> str:
    """Short title for the row."""
    return fields.what or f"Face {fields.depth.text} off"


def blank(units: str) -> Fields:
    """A new facing cut, to be changed."""
    texts = {
        "cutter": "face mill 50 mm, 4 teeth, carbide",
        "depth": "0.5 mm",
        "feed_per_tooth": "0.05 mm",
        "along": "x",
    }
    made: Fields = fields_from(Fields, KIND.entries, texts, units)
    return made


KIND = Kind(
    name="face", title="Face", icon="face", fields=Fields, form=FORM, figures=figures, rows=rows, dials=dials,
    sweep=sweep, title_of=title_of, blank=blank, groups=("milling",), takes_off=takes_off,
)  # fmt: skip
