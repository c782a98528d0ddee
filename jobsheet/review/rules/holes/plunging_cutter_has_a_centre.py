"""Asks whether a cutter that plunges cuts to its centre."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.manners import TO_CENTRE
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: A hole of this share of the cutter lets it in (sequencing rules, the row of the entry for a closed slot).
SHARE = 0.8


@rule("plunging-cutter-has-a-centre", "A cutter that plunges has teeth at its centre", "scrap")
def plunging_cutter_has_a_centre(view: View) -> Iterator[Remark]:
    """An end mill of four teeth or more is fed straight down where no hole lets it in.

    Quiet for slot drills, for a cutter that is said to cut to its centre, and in a hole of eight tenths of the cutter.

    Because: Without teeth at the centre the middle is not cut: it rubs, jams and breaks the cutter.
    Not so: plunge with an end mill 10, 4 teeth
    So: plunge with a slot drill 10; or drill 8.5 first
    From: common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            cutter = step.cutter
            blunt = cutter.kind == "end mill" and (cutter.teeth or 0) >= 4
            if step.does not in ("plunge", "drill") or not blunt or step.key in told or not cutter.diameter:
                continue
            before = chain.hole_before(step)
            if how(step.operation, TO_CENTRE):
                continue
            if before is not None and before.diameter >= SHARE * cutter.diameter - 1e-9:
                continue
            told.add(step.key)
            message = (
                f"A cutter of {length(cutter.diameter, view.job.units)} with {cutter.teeth} teeth has none at its centre:"
                " plunge with a slot drill, or drill a hole for it first"
            )
            yield remark(
                view, "plunging-cutter-has-a-centre", message, step.key, set_up=step.set_up,
                by_hand="choose a slot drill, or say under How it is done that the cutter cuts to its centre",
            )  # fmt: skip
