"""Asks whether the machine can turn slowly enough for a cutter."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.machine.spindle import lowest
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import with_diameter
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import edge_speeds
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.units.table import INCH

#: Common sizes of milling cutters, by what a bare number means (common practice).
_MILLS = {
    "mm": (3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80),
    "in": (0.125, 0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3),
}
_SIZE = {"mm": 1e-3, "in": INCH}


@rule("slow-enough-for-the-cutter", "Slow enough for the cutter", "rework", needs=Needs.FIGURES)
def slow_enough_for_the_cutter(view: View) -> Iterator[Remark]:
    """At the slowest speed of this machine the edge runs faster than is published for this cutter and metal.

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
        edge = step.outcome.figures.edge if step.outcome.figures is not None else None
        slowest = lowest(step.setting.machine)
        least = math.pi * cutter.diameter * slowest
        if edge is None or least <= edge.top * (1 + 1e-9):
            continue
        gives, most = edge_speeds(least, edge.top, view.job.units)
        message = (
            f"This machine cannot go slow enough: {slowest * 60:.0f} rpm gives {gives} where {most} is"
            " the most; a smaller cutter or another machine"
        )
        yield remark(
            view,
            "slow-enough-for-the-cutter",
            message,
            step.key,
            fix=_smaller(step, edge.top, slowest, view.job.units),
            set_up=step.set_up.key,
        )


def _smaller(step: Step, top: float, slowest: float, units: str) -> Fix | None:
    """A milling cutter of a common size that is slow enough; a hole's size is not ours to change."""
    if step.roles.mills not in ("flat", "wall"):
        return None
    most = top / (math.pi * slowest) / _SIZE[units]
    fitting = [size for size in _MILLS[units] if size <= most]
    text = with_diameter(step.fields.cutter, f"{fitting[-1]:g} {units}") if fitting else ""
    return Fix(f"A cutter of {fitting[-1]:g} {units}", set_field(step.key, "cutter", text)) if text else None
