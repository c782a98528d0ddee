"""Asks whether a hole with a close place is bored."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import BUSH
from jobsheet.review.mending.at_hand import drill_sold
from jobsheet.review.mending.fixes import added_after, added_before, in_turn, set_field
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import Chain, HoleStep, holes_of
from jobsheet.review.plan.lengths import fine, for_tool, typed
from jobsheet.review.plan.reamer_room import room
from jobsheet.review.rule import View, remark, rule

#: What boring takes on the diameter [m] (common practice, no source).
BORED = 0.5e-3


@rule("bore-for-a-close-position", "Bore for a close place", "scrap")
def bore_for_a_close_position(view: View) -> Iterator[Remark]:
    """A hole whose place has closer limits than spot and drill can hold, without boring. The number is the workshop's.

    Because: A reamer keeps to the hole it finds; boring puts it where the spindle is.
    Not so: spot, drill, ream at a place within ±0.02
    So: spot, drill, bore, then ream
    From: MSC Industrial Supply, technical article 5976; common practice
    """
    told: set[str] = set()
    limit = view.reckoned.shop.close_place
    for chain in holes_of(view.reckoned).chains:
        if any(step.does in ("bore", "tap") for step in chain.steps):
            continue
        drills = [step for step in chain.steps if step.does in ("drill", "ream")]
        close = min(
            (_place(hole_step) for hole_step in drills if _place(hole_step) is not None), default=None
        )  # type: ignore[type-var]
        if close is None or close >= limit * (1 - 1e-9) or drills[-1].key in told:
            continue
        last = drills[-1]
        if any(how(hole_step.operation, BUSH) for hole_step in drills):
            continue
        told.add(last.key)
        message = f"±{fine(close, view.job.units)} is too close for drilling: spot, drill, bore"
        message += ", then ream" if last.does == "ream" else ""
        yield remark(
            view, "bore-for-a-close-position", message, last.key, set_up=last.set_up, fix=_fix(view, chain, last)
        )  # fmt: skip


def _place(step: HoleStep) -> float | None:
    """What the place of a step may be off either way [m]."""
    within = getattr(step.fields, "within", None)
    tolerances = getattr(step.fields, "tolerances", None)
    found = [float(within.value)] if within is not None else []
    if tolerances is not None and tolerances.position is not None:
        found.append(float(tolerances.position))
    return min(found) if found else None


def _fix(view: View, chain: Chain, last: HoleStep) -> Fix | None:
    """A boring step before the reamer, to its usual stock; or after the last drill, which then is smaller."""
    drill = next((step for step in reversed(chain.steps) if step.does == "drill"), None)
    if drill is None or last.fields.depth is None:
        return None
    units = view.job.units
    stock = room(last.diameter)[0] if last.does == "ream" else 0.0
    to = round((last.diameter - stock) * 1e5) / 1e5
    wanted = round((to - BORED) / 0.1e-3) * 0.1e-3
    smaller, line = drill_sold(wanted, to - 2 * BORED, to - BORED / 2, units)
    texts = {
        "cutter": f"boring bar {for_tool(round(last.diameter * 600) / 1e3, units)}", "at": last.fields.at.text, "to": typed(to, units),
        "depth": last.fields.depth.text, "within": _within(drill, last),
    }  # fmt: skip
    add = (
        added_before(last.key, written.BORE, texts)
        if last.does == "ream"
        else added_after(last.key, written.BORE, texts)
    )
    return Fix(
        f"Drill {typed(smaller, units)}, bore to {typed(to, units)}", in_turn(set_field(drill.key, "cutter", line), add),
        (drill.key,),
    )  # fmt: skip


def _within(*steps: HoleStep) -> str:
    return next(
        (step.fields.within.text for step in steps if getattr(step.fields, "within", None) is not None), ""
    )
