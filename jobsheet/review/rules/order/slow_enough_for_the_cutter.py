"""Asks whether the machine can turn slowly enough for a cutter."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.machine.spindle import lowest
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.shared.common import start_speed
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.cuts import with_diameter
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.rule import View, remark, rule

#: So far above the speed that was asked for the slowest may lie (sequencing rules, the row of this rule).
SHARE = 1.25
_MILLS = (3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80)


@rule("slow-enough-for-the-cutter", "Slow enough for the cutter", "rework")
def slow_enough_for_the_cutter(view: View) -> Iterator[Remark]:
    """The slowest speed of this machine gives more than a quarter over the cutting speed asked for.

    Quiet where no cutting speed is known for this metal and cutter.

    Because: A bench mill that bottoms out too high burns large HSS cutters in steel.
    Not so: a 63 mm HSS cutter in steel on a machine that turns 180 rpm at least
    So: a 25 mm one
    From: common practice
    """
    for step in plan_of(view).steps:
        cutter = getattr(step.fields, "cutter", None)
        plays = step.roles
        if not plays.speed or cutter is None or not cutter.diameter:
            continue
        typed = getattr(step.fields, "cutting_speed", None)
        start = None if typed else start_speed(step.setting, cutter, plays.speed)
        asked = typed.value if typed else start and start * plays.speed_share
        slowest = lowest(step.setting.machine)
        least = math.pi * cutter.diameter * slowest
        if not asked or least <= SHARE * asked:
            continue
        message = (
            f"This machine cannot go slow enough: {slowest * 60:.0f} rpm gives {least * 60:.0f} m/min where {asked * 60:.0f} is"
            " asked; a smaller cutter or another machine"
        )
        yield remark(
            view,
            "slow-enough-for-the-cutter",
            message,
            step.key,
            fix=_smaller(step, asked, slowest),
            set_up=step.set_up.key,
        )


def _smaller(step: Step, asked: float, slowest: float) -> Fix | None:
    """A milling cutter of a common size that is slow enough; a hole's size is not ours to change."""
    if step.roles.mills not in ("flat", "wall"):
        return None
    most = SHARE * asked / (math.pi * slowest) * 1e3
    fitting = [size for size in _MILLS if size <= most]
    text = with_diameter(step.fields.cutter, f"{fitting[-1]} mm") if fitting else ""
    return Fix(f"A cutter of {fitting[-1]} mm", set_field(step.key, "cutter", text)) if text else None
