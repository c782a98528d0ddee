"""All limits of an operation, the nearest to giving out first."""

from __future__ import annotations

from jobsheet.limits import hand_pace, quill_push, speed_range, spindle_power, spindle_torque
from jobsheet.limits.verdict import nearness
from jobsheet.model.figures import Figures, Limit
from jobsheet.model.setting import Setting

LIMITS = (spindle_torque, spindle_power, hand_pace, quill_push, speed_range)


def limits_of(figures: Figures, setting: Setting) -> tuple[Limit, ...]:
    """Every limit that applies, sorted by nearness; limits of one share stand in the order above."""
    found = [made for module in LIMITS if (made := module.limit(figures, setting)) is not None]
    return tuple(sorted(found, key=lambda one: (_no_load(one), *nearness(one))))


def _no_load(limit: Limit) -> bool:
    """A speed that the machine has is no load: it stands last."""
    return limit.name == "speed-range" and limit.verdict == "expected"


def governing(limits: tuple[Limit, ...]) -> Limit | None:
    """The one nearest to giving out; None where nothing is loaded."""
    for one in limits:
        if one.verdict != "unknown" and not _no_load(one):
            return one
    return None
