"""Asks whether the bolts or screws of a holding are tightened harder than they stand."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.quantity import Thread
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, size
from jobsheet.review.rule import View, remark, rule

#: Proof stress of class 8.8, which clamping bolts usually are [Pa] (ISO 898-1, from memory).
PROOF = 600e6
#: Nut factor of T = K d F (Shigley, chapter 8, from memory), and which shares of the proof load
#: are usual and the most (the same).
FACTOR, USUAL, MOST = 0.2, 0.75, 0.9
#: Torques that are said are said to the half newton metre.
STEP = 0.5


@rule("no-more-than-the-bolt-stands", "No more than the bolt stands", "hazard")
def no_more_than_the_bolt_stands(view: View) -> Iterator[Remark]:
    """Bolts or screws of the holding are tightened beyond nine tenths of what a bolt of class 8.8 stands.

    Because: An overtightened bolt stretches in its thread and lets go or breaks, often only when the cut shakes it.
    Not so: M6 screws with 40 N·m
    So: M6 screws with 8 N·m
    From: ISO 898-1, proof stress of class 8.8, from memory; T = 0.2 d F, Shigley chapter 8, from memory
    """
    for set_up, steps in plan_of(view).groups():
        torque = size(set_up, "tighten")
        thread = next(
            (one for one in (fact(set_up, "bolt"), fact(set_up, "screw")) if isinstance(one, Thread)), None
        )
        first = next((step for step in steps if step.cuts), None)
        if torque is None or thread is None or first is None or torque <= stands(thread, MOST):
            continue
        usual = STEP * round(stands(thread, USUAL) / STEP)
        message = (
            f"{torque:g} N·m is more than {thread.text} stands: about {usual:g} N·m is usual for class 8.8"
        )
        fix = Fix(
            f"Tighten to {usual:g} N·m", set_field(f"holding:{set_up.key}", "tighten", f"{usual:g} N·m")
        )
        yield remark(view, "no-more-than-the-bolt-stands", message, first.key, set_up=set_up.key, fix=fix)


def stands(thread: Thread, share: float) -> float:
    """The torque that loads a bolt of class 8.8 to a share of its proof load [N m]; its area as ISO 898-1 has it."""
    area = math.pi / 4 * (thread.major - 0.9382 * thread.pitch) ** 2
    return FACTOR * thread.major * share * PROOF * area
