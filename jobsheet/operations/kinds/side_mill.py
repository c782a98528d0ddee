"""Side milling: an edge or a step, with the side of the cutter, in layers down and cuts inward.

The sign of the wall's error comes from the sum of the tooth forces, not from the way of cutting: a thin
conventional cut leaves metal on, a thick one digs in.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.cutting.times import cutting_time, side_approach
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Edge, Groove, Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_MILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import aimed, common
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    side: str = "right"
    width: Quantity
    cut: Quantity | None = None
    depth: Quantity
    layer: Quantity | None = None
    leave: Quantity | None = None
    way: str = "conventional"
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    length: Quantity | None = None
    path: Places | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""

    @property
    def along(self) -> str:
        """The handle that feeds: along the side that is cut, or along the path."""
        if self.path is not None:
            (x1, y1), (x2, y2) = _path(self.path)
            return "x" if abs(x2 - x1) >= abs(y2 - y1) else "y"
        return "y" if self.side in ("left", "right") else "x"


WAY = Entry(
    name="way", title="Way of cutting", asks="choice", choices=("conventional", "climb"), optional=True
)

FORM = (
    Group(
        "Edge or step",
        (
            Entry(
                name="cutter", title="Cutter", asks="cutter", choices=("end mill", "slot drill"),
                hint="write how far it is out for its bending: 45 mm out",
            ),
            WAY,
            Entry(
                name="side", title="Side of the work", asks="choice", choices=("left", "right", "front", "rear"),
                optional=True, hint="as it lies; front is where you stand",
            ),
            Entry(name="width", title="Width", asks="length", low="0.01 mm", high="500 mm", hint="inward, in all"),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="200 mm"),
            milling.LAYER,
            Entry(
                name="cut", title="Width of a cut", asks="length", low="0.01 mm", high="200 mm", optional=True,
                hint="leave empty to take it at once",
            ),
            Entry(
                name="leave", title="Leave on the wall", asks="length", low="0.01 mm", high="5 mm", optional=True,
                hint="for one last cut at full depth",
            ),
            Entry(
                name="length", title="Length", asks="length", low="0.1 mm", high="3 m", optional=True,
                hint="leave empty: the whole side",
            ),
            Entry(
                name="path",
                title="For a wall inside: the cutter's centre",
                asks="places",
                optional=True,
                hint="from and to, such as 25, 29.5; 75, 29.5",
            ),
        ),
    ),
    Group("Speed and feed", (*milling.FEED_ENTRIES, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_MILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def _path(path: Places) -> tuple[tuple[float, float], tuple[float, float]]:
    """Where the cutter's centre begins and ends [m]."""
    points = path.points
    if len(points) != 2:
        raise CalcError("cutter's centre", f"{len(points)} places", "two places, such as 25, 29.5; 75, 29.5")
    first, last = points
    return (first.x.value, first.y.value), (last.x.value, last.y.value)


def _rough_width(fields: Fields) -> float:
    """What is taken off before the last cut on the wall [m]."""
    left = fields.leave.value if fields.leave else 0.0
    if left >= fields.width.value:
        raise CalcError("leave on the wall", fields.leave.text if fields.leave else "", "less than the width")
    return fields.width.value - left


def _cuts(fields: Fields) -> tuple[int, float]:
    """Cuts inward in each layer, and the width of each [m]."""
    rough = _rough_width(fields)
    count = max(1, math.ceil(rough / fields.cut.value - 1e-9)) if fields.cut else 1
    return count, rough / count


def _reads(fields: Fields) -> frozenset[str]:
    """Of the work only the length of the side, where it is not said, and its profile where it is no box."""
    if fields.path is not None:
        return reading.MILL
    side = frozenset({"profile"})
    return reading.MILL | (side if fields.length is not None else side | {f"extent.{fields.along}"})


def _length(fields: Fields, setting: Setting) -> float:
    """How long the side is [m]."""
    if fields.path is not None:
        (x1, y1), (x2, y2) = _path(fields.path)
        return math.hypot(x2 - x1, y2 - y1)
    if fields.length is not None:
        return fields.length.value
    whole = setting.extent[1 if fields.along == "y" else 0]
    run = None
    if setting.profile is not None:
        run = setting.profile.run(fields.side, fields.width.value, fields.depth.value)
    return whole if run is None else min(whole, run)


def _volume(fields: Fields, setting: Setting) -> float:
    """What comes off [m³]: on round bar and the like never more than is there."""
    wide, deep = fields.width.value, fields.depth.value
    whole = deep * wide * _length(fields, setting)
    if fields.path is not None or setting.profile is None:
        return whole
    return min(whole, setting.profile.strip(fields.side, wide, deep))


def figures(fields: Fields, setting: Setting) -> Figures:
    """The heaviest cut; with metal left on the wall the last cut's power and error of the wall beside it."""
    tally = Tally(setting.units)
    diameter = milling.diameter_of(fields.cutter)
    count, width = _cuts(fields)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    climb = fields.way == "climb"
    start, end = milling.edge_arc(width, diameter, climb=climb)
    cut = milling.Cut(
        cutter=fields.cutter, depth=fields.depth.value / layers, width=width, tooth=0.0, start=start, end=end,
        wall=fields.leave is None,
    )  # fmt: skip
    speed, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    passes = count * layers
    length = _length(fields, setting) + side_approach(width=width, diameter=diameter)
    each = tally.figure("time_each", cutting_time, length=length, feed=feed)
    seconds = each * passes
    if fields.leave is not None:
        seconds += _last_cut(tally, fields, setting, speed, feed)
        passes += 1
    tally.show("width_of_cut", width)
    tally.show("passes", float(passes))
    tally.show("layers", float(layers))
    tally.show("path_length", length)
    tally.show("cutting_time", seconds)
    tally.show("volume", _volume(fields, setting))
    return tally.done()


def _last_cut(tally: Tally, fields: Fields, setting: Setting, speed: float, feed: float) -> float:
    """The cut that makes the wall at full depth: its own power and what it leaves. Returns its seconds."""
    assert fields.leave is not None
    diameter = milling.diameter_of(fields.cutter)
    start, end = milling.edge_arc(fields.leave.value, diameter, climb=fields.way == "climb")
    teeth = milling.teeth_of(fields.cutter)
    cut = milling.Cut(
        cutter=fields.cutter, depth=fields.depth.value, width=fields.leave.value, tooth=feed / (teeth * speed),
        start=start, end=end, wall=True,
    )  # fmt: skip
    last = Tally(setting.units)
    milling.mill(last, cut, setting, speed)
    found = last.done()
    tally.take(
        found, {"power": "last_power", "torque": "last_torque"}, ("wall_error", "finish", "finish_run_out")
    )
    length = _length(fields, setting) + side_approach(width=fields.leave.value, diameter=diameter)
    return cutting_time(length=length, feed=feed)


def _words(fields: Fields) -> str:
    if fields.path is not None:
        return f"Open the {fields.side} wall by {fields.width.text}"
    step = f"{fields.width.text} × {fields.depth.text}"
    return f"Mill the {fields.side} side, {step}"


def _says(fields: Fields, aim: Aim) -> tuple[str, ...]:
    if fields.path is not None:
        return _words(fields), f"{fields.side.capitalize()} wall, {fields.width.text} off"
    size = f"{aimed.bare_length(fields.width)} × {aimed.bare_length(fields.depth)}"
    at = f"at the {fields.side}" if fields.side in ("front", "rear") else f"on the {fields.side}"
    return aimed.side(fields, aim) or (f"Step {at}, {size}", f"Step {size}")


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much, in how many layers and cuts, which way."""
    count, width = _cuts(fields)
    layers = reckoned.count("layers")
    shown, unit = common.millimetres(width, setting.units)
    parts = [fields.way]
    dialled = ""
    if fields.path is not None:
        parts.append(f"centre from {' to '.join(place.text for place in fields.path.points)}")
        dialled = common.at_the_dials(setting, _path(fields.path))
        parts.append(dialled)
    if layers > 1 or count > 1:
        in_layers = f"{layers} layers, " if layers > 1 else ""
        parts.append(f"{in_layers}{common.times(count, 'one cut', 'cuts')} of {shown} {unit}")
    parts.append(f"{reckoned.shown('time_each')} each")
    if fields.leave is not None:
        parts.append(f"then {fields.leave.text} off the wall at full depth")
    note = "; ".join(part for part in parts if part)
    do = _words(fields)
    return (
        milling.row(
            fields,
            reckoned,
            setting,
            do=do,
            note=note,
            total=fields.depth.value,
            along=fields.along,
            readings=(dialled,),
        ),
    )


def dials(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, feed handle, depth of a layer."""
    note = common.times(reckoned.count("passes"), "one cut", "cuts")
    return milling.dials(fields.depth.value, reckoned, setting, fields.along, note)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """The metal off that side, or the groove that the cutter leaves inside."""
    if fields.path is not None:
        (x1, y1), (x2, y2) = _path(fields.path)
        return (Groove(x1, y1, x2, y2, milling.diameter_of(fields.cutter), fields.depth.value),)
    return (Edge(fields.side, fields.width.value, fields.depth.value),)


#: A new edge, to be changed.
EXAMPLE = {
    "cutter": "end mill 12 mm, 4 teeth, 30 mm out", "side": "right", "width": "2 mm", "cut": "1 mm",
    "depth": "6 mm", "feed_per_tooth": "0.04 mm", "way": "conventional",
}  # fmt: skip


KIND = Kind(
    name="side-mill", title="Side mill", icon="side-mill", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="side-mill", groups=("milling",),
    roles=Roles(mills="wall", speed="mill", process="side"),
    reads=_reads,
    also=("profile", "step", "shoulder", "outside"),
)  # fmt: skip
