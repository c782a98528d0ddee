"""Asks whether the head is brought back after it was tilted."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import TILTED
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.mending.tram_added import tram_texts
from jobsheet.review.plan.faces import Step, plan_of, trams
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule


@rule("tram-after-a-tilted-head", "Tram after a tilted head", "scrap")
def tram_after_a_tilted_head(view: View) -> Iterator[Remark]:
    """The head was tilted for a step, and a later one needs it upright with no tram check between.

    A step tilts the head, or a cut is done with it tilted; cuts right behind a step by hand that tilts it belong to it, as far as its set-up goes.
    Quiet where the job ends there.

    Because: The scale on the head is not good enough to square by.
    Not so: head tilted for a bevel, then holes in the next set-up
    So: head tilted for a bevel, tram check, then holes
    From: common practice
    """
    plan = plan_of(view)
    tilted: Step | None = None
    for step in plan.steps:
        if trams(step):
            tilted = None
        elif does(step.operation, "tilt head") or how(step.operation, TILTED):
            tilted = step
        elif (
            tilted is not None
            and step.cuts
            and not (tilted.roles.beside == "bench" and step.set_up.key == tilted.set_up.key)
        ):
            message = f"Bring the head back and check the tram: step {tilted.number} tilted it"
            texts = {**tram_texts(view.job.units, "15 min"), "note": "bring it back upright first"}
            fix = Fix(f"Add a tram check before {step.number}", added_before(step.key, written.TRAM, texts))
            yield remark(
                view,
                "tram-after-a-tilted-head",
                message,
                step.key,
                tilted.key,
                fix=fix,
                set_up=step.set_up.key,
            )
            tilted = None
