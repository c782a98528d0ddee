"""Where the adviser starts and how far it may go: speeds of the machine, feeds from the
catalogue down to what still cuts.
"""

from __future__ import annotations

from math import floor
from typing import Any

from msgspec.structs import replace

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.cutting.speed import cone_diameter
from jobsheet.machine.spindle import at_speed, lowest, steps
from jobsheet.model.material import Material
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import advice
from jobsheet.reckoning import what_if
from jobsheet.reckoning.adviser.layer_lines import A_HAIR
from jobsheet.reckoning.what_if import tried

#: A step so far above the speed to start from is still taken: steps of pulleys are 1.6
#: apart (common practice, no source).
OVER = 1.1
#: The feed per tooth is never lowered under this share of its start value, a drill's under
#: that (common practice, no source).
LEAST_TOOTH, LEAST_DRILL = 0.35, 0.4
#: A stepless drive is tried at these shares of its fastest speed, to ten turns a minute.
_SLOWER = (0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 0.1)
_TEN = 10 / 60


def speed_first(material: Material) -> bool:
    """Whether the speed drops before the feed: a thin chip rubs and hardens the one, and heats what burns."""
    return material.work_hardens or material.family in ("magnesium", "titanium")


def feed_of(plays: Roles, fields: Any, setting: Setting) -> Suggestion | None:
    """The feed per tooth of a milling cutter or the feed per turn of another tool
    that the catalogue starts from [m].
    """
    cutter = fields.cutter
    if plays.mills:
        return advice.table_feed_per_tooth(cutter, setting, between_walls=plays.between_walls)
    if (wide := spot_of(fields)) is not None:
        cutter = replace(cutter, diameter=min(wide, cutter.diameter))
        return advice.table_feed_per_turn("spot drill", cutter, setting)
    return advice.table_feed_per_turn(plays.feed, cutter, setting)


def spot_of(fields: Any) -> float | None:
    """The diameter of the spot that a spot drill cuts [m]: its feed goes by that; None for a
    centre drill, which goes by its pilot.
    """
    cutter, to, depth = fields.cutter, getattr(fields, "to", None), getattr(fields, "depth", None)
    if cutter.kind != "spot drill":
        return None
    if to is not None:
        return float(to.value)
    if depth is None or depth.value is None or not cutter.point_angle:
        return None
    return cone_diameter(depth=depth.value, point_angle=cutter.point_angle)


def speeds_of(
    kind: str, fields: Any, setting: Setting, pinned: frozenset[str] = frozenset()
) -> tuple[tuple[float, str], ...]:
    """Speeds to be tried [rev/s] with their texts, the fastest first; the slowest where all are too fast.

    A speed that is typed stays, also where it is a cutting speed: then the program sets the spindle by it.
    """
    if "spindle" in pinned:
        return ((fields.spindle.value, fields.spindle.text),)
    if "cutting_speed" in pinned:
        speed = tried(kind, what_if.at_speed(fields, None), setting).value("spindle_speed")
        return ((speed or lowest(setting.machine), ""),)
    wanted = tried(kind, what_if.at_speed(fields, None), setting).value("wanted_speed")
    if fields.cutter.marked_speed and wanted is not None:
        wanted = min(wanted, fields.cutter.marked_speed / OVER)
    known = steps(setting.machine)
    if known:
        under = [
            speed for speed in known if wanted is not None and speed.speed <= wanted * OVER * (1 + A_HAIR)
        ]
        if not under:  # chosen, not typed: then it is judged by what the cutter wants
            return ((known[0].speed, ""),)
        return tuple((speed.speed, f"{speed.marked} rpm") for speed in reversed(under))
    least = lowest(setting.machine)
    top = least
    if wanted is not None:
        found = tried(
            kind, what_if.at_speed(fields, max(least, floor(wanted / _TEN + A_HAIR) * _TEN)), setting
        )
        top = found.value("spindle_speed") or least
    shares = (floor(top * share / _TEN + A_HAIR) * _TEN for share in _SLOWER)
    found_speeds = dict.fromkeys((top, *(share for share in shares if share >= least), least))
    return tuple(
        (speed, f"{speed * 60:.0f} rpm")
        for speed in found_speeds
        if at_speed(setting.machine, speed) is not None
    )


def roles_of(kind: str, fields: object) -> Roles:
    """What the step is to others."""
    return kind_of(kind).plays(fields)
