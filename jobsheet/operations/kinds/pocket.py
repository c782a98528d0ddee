"""A pocket or a window: cleared from the middle in layers, its wall left for one last round at full depth.

Clearing is reckoned at the widest cut of a round: the step inward, and once the full width at entry.
The last round may be a step of its own (`clear: only the wall`), with what was left as its width.
"""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.times import cutting_time
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Depth, Measured, Place, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Recess, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_MILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally

ALL, GROOVE, WALL = "all of it", "a groove round the middle", "only the wall"


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    centre: Places
    length: Quantity
    width: Quantity
    depth: Depth
    layer: Quantity | None = None
    step: Quantity | None = None
    leave: Quantity | None = None
    clear: str = ALL
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""

    @property
    def around(self) -> tuple[tuple[float, float], ...]:
        """The corners of the cutter's centre on its last round [m], clockwise: the
        conventional way, the wall on its left.
        """
        middle, diameter = _middle(self), milling.diameter_of(self.cutter)
        x, y = middle.x.value, middle.y.value
        out, up = (self.length.value - diameter) / 2, (self.width.value - diameter) / 2
        return ((x - out, y - up), (x - out, y + up), (x + out, y + up), (x + out, y - up))


FORM = (
    Group(
        "Pocket",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("slot drill", "end mill"),
                hint="its radius is the corner's",
            ),
            Entry(name="centre", title="Centre, x and y", asks="places", hint="such as 60, 40"),
            Entry(name="length", title="Length along x", asks="length", low="1 mm", high="1 m"),
            Entry(name="width", title="Width along y", asks="length", low="1 mm", high="1 m"),
            Entry(name="depth", title="Depth", asks="depth", low="0.05 mm", high="200 mm"),
            milling.LAYER,
            Entry(
                name="step",
                title="Step inward",
                asks="length",
                low="0.1 mm",
                high="100 mm",
                optional=True,
                hint="leave empty: six tenths of the cutter",
            ),
            Entry(
                name="leave",
                title="Leave on the wall",
                asks="length",
                low="0.01 mm",
                high="5 mm",
                optional=True,
                hint="for one last round at full depth",
            ),
            Entry(
                name="clear",
                title="Clear",
                asks="choice",
                choices=(ALL, GROOVE, WALL),
                optional=True,
                hint="the middle of a window must be held",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, milling.ALONG, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)

#: The step inward where nothing is asked, as a share of the cutter (common practice).
USUAL_STEP = 0.6


def _middle(fields: Fields) -> Place:
    points = fields.centre.points
    if len(points) != 1:
        raise CalcError("centre", f"{len(points)} places", "one place, such as 60, 40")
    return points[0]


def _rounds(fields: Fields) -> tuple[int, float]:
    """Rounds in a layer, and the length of all of them [m]."""
    diameter = milling.diameter_of(fields.cutter)
    left = fields.leave.value if fields.leave else 0.0
    length, width = fields.length.value - 2 * left, fields.width.value - 2 * left
    if min(length, width) < diameter * (1 - 1e-9):
        raise CalcError(
            "cutter", f"“{fields.cutter.text}”", "smaller than the pocket less what is left on its walls"
        )
    step = fields.step.value if fields.step else USUAL_STEP * diameter
    if step > diameter * (1 + 1e-9):
        raise CalcError("step inward", f"{step * 1e3:.4g} mm", "at most the cutter's diameter")
    # Half the free width is cleared by rounds that grow by one step; the first is the middle line.
    free = (min(length, width) - diameter) / 2
    count = 1 if fields.clear != ALL else 1 + math.ceil(free / step - 1e-9)
    way = 0.0
    for index in range(count):
        inset = index * step
        along, across = length - diameter - 2 * inset, width - diameter - 2 * inset
        way += 2 * (max(along, 0.0) + max(across, 0.0)) if across > 0 else max(along, 0.0)
    return count, max(way, diameter)


def _wall(fields: Fields) -> float:
    """The way of the cutter's centre round the finished wall [m]."""
    diameter = milling.diameter_of(fields.cutter)
    return 2 * (fields.length.value - diameter + fields.width.value - diameter)


def figures(fields: Fields, setting: Setting) -> Figures:
    """The full-width cut that opens a layer; the last round's power beside it; times over all rounds."""
    if fields.clear == WALL:
        return _wall_alone(fields, setting)
    tally = Tally(setting.units)
    diameter = milling.diameter_of(fields.cutter)
    depth = drilling.depth_of(fields.depth, setting)
    layers = milling.layers_of(depth, fields.layer)
    count, way = _rounds(fields)
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=depth / layers,
        width=diameter,
        tooth=0.0,
        start=0.0,
        end=math.pi,
        wall=fields.leave is None,
    )
    speed, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    seconds = layers * cutting_time(length=way, feed=feed)
    if fields.leave is not None:
        seconds += cutting_time(length=_wall(fields), feed=feed)
        _last_round(tally, fields, setting, depth, speed, feed)
    tally.show("width_of_cut", diameter)
    tally.show("passes", float(layers * count))
    tally.show("layers", float(layers))
    tally.show("hole_depth", depth)
    tally.show("path_length", way)
    tally.show("time_each", cutting_time(length=way, feed=feed))
    tally.show("cutting_time", seconds)
    corners = (4 - math.pi) * diameter**2 / 4
    whole = fields.length.value * fields.width.value - corners
    if fields.clear != ALL:
        inner = (fields.length.value - 2 * diameter) * (fields.width.value - 2 * diameter)
        whole -= max(inner, 0.0)
    tally.show("volume", depth * whole)
    return tally.done()


def _wall_alone(fields: Fields, setting: Setting) -> Figures:
    """The round that takes what an earlier step left, down in layers where that is asked for."""
    if fields.leave is None:
        raise CalcError("leave on the wall", "empty", "what is left on it, such as 0.4 mm, and is taken now")
    tally = Tally(setting.units)
    diameter = milling.diameter_of(fields.cutter)
    depth = drilling.depth_of(fields.depth, setting)
    layers = milling.layers_of(depth, fields.layer)
    width, way = fields.leave.value, _wall(fields)
    if way <= 0:
        raise CalcError("cutter", f"“{fields.cutter.text}”", "smaller than the pocket")
    start, end = milling.edge_arc(width, diameter)
    cut = milling.Cut(
        cutter=fields.cutter, depth=depth / layers, width=width, tooth=0.0, start=start, end=end, wall=True
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    tally.show("width_of_cut", width)
    tally.show("passes", float(layers))
    tally.show("layers", float(layers))
    tally.show("hole_depth", depth)
    tally.show("path_length", way)
    each = tally.figure("time_each", cutting_time, length=way, feed=feed)
    tally.show("cutting_time", each * layers)
    long, wide = fields.length.value, fields.width.value
    # Its corners have the cutter's radius before and after: what they leave cancels.
    tally.show("volume", depth * (long * wide - (long - 2 * width) * (wide - 2 * width)))
    return tally.done()


def _last_round(
    tally: Tally, fields: Fields, setting: Setting, depth: float, speed: float, feed: float
) -> None:
    """The round that makes the wall at full depth: its own power and what it leaves."""
    assert fields.leave is not None
    start, end = milling.edge_arc(fields.leave.value, milling.diameter_of(fields.cutter))
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=depth,
        width=fields.leave.value,
        tooth=feed / (milling.teeth_of(fields.cutter) * speed),
        start=start,
        end=end,
        wall=True,
    )
    last = Tally(setting.units)
    milling.mill(last, cut, setting, speed)
    tally.take(
        last.done(),
        {"power": "last_power", "torque": "last_torque"},
        ("wall_error", "finish", "finish_run_out"),
    )


def _words(fields: Fields) -> str:
    name = "window" if fields.depth.through else "pocket"
    if fields.clear == WALL:
        left = f"{fields.leave.text} off" if fields.leave else "off"
        return f"Finish the wall of the {name} {fields.length.text} × {fields.width.text}, {left}"
    deep = "" if fields.depth.through else f", {fields.depth.text} deep"
    return f"Mill the {name} {fields.length.text} × {fields.width.text}{deep}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    name = "Window" if fields.depth.through else "Pocket"
    size = f"{fields.length.text} × {fields.width.text}"
    if fields.clear == WALL:
        return _words(fields), f"{name} {size}, finish the wall", f"{name} wall"
    deep = "" if fields.depth.through else f", {fields.depth.text} deep"
    return _words(fields), f"{name} {size}{deep}", f"{name} {size}"


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: sizes, layers, what is left for the last round."""
    at_the_wall = f"cutter's centre at the wall {common.at_the_dials(setting, fields.around)}"
    parts = [
        f"middle {_middle(fields).text}",
        at_the_wall,
        milling.layers_words(reckoned),
    ]
    if fields.clear == GROOVE:
        parts.append("a groove round the middle: hold it first")
    parts.append(f"{reckoned.shown('time_each')} a layer")
    if fields.clear == WALL:
        parts.append("clockwise round, seen from above")
    elif fields.leave is not None:
        parts.append(f"then {fields.leave.text} off the wall at full depth")
    total = reckoned.number("hole_depth")
    note = "; ".join(parts)
    return (
        milling.row(
            fields,
            reckoned,
            setting,
            do=_words(fields),
            note=note,
            total=total,
            along=fields.along,
            readings=(at_the_wall,),
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle, depth of a layer."""
    words = milling.layers_words(reckoned)
    return milling.dials(reckoned.number("hole_depth"), reckoned, setting, fields.along, words)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The recess with the cutter's radius in its corners."""
    middle = _middle(fields)
    radius = milling.diameter_of(fields.cutter) / 2
    return (
        Recess(
            middle.x.value,
            middle.y.value,
            fields.length.value,
            fields.width.value,
            radius,
            fields.depth.value,
        ),
    )


#: A new pocket, to be changed.
EXAMPLE = {
    "cutter": "slot drill 10 mm, 30 mm out",
    "centre": "40 mm, 25 mm",
    "length": "30 mm",
    "width": "20 mm",
    "depth": "4 mm",
    "layer": "1 mm",
    "leave": "0.3 mm",
    "clear": ALL,
    "feed_per_tooth": "0.03 mm",
    "along": "x",
}


def outline(fields: Fields) -> tuple[tuple[float, float], ...]:
    """From left to right through its middle, as far as the cutter's centre goes [m]."""
    middle = next(iter(fields.centre))
    x, y = middle.x.value, middle.y.value
    out = max(0.0, (fields.length.value - (fields.cutter.diameter or 0.0)) / 2)
    return (x - out, y), (x + out, y)


_ROLES = Roles(mills="recess", speed="mill", full_width=True, closed=True, process="pocket")
_OPENED = replace(_ROLES, full_width=False, closed=False)


def _roles(fields: Fields) -> Roles:
    """Where only the wall is cut the middle is open already; where not all of it goes, what is
    cut through leaves its middle loose.
    """
    roles = _OPENED if fields.clear == WALL else _ROLES
    return replace(roles, frees=True) if fields.depth.through and fields.clear != ALL else roles


def _reads(fields: Fields) -> frozenset[str]:
    return reading.MILL | reading.depth_through(fields)


KIND = Kind(
    name="pocket",
    title="Pocket",
    icon="pocket",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="pocket",
    groups=("milling",),
    roles=_roles,
    outline=outline,
    reads=_reads,
    also=("recess", "window"),
)
