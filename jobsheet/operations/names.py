"""How each figure is called and shown: title, what it measures, unit and decimals by the job's units."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from jobsheet.units.show import plain, significant
from jobsheet.units.table import BY_SPELLING, KINDS


class Named(NamedTuple):
    """One figure's name for people; decimals None means three significant digits."""

    title: str
    measures: str
    metric: str
    inch: str
    decimals: int | None = None
    inch_decimals: int | None = None


FIGURES: dict[str, Named] = {
    "spindle_speed": Named("Spindle speed", "spindle speed", "rpm", "rpm", 0, 0),
    "wanted_speed": Named("Speed from the cutting speed", "spindle speed", "rpm", "rpm", 0, 0),
    "cutting_speed": Named("Cutting speed", "cutting speed", "m/min", "ft/min", 1, 0),
    "feed_per_tooth": Named("Feed per tooth", "feed per tooth", "mm", "in", 3, 4),
    "feed_per_turn": Named("Feed per turn", "feed per turn", "mm", "in", 3, 4),
    "table_feed": Named("Table feed", "feed", "mm/min", "in/min", 0, 2),
    "down_feed": Named("Feed down", "feed", "mm/min", "in/min", 0, 2),
    "handle_pace": Named("Handle pace", "spindle speed", "turns a minute", "turns a minute", 1, 1),
    "seconds_a_turn": Named("One turn of the handle", "time", "s", "s", 2, 2),
    "chip_thickness": Named("Mean chip thickness", "length", "mm", "thou", 4, 2),
    "specific_force": Named("Specific cutting force", "pressure", "MPa", "MPa", 0, 0),
    "width_of_cut": Named("Widest pass", "length", "mm", "in", 2, 4),
    "half_tip": Named("Half the tip", "length", "mm", "in", 2, 4),
    "wind_on": Named("Wound on from the edge", "length", "mm", "in", 2, 4),
    "tilt": Named("Tilt of the head", "angle", "°", "°", 4, 4),
    "hollow": Named("Hollow of the face", "length", "µm", "thou", 1, 3),
    "crown": Named("Height of the crown", "length", "mm", "in", 3, 4),
    "passes": Named("Passes", "share", "", "", 0, 0),
    "layers": Named("Layers", "share", "", "", 0, 0),
    "path_length": Named("Length of a pass", "length", "mm", "in", 0, 2),
    "removal_rate": Named("Metal removed", "removal rate", "cm³/min", "in³/min", 2, 3),
    "volume": Named("Metal to remove", "volume", "cm³", "in³", 2, 3),
    "power": Named("Power at the cutter", "power", "W", "W", 0, 0),
    "torque": Named("Torque", "torque", "N·m", "N·m", 2, 2),
    "last_power": Named("Power of the last cut", "power", "W", "W", 0, 0),
    "last_torque": Named("Torque of the last cut", "torque", "N·m", "N·m", 2, 2),
    "torque_peak": Named("Torque, peak", "torque", "N·m", "N·m", 2, 2),
    "feed_force": Named("Force along the feed, mean", "force", "N", "N", 0, 0),
    "in_plane_peak": Named("Force across the cutter, peak", "force", "N", "N", 0, 0),
    "lift": Named("Lift, peak", "force", "N", "N", 0, 0),
    "teeth_in_cut": Named("Teeth in cut, mean", "share", "", "", 3, 3),
    "cutting_stiffness": Named("Asked of the frame", "stiffness", "N/µm", "N/µm", 2, 2),
    "cutter_stiffness": Named("Stiffness of the cutter", "stiffness", "N/µm", "N/µm", 2, 2),
    "wall_error": Named("Error of the wall", "length", "µm", "thou", 0, 2),
    "bending_stress": Named("Bending stress of the cutter", "pressure", "MPa", "MPa", 0, 0),
    "bending_share": Named("Share of the cutter's strength", "share", "%", "%", 0, 0),
    "finish": Named("Height of the feed marks", "length", "µm", "thou", 2, 3),
    "finish_run_out": Named("The same, one tooth proud", "length", "µm", "thou", 2, 3),
    "second_power": Named("Power by the second method", "power", "W", "W", 0, 0),
    "second_torque": Named("Torque by the second method, sharp", "torque", "N·m", "N·m", 2, 2),
    "second_thrust": Named("Thrust by the second method, sharp", "force", "N", "N", 0, 0),
    "method_ratio": Named("One method to the other", "share", "", "", 2, 2),
    "thrust": Named("Thrust", "force", "N", "N", 0, 0),
    "lever_push": Named("Push at the quill lever", "force", "N", "N", 0, 0),
    "feed_at_easy_push": Named("Feed from an easy push", "feed per turn", "mm", "in", 3, 4),
    "effective_diameter": Named("Diameter at the surface", "length", "mm", "in", 2, 4),
    "pilot": Named("Hole already there", "length", "mm", "in", 2, 4),
    "ream_stock": Named("Left for the reamer, on the diameter", "length", "mm", "in", 2, 4),
    "cut_on_diameter": Named("Cut on the diameter", "length", "mm", "in", 2, 4),
    "bar_spring": Named("The bar gives way by", "length", "µm", "thou", 0, 2),
    "point_torque": Named("Torque on the point alone", "torque", "N·m", "N·m", 2, 2),
    "drill_strength": Named("Torque that breaks the drill", "torque", "N·m", "N·m", 1, 1),
    "drill_strength_share": Named("Share of the drill's strength", "share", "%", "%", 0, 0),
    "hole_depth": Named("Depth drilled", "length", "mm", "in", 2, 3),
    "strokes": Named("Pecks", "share", "", "", 0, 0),
    "time_each": Named("Time for one", "time", "s", "s", 0, 0),
    "cutting_time": Named("Time in the cut", "time", "min", "min", 1, 1),
    "percent_thread": Named("Height of thread", "share", "%", "%", 0, 0),
    "tap_drill": Named("Tap drill", "length", "mm", "in", 3, 4),
    "tap_strength": Named("Torque that breaks the tap", "torque", "N·m", "N·m", 1, 1),
    "wrench_easy": Named("Wrench, comfortable", "torque", "N·m", "N·m", 1, 1),
    "wrench_strong": Named("Wrench, strong", "torque", "N·m", "N·m", 1, 1),
    "bench_minutes": Named("Time at the bench", "time", "min", "min", 0, 0),
}


def si_unit(name: str) -> str:
    """The SI unit a figure's value is in, as `figures --json` gives it."""
    return KINDS[FIGURES[name].measures][1]


def show(name: str, value: float, units: str) -> str:
    """A figure as text, in the job's units."""
    size, decimals, behind = _written(name, units)
    number = value / size
    return (significant(number) if decimals is None else plain(number, decimals)) + behind


@cache
def _written(name: str, units: str) -> tuple[float, int | None, str]:
    """What a figure is divided by, its decimals, and what stands behind it: looked
    up once, shown thousands of times.
    """
    named = FIGURES[name]
    unit, decimals = (named.metric, named.decimals) if units == "mm" else (named.inch, named.inch_decimals)
    if not unit:
        return 1.0, decimals or 0, ""
    return BY_SPELLING[named.measures, unit].size, decimals, f"{'' if unit == '°' else ' '}{unit}"
