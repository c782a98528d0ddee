"""Asks whether the hole is chamfered before it is tapped."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import NO_CHAMFER
from jobsheet.review.mending.at_hand import at_hand
from jobsheet.review.mending.fixes import Mend, added_before, set_field
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import MOUTHS, WIDER, Chain, HoleStep, holes_of
from jobsheet.review.plan.lengths import for_tool, length, typed
from jobsheet.review.rule import View, remark, rule

_ROUNDING = 1e-6
#: So much wider than its chamfer a countersink is taken [m] (common practice).
_WIDER_BY = 2e-3


@rule("chamfer-before-tap", "Chamfer before the tap", "rework")
def chamfer_before_tap(view: View) -> Iterator[Remark]:
    """A hole is tapped with no chamfer, or wide spot, to at least the thread's diameter before it.

    Because: A chamfer starts the tap straight and stops a raised burr.
    Not so: drill 6.8, tap M8
    So: spot to 8.4, drill 6.8, tap M8
    From: Cutting Tool Engineering, Chamfers and countersinks halt burr formation
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            if step.does != "tap" or step.key in told or how(step.operation, NO_CHAMFER):
                continue
            before = chain.before(step)
            if not before:
                continue  # the hole is in the stock, or tap-drill-before-tap speaks
            wide = max(
                (hole_step.diameter for hole_step in before if hole_step.does in MOUTHS),
                default=0.0,
            )
            if wide >= step.diameter - _ROUNDING:
                continue
            told.add(step.key)
            found = f"the spot is {length(wide, view.job.units)}" if wide else "there is none"
            to = step.diameter + WIDER
            message = (
                f"Chamfer to {length(to, view.job.units)} before {step.fields.thread.text} is tapped: {found}"
            )
            yield remark(
                view, "chamfer-before-tap", message, step.key, set_up=step.set_up, fix=_fix(view, chain, step, to)
            )  # fmt: skip


def _fix(view: View, chain: Chain, tap: HoleStep, to: float) -> Fix:
    """A wider spot where the spot drill is wide enough; else a countersink before the tap."""
    units = view.job.units
    for hole_step in chain.before(tap):
        cutter = hole_step.cutter
        if (
            hole_step.does != "spot"
            or cutter.kind != "spot drill"
            or not cutter.point_angle
            or not cutter.diameter
        ):
            continue
        if cutter.diameter < to or hole_step.set_up != tap.set_up:
            continue
        label = f"Step {hole_step.number}: spot to {length(to, view.job.units)}"
        if getattr(hole_step.fields, "to", None) is not None:
            return Fix(label, set_field(hole_step.key, "to", typed(to, units)), (hole_step.key,))
        deep = math.ceil(to / 2 / math.tan(cutter.point_angle / 2) * 1e5 - 1e-6) / 1e5
        return Fix(label, set_field(hole_step.key, "depth", typed(deep, units)), (hole_step.key,))
    return Fix(f"Add a countersink before {tap.number}", _added(view, tap, to))


def _added(view: View, tap: HoleStep, to: float) -> Mend:
    units = view.job.units
    known = at_hand(view.job, "countersink", to, 10 * to)
    texts = {
        "cutter": known[0][1] if known else f"countersink {_usual(to, units)}, 90°, 3 edges", "at": tap.fields.at.text, "to": typed(to, units),
    }  # fmt: skip
    return added_before(tap.key, written.COUNTERSINK, texts)


def _usual(to: float, units: str) -> str:
    """A countersink that is wider: in whole millimetres, or in eighths of an inch."""
    wide = to + _WIDER_BY
    return for_tool(math.ceil(wide * 1e3 - 1e-6) * 1e-3 if units == "mm" else wide, units, 8)
