"""Asks whether a hole is reamed where it was drilled."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import BORE, FLOATING
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import Mend, taken_out, with_set_up
from jobsheet.review.plan.held import does, how
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.rule import View, remark, rule


@rule("ream-in-the-drilling-set-up", "Ream before unclamping", "scrap")
def ream_in_the_drilling_set_up(view: View) -> Iterator[Remark]:
    """A hole that is drilled in one set-up and reamed in a later one, with nothing that picks it up again.

    Because: Finding the centre again costs more than the tolerance.
    Not so: drill, unclamp, clamp again, ream
    So: drill, ream, unclamp
    From: common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            drill = next((one for one in reversed(chain.before(step)) if one.does == "drill"), None)
            if step.does != "ream" or drill is None or drill.set_up == step.set_up or step.key in told:
                continue
            if _picked_up(view.job, step) or how(step.operation, FLOATING):
                continue
            told.add(step.key)
            message = f"Drilled in step {drill.number} and reamed in another set-up: ream before unclamping"
            yield remark(
                view, "ream-in-the-drilling-set-up", message, step.key, drill.key, set_up=step.set_up, fix=_fix(view.job, step, drill)
            )  # fmt: skip


def _picked_up(job: Job, step: HoleStep) -> bool:
    """Whether a step of the same set-up finds the hole again."""
    set_up = next(one for one in job.set_ups if one.key == step.set_up)
    for operation in set_up.operations:
        if operation.key == step.key:
            return set_up.zero.stands_on in ("a bore", "another hole")
        if does(operation, "find zero") and (roles(operation).beside == "bench" or how(operation, BORE)):
            return True
        if does(operation, "square up"):
            return True
    return False


def _fix(job: Job, step: HoleStep, drill: HoleStep) -> Fix | None:
    """Right behind the drill, in a set-up that counts its places in the same way."""
    here, there = (next(one for one in job.set_ups if one.key == which.set_up) for which in (step, drill))
    if here.zero != there.zero or (here.up, here.operator) != (there.up, there.operator):
        return None
    return Fix(f"Move {step.number} behind {drill.number}", _into(step.key, drill))


def _into(key: str, drill: HoleStep) -> Mend:
    """The step out of its own set-up and right behind the last drill of its hole."""

    def mend(job: Job) -> Job:
        moved = job.find(key)[1]
        job = taken_out(key)(job)
        home = next((one for one in job.set_ups if one.key == drill.set_up), None)
        if home is None:
            return job
        index = (
            next(
                (i for i, one in enumerate(home.operations) if one.key == drill.key), len(home.operations) - 1
            )
            + 1
        )
        taken = {one.number for _, one in job.operations()}
        low = home.operations[index - 1].number
        number = next(one for one in range(low + 1, low + len(taken) + 2) if one not in taken)
        rows = (*home.operations[:index], replace(moved, number=number), *home.operations[index:])
        return with_set_up(job, replace(home, operations=rows))

    return mend
