"""Asks whether a hole with close limits is finished by more than a drill."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.at_hand import at_hand, drill_near
from jobsheet.review.mending.fixes import Mend, added_after, in_turn, set_field
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.plan.reamer_room import drill_for, room
from jobsheet.review.rule import View, remark, rule


@rule("ream-or-bore-a-close-hole", "Ream or bore a close hole", "scrap")
def ream_or_bore_a_close_hole(view: View) -> Iterator[Remark]:
    """A hole with close limits whose last cut is a drill's. What is close is the workshop's number.

    Because: Drills cut oversize and out of round.
    Not so: drill 16 H7
    So: drill 15.7, ream 16 H7
    From: MSC Industrial Supply, technical article 5976
    """
    told: set[str] = set()
    close = view.reckoned.shop.close_limits
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            size = getattr(step.fields, "measure", None)
            if step.does != "drill" or size is None or step.key in told or step.cutter.kind != "drill":
                continue
            if not 0 < size.high - size.low < close * (1 - 1e-9):
                continue
            if abs(size.nominal - step.diameter) > 0.1 * step.diameter:
                continue  # a size of something else, such as a place
            if any(hole_step.does in ("ream", "bore", "drill", "plunge") for hole_step in chain.after(step)):
                continue
            told.add(step.key)
            message = f"A drill does not hold {size.said}: drill under size, then ream or bore"
            yield remark(
                view, "ream-or-bore-a-close-hole", message, step.key, set_up=step.set_up, fix=_fix(view, step)
            )


def _fix(view: View, step: HoleStep) -> Fix:
    size = step.fields.measure
    low, high = room(size.nominal)
    found, line = drill_near(view.job, drill_for(size.nominal), size.nominal - high, size.nominal - low)
    drill = typed(found, view.job.units)
    reamers = at_hand(view.job, "reamer", size.nominal, size.nominal)
    texts = {
        "cutter": reamers[0][1] if reamers else f"reamer {_reamer(size.said, size.nominal, view.job.units)}", "at": step.fields.at.text, "depth": step.fields.depth.text,
        "measure": size.text, "feed_per_edge": typed(0.05e-3, view.job.units),
    }  # fmt: skip
    mend: Mend = in_turn(
        set_field(step.key, "cutter", line),
        set_field(step.key, "measure", ""),
        added_after(step.key, written.REAM, texts),
    )
    return Fix(f"Drill {drill}, then ream", mend)


def _reamer(text: str, nominal: float, units: str) -> str:
    """A reamer's size: with its fit where one was written."""
    words = text.split()
    return text if words[-1][0] in "HJKMN" else length(nominal, units)
