"""All limits of an operation, the nearest to giving out first."""

from __future__ import annotations

from typing import Any

from jobsheet.limits.each import (
    chatter,
    cutter_bending,
    cutting_speed,
    flute_length,
    hand_pace,
    headroom,
    holder_grip,
    holding,
    marked_speed,
    quill_push,
    reverse,
    speed_range,
    spindle_power,
    spindle_torque,
    table_load,
    table_push,
    torsion,
    travel,
    wall_error,
    wrench,
)
from jobsheet.limits.verdict import nearness
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

LIMITS = (
    reverse, holder_grip, spindle_torque, spindle_power, hand_pace, quill_push, holding, wrench, torsion, cutter_bending,
    wall_error, flute_length, marked_speed, table_push, headroom, travel, table_load, speed_range, cutting_speed, chatter,
)  # fmt: skip


#: Limits that trials teach: they are told which process it is.
LEARNING = (spindle_torque, spindle_power, chatter)
#: All that any limit reads of a setting; each says its own.
READS: frozenset[str] = frozenset().union(*(module.READS for module in LIMITS))
#: What every limit says of one operation, in the order above; None where it does not apply.
Asked = tuple[Limit | None, ...]
#: Limits that ask whether something fits, not how hard it is loaded.
FITS = frozenset(
    {"speed-range", "cutting-speed", "marked-speed", "flute-length", "headroom", "travel", "table-load"}
)


def limits_of(figures: Figures, setting: Setting, fields: Any = None, process: str = "") -> tuple[Limit, ...]:
    """Every limit that applies, sorted by nearness; limits of one share stand in the order above.

    `process` is the kind of cut that is proved (`side`, `drill` …), or empty where it is none of them.
    """
    return in_order(asked(figures, setting, fields, process))


def asked(figures: Figures, setting: Setting, fields: Any = None, process: str = "") -> Asked:
    """What every limit says."""
    return tuple(_ask(module, figures, setting, fields, process) for module in LIMITS)


def asked_again(
    before: Asked, changed: frozenset[str], figures: Figures, setting: Setting, fields: Any, process: str
) -> Asked:
    """The same where only this of the setting has changed: no limit is asked that does not read it."""
    return tuple(
        was if module.READS.isdisjoint(changed) else _ask(module, figures, setting, fields, process)
        for module, was in zip(LIMITS, before, strict=True)
    )


def _ask(module: Any, figures: Figures, setting: Setting, fields: Any, process: str) -> Limit | None:
    found: Limit | None = (
        module.limit(figures, setting, fields, process)
        if module in LEARNING
        else module.limit(figures, setting, fields)
    )
    return found


def in_order(said: Asked) -> tuple[Limit, ...]:
    """Those that apply, the nearest to giving out first."""
    found = [one for one in said if one is not None]
    return tuple(sorted(found, key=lambda one: (_behind(one), *nearness(one))))


def _behind(limit: Limit) -> int:
    """What is expected from the class alone stands behind what is known of the machine, what only has to fit last."""
    return 2 if _no_load(limit) else int(_by_class_alone(limit))


def _by_class_alone(limit: Limit) -> bool:
    """What machines of the class carry says nothing of this one: where it is expected it never governs."""
    return limit.from_class and limit.verdict == "expected"


def _no_load(limit: Limit) -> bool:
    """What only has to fit is no load: where it does, it stands behind and never governs."""
    return limit.name in FITS and limit.verdict == "expected"


def governing(limits: tuple[Limit, ...]) -> Limit | None:
    """The one nearest to giving out; None where nothing is loaded."""
    for one in limits:
        if not _behind(one):
            return one
    return None
