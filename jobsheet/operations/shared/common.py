"""What several kinds share: entries of the same name, and the choice of speed and feed with its figures."""

from __future__ import annotations

import math

from jobsheet.catalog.cuts.feeds import reamer_share, tap_speed
from jobsheet.catalog.cuts.fluids import drilling_speed, fluid_speed
from jobsheet.cutting.feed import feed_per_tooth, table_feed
from jobsheet.cutting.hand import handle_speed, seconds_a_turn
from jobsheet.cutting.speed import cutting_speed, speed_with_fluid, spindle_speed
from jobsheet.machine.spindle import Choice, at_speed, choose, lowest
from jobsheet.model.machine import Handle, Machine
from jobsheet.model.quantity import Cutter, Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial
from jobsheet.operations.shared.tally import Tally
from jobsheet.units.show import trimmed

WHAT = Entry(
    name="what", title="Your wording", asks="text", optional=True, hint="leave empty for the usual words"
)
MEASURE = Entry(
    name="measure",
    title="Measure",
    asks="measure",
    optional=True,
    hint="such as 12 ±0.1, micrometer, before unclamping",
)
TOLERANCES = Entry(
    name="tolerances", title="Form, finish, gauge", asks="tolerances", optional=True,
    hint="such as square 0.03; finish 1.6; gauge micrometer",
)  # fmt: skip
NOTE = Entry(name="note", title="Note", asks="text", optional=True, hint="printed under the step")
SPINDLE = Entry(
    name="spindle", title="Spindle", asks="spindle speed", low="1 rpm", high="60000 rpm", optional=True,
    hint="leave empty: fastest that carries the cut",
)  # fmt: skip
CUTTING_SPEED = Entry(
    name="cutting_speed", title="Cutting speed", asks="cutting speed", low="0.5 m/min", high="2000 m/min",
    optional=True, hint="leave empty: from the material",
)  # fmt: skip

#: A light or manual machine starts at this share of a carbide cutter's published
#: range (common practice, section 2.2).
CARBIDE_SHARE = 0.6


def start_speed(setting: Setting, cutter: Cutter, work: str, deep: float = 0.0) -> float | None:
    """The cutting speed to start from [m/s], or None where the catalogue has none.

    Parameters
    ----------
    work : str
        `mill`, `drill`, `ream` or `tap`
    deep : float
        Depth of a drilled hole over its diameter: oil by hand does not reach the point of a deep one

    Notes
    -----
    Carbide mills start at a share of their published range; the fluid's share is for high-speed
    steel. A reamer starts at half of what the drill before it does, so that it is the slower one
    where both are left to the program.
    """
    material = setting.material
    if cutter.material == "carbide" and work == "mill":
        published = material.speed("carbide mill")
        return None if published is None else published * CARBIDE_SHARE
    if work == "ream" and material.speed("drill") is not None:
        drill = start_speed(setting, cutter, "drill", deep)
        assert drill is not None
        return drill * reamer_share(setting.shop.reamer_speed).value
    if work == "tap":
        slow = tap_speed(material)
        published = slow.value if slow is not None else None
    else:
        published = material.speed(work)
    if published is None:
        return None
    if work == "drill":
        share = drilling_speed(setting.fluid, deep, dry_by_nature=material.dry_by_nature)
    else:
        share = fluid_speed(setting.fluid, work, dry_by_nature=material.dry_by_nature)
    return speed_with_fluid(cutting_speed=published, factor=share.value)


#: Wear factors of a sharp and a dull edge in milling and drilling; a used one has the workshop's own
#: (unit-power tables, cutting-data sections 1.3 and 1.4: sharp 1.0, milling up to 1.3, drilling dull 1.5).
SHARP, DULL_MILLING, DULL_DRILLING = 1.0, 1.3, 1.5


def wear(setting: Setting, cutter: Cutter, work: str) -> float:
    """The factor for the state of an edge: `work` is `mill` or `drill`."""
    if cutter.state == "sharp":
        return SHARP
    if work == "mill":
        return DULL_MILLING if cutter.state == "dull" else setting.shop.wear_milling
    return DULL_DRILLING if cutter.state == "dull" else setting.shop.wear_drilling


def set_spindle(
    tally: Tally,
    setting: Setting,
    *,
    diameter: float,
    torque: float,
    asked: Quantity | None,
    asked_speed: Quantity | None,
    start: float | None,
) -> Choice:
    """Choose the speed and keep its figures: wanted, set, and the cutting speed that follows."""
    wanted = None
    if asked is not None:
        wanted = asked.value
    else:
        speed = asked_speed.value if asked_speed else start
        if speed is not None:
            wanted = tally.figure("wanted_speed", spindle_speed, cutting_speed=speed, diameter=diameter)
    if wanted is None:
        tally.caveat("No cutting speed is on file for this: the slowest speed is taken.")
        wanted = lowest(setting.machine)
    choice = choose(setting.machine, wanted, torque, asked.value if asked else None)
    if choice.why == "not on this machine":
        tally.missing_speed(wanted)
    tally.show("spindle_speed", choice.at.speed)
    tally.figure("cutting_speed", cutting_speed, spindle_speed=choice.at.speed, diameter=diameter)
    return choice


def set_table_feed(
    tally: Tally, *, teeth: int, speed: float, per_tooth: Quantity | None, feed: Quantity | None
) -> tuple[float, float]:
    """Table feed [m/s] and feed per tooth [m], whichever of the two was asked for."""
    if feed is not None:
        tally.show("table_feed", feed.value)
        tooth = tally.figure(
            "feed_per_tooth", feed_per_tooth, table_feed=feed.value, teeth=teeth, spindle_speed=speed
        )
        return feed.value, tooth
    assert per_tooth is not None
    tally.show("feed_per_tooth", per_tooth.value)
    speed_of_table = tally.figure(
        "table_feed", table_feed, feed_per_tooth=per_tooth.value, teeth=teeth, spindle_speed=speed
    )
    return speed_of_table, per_tooth.value


def set_pace(tally: Tally, handle: Handle, feed: float) -> None:
    """The pace of a handle for a table feed."""
    tally.figure("handle_pace", handle_speed, feed=feed, lead=handle.travel)
    tally.figure("seconds_a_turn", seconds_a_turn, feed=feed, lead=handle.travel)


def depth_handle(machine: Machine) -> Handle | None:
    """The handle that sets the depth of a milling cut: the first that is neither x nor y."""
    for handle in machine.handles:
        if handle.name not in ("x", "y"):
            return handle
    return None


def spindle_dial(setting: Setting, shown: str, speed: float, cut: str) -> Dial:
    """The spindle as it is set: its step, or the knob and the range."""
    found = at_speed(setting.machine, speed)
    if found is None:
        return Dial("Set the spindle", shown, "rpm", cut, "not a speed of this machine")
    where = f"step {found.index} of {found.count}" if found.count else found.position
    return Dial("Set the spindle", found.marked, "rpm", f"{where} · {cut}")


def position_text(setting: Setting, speed: float) -> str:
    """Where belt, lever or range must stand for this speed."""
    found = at_speed(setting.machine, speed)
    return found.position if found else ""


def one_decimal(seconds: float) -> str:
    """Seconds a turn as they are wound: one decimal, two under one second."""
    return f"{seconds:.1f}" if seconds >= 1 else f"{seconds:.2f}"


def millimetres(value: float, units: str) -> tuple[str, str]:
    """A length as number and unit, in the job's units."""
    if units == "in":
        return trimmed(value / 0.0254, 4), "in"
    return trimmed(value * 1e3, 3), "mm"


def at_the_dials(setting: Setting, points: tuple[tuple[float, float], ...]) -> str:
    """Where the cutter's centre goes [m], as the handles read it:
    `X 14 + .1528 to 4 + .1843, Y 5 + .1614`.
    """
    from jobsheet.machine.handles import dial_text, reading

    words = []
    for axis, values in zip("xy", zip(*points, strict=True), strict=True):
        handle = setting.machine.handle(axis)
        if handle is not None:
            read = dict.fromkeys(dial_text(handle, reading(handle, value)) for value in values)
            words.append(f"{axis.upper()} {' to '.join(read)}")
    return ", ".join(words)


def times(count: int, one: str, many: str) -> str:
    """`one hole`, `4 holes`."""
    return one if count == 1 else f"{count} {many}"


def radians(degrees: float) -> float:
    """An angle written in degrees."""
    return math.radians(degrees)
