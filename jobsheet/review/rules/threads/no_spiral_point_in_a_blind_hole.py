"""Asks whether the chips of a tap have somewhere to go."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import with_spiral_flute
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("no-spiral-point-in-a-blind-hole", "No spiral point in a blind hole", "scrap")
def no_spiral_point_in_a_blind_hole(view: View) -> Iterator[Remark]:
    """A spiral-point tap in a blind hole with less than one diameter of spare depth.

    Because: It pushes its chips ahead of it, and packed chips break taps.
    Not so: spiral-point tap M8, 16 deep in a hole of 20
    So: spiral-flute tap M8, 16 deep in a hole of 20
    From: common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            if (
                step.does != "tap"
                or step.depth is None
                or step.cutter.style != "spiral point"
                or step.key in told
            ):
                continue
            before = chain.hole_before(step)
            if before is None or before.depth is None:
                continue
            spare = before.depth - step.depth
            if spare >= step.diameter - 1e-7:
                continue
            told.add(step.key)
            text = with_spiral_flute(step.cutter.text)
            message = f"A spiral point pushes its chips ahead, and {length(max(spare, 0.0), view.job.units)} is left below: take a spiral-flute or plain tap"
            yield remark(
                view, "no-spiral-point-in-a-blind-hole", message, step.key, set_up=step.set_up,
                fix=Fix("Take a spiral-flute tap", set_field(step.key, "cutter", text)),
            )  # fmt: skip
