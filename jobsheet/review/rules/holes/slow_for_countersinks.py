"""Asks whether wide form tools turn slowly enough."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.spindle import lowest, neighbours
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.shared.common import start_speed
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import does
from jobsheet.review.plan.lengths import edge_speeds
from jobsheet.review.rule import Needs, View, remark, rule

#: Share of the drilling speed that a form tool may have at its widest (common practice, no source).
MOST = 2 / 3


@rule("slow-for-countersinks", "Slow for countersinks", "rework", needs=Needs.FIGURES)
def slow_for_countersinks(view: View) -> Iterator[Remark]:
    """A countersink or counterbore that cuts at its widest with more than two thirds of the drilling speed in this metal.

    Quiet where it is faster than a drill may run: then the limit of the cutting speed says so.

    Because: Wide form tools chatter at drilling speed.
    Not so: countersink 25 to 17 at 800 rpm in grey iron
    So: countersink 25 to 17 at 190 rpm
    From: common practice; published speeds are a quarter to a half of drilling
    """
    for set_up, operation, outcome in view.steps():
        if does(operation) not in ("countersink", "counterbore") or outcome.figures is None:
            continue
        setting, cut = view.reckoned.settings[operation.key], outcome.figures.value("cutting_speed")
        turns = outcome.figures.value("spindle_speed")
        drilling = start_speed(setting, operation.fields.cutter, "drill")
        if cut is None or turns is None or drilling is None or cut <= drilling * MOST * (1 + 1e-6):
            continue
        if any(limit.name == "cutting-speed" and limit.verdict != "expected" for limit in outcome.limits):
            continue
        if turns <= lowest(setting.machine) * (1 + 1e-6):
            continue
        wanted = turns * drilling * MOST / cut
        below = neighbours(setting.machine, wanted * (1 + 1e-6))[0]
        slower = (
            f"{(below.speed if below is not None else max(wanted, lowest(setting.machine))) * 60:.0f} rpm"
        )
        widest, drill = edge_speeds(cut, drilling, view.job.units)
        message = (
            f"{widest} at its widest, drilling is {drill} here: slow down for countersinks and counterbores"
        )
        yield remark(
            view, "slow-for-countersinks", message, operation.key, set_up=set_up.key,
            fix=Fix(f"Turn at {slower}", set_field(operation.key, "spindle", slower)),
            others=(best_here(operation, setting),),
        )  # fmt: skip
