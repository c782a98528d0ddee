"""Asks whether a pocket is cut before its face is down."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Groove, Recess, Slab
from jobsheet.review.mending.fixes import all_moved_before
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: A face that is lowered by no more is only cleaned [m] (sequencing rules, the row of this rule).
LOWERED = 1e-3


@rule("open-cuts-before-pockets", "Open cuts before pockets", "rework")
def open_cuts_before_pockets(view: View) -> Iterator[Remark]:
    """A pocket or slot is cut from a face that a later step of the same set-up lowers by over a millimetre.

    Because: Short cutters first; nobody cuts the pocket deeper than it is.
    Not so: pocket 10 deep, then 3 off the top
    So: 3 off the top, then the pocket
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        for index, step in enumerate(steps):
            if not any(isinstance(sized.shape, Groove | Recess) for sized in step.cut.shapes):
                continue
            later = [step for step in steps[index + 1 :] if set_up.up in step.makes]
            down = sum(
                sized.shape.depth
                for step in later
                for sized in step.cut.shapes
                if isinstance(sized.shape, Slab)
            )
            if down <= LOWERED + 1e-9:
                continue
            message = f"Lower the face first, then the pocket: step {later[0].number} takes {length(down, view.job.units)} off it afterwards"
            fix = Fix(
                f"Move {', '.join(str(step.number) for step in later)} before {step.number}",
                all_moved_before(tuple(step.key for step in later), step.key),
            )
            yield remark(
                view, "open-cuts-before-pockets", message, step.key, later[0].key, fix=fix, set_up=set_up.key
            )
            break
