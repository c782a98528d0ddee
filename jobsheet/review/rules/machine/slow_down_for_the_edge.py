"""Asks whether the edge runs faster over the work than it stands."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.limits.each.cutting_speed import BURN
from jobsheet.machine.spindle import lowest, neighbours
from jobsheet.model.figure import Limit
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, finds_zero, plan_of
from jobsheet.review.rule import Needs, View, remark, rule

#: A fix takes the fastest speed at or under so many times the start speed, as
#: the program does (common practice).
_OVER = 1.1


@rule("slow-down-for-the-edge", "Slow down for the edge", "rework", needs=Needs.FIGURES)
def slow_down_for_the_edge(view: View) -> Iterator[Remark]:
    """The cutting speed is over one and a half times what is published for this cutter and metal; in titanium and magnesium over it at all, a hazard.

    So is an edge finder that turns faster than 1000 rpm.

    Quiet where the slowest speed of the machine is too fast already: a rule of its own says so.

    Because: An edge that runs far too fast is gone in minutes, and hot chips of some metals burn.
    Not so: HSS end mill 20 mm at 2300 rpm in mild steel
    So: HSS end mill 20 mm at 350 rpm
    From: common practice
    """
    for step in plan_of(view).steps:
        found = next((limit for limit in step.outcome.limits if limit.name == "cutting-speed"), None)
        finds = finds_zero(step)
        burns = step.setting.material.family in BURN and not finds
        if found is None or found.verdict not in (("tight", "beyond") if burns or finds else ("beyond",)):
            continue
        slowest, turns = lowest(step.setting.machine), step.figure("spindle_speed") or 0.0
        if step.roles.speed and slowest * found.share > turns * (1 + 1e-9):
            continue
        what = "Too fast for an edge finder" if finds else "Too fast for its edge"
        message = f"{what}: {found.shown}. {found.sentence[:1].upper()}{found.sentence[1:]}"
        fix = _slower(step, found, turns)
        said = remark(
            view, "slow-down-for-the-edge", message, step.key, set_up=step.set_up.key,
            fix=fix, others=(best_here(step.operation, step.setting),),
        )  # fmt: skip
        yield replace(said, severity="hazard") if burns else said


def _slower(step: Step, limit: Limit, turns: float) -> Fix | None:
    """The speed that the program would choose; at least one that the edge stands."""
    machine, edge = step.setting.machine, step.outcome.figures.edge if step.outcome.figures else None
    most = turns / limit.share
    start = turns * edge.start * _OVER / limit.demand if edge is not None else most
    below = neighbours(machine, min(start, most) * (1 + 1e-6))[0] or neighbours(machine, most * (1 + 1e-6))[0]
    if below is None:
        return None
    text = f"{below.speed * 60:.0f} rpm"
    return Fix(f"Turn at {text}", set_field(step.key, "spindle", text))
