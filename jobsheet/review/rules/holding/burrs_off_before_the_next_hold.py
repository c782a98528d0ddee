"""Asks whether burrs come off before a face that was cut is held or set down."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.job import SetUp
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge, Groove, Hole, Recess
from jobsheet.operations import written
from jobsheet.operations.manners import BROKEN
from jobsheet.review.mending.fixes import Mend, added_after, in_turn
from jobsheet.review.plan.faces import Plan, Step, plan_of
from jobsheet.review.plan.held import does, holding_roles, how
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import NEAR, is_through


@rule("burrs-off-before-the-next-hold", "Burrs off before the next hold", "rework")
def burrs_off_before_the_next_hold(view: View) -> Iterator[Remark]:
    """A face that was milled, or out of which a hole or the side of a cutter came, lies in a later set-up on jaw, parallels, table or plate, and nothing takes its burrs off in between.

    A step that deburrs, a cut of which it is said that its edges are broken, or a chamfer along the edges takes them off.

    Because: The work stands on its burrs: the next face comes out of square, and the jaw is marked.
    Not so: face the first side, turn it to the fixed jaw, face the second
    So: face the first side, break its edges, turn it to the fixed jaw, face the second
    From: common practice
    """
    plan = plan_of(view)
    found = [
        (step, face, set_up) for set_up, steps in plan.groups() for step, face in _burred(plan, set_up, steps)
    ]
    if not found:
        return
    step, face, later = found[0]
    behind = {step.set_up.key: plan.of(step.set_up.key)[-1] for step, _, _ in found}
    more = len(behind) - 1
    message = (
        f"Break the edges after step {step.number}: {plan.subject(face)} is held or set down in set-up {later.number}, and its burrs"
        f" are still on it{f'; so {_so_many(more)} more' if more else ''}"
    )
    texts = {"does": "deburr", "with_what": "file", "minutes": "2 min"}
    mends: list[Mend] = [added_after(step.key, written.BENCH, texts) for step in behind.values()]
    keys = tuple(dict.fromkeys(step.key for step, _, _ in found))
    yield remark(
        view, "burrs-off-before-the-next-hold", message, *keys, set_up=later.key,
        fix=Fix(f"Deburr after {', '.join(str(step.number) for step in behind.values())}", in_turn(*mends)),
    )  # fmt: skip


def _so_many(more: int) -> str:
    return "once" if more == 1 else f"{more} times"


def _burred(plan: Plan, set_up: SetUp, steps: tuple[Step, ...]) -> Iterator[tuple[Step, str]]:
    """The cuts that left a burr on a face on which this set-up holds or sets down the work, each with that face."""
    plays = holding_roles(set_up)
    if not plays.holds or plays.in_words or plays.chuck or plays.between:
        return
    first = next((step for step in steps if step.cuts), None)
    if first is None:
        return
    lie = first.lie
    faces = [lie.down, *((set_up.fixed_jaw, OPPOSITE[set_up.fixed_jaw]) if in_jaws(set_up, lie) else ())]
    told: set[str] = set()
    for face in faces:
        step = _raises(plan, face, steps[0].index)
        if step is None or step.key in told or _gone(plan, step, first.index):
            continue
        told.add(step.key)
        yield step, face


def _raises(plan: Plan, face: str, before: int) -> Step | None:
    """The last cut before a step that left a burr on that face."""
    return next(
        (step for step in reversed(plan.steps[:before]) if step.cuts and face in _left_on(step)), None
    )


def _left_on(step: Step) -> tuple[str, ...]:
    """The faces on which a cut leaves a burr: what it makes, and where it comes out."""
    out = any(
        (isinstance(sized.shape, Hole | Groove | Recess) and is_through(sized, step.lie.size[2]))
        or (isinstance(sized.shape, Edge) and sized.shape.depth >= step.lie.size[2] - NEAR)
        for sized in step.cut.shapes
        if not (isinstance(sized.shape, Hole) and sized.shape.threaded)
    )
    return (*step.makes, step.lie.down) if out else step.makes


def _gone(plan: Plan, step: Step, until: int) -> bool:
    """Whether the burrs of a cut are taken off before the step of that index."""
    return how(step.operation, BROKEN) or any(
        does(other.operation, "deburr") or how(other.operation, BROKEN) or other.roles.mills == "edge"
        for other in plan.steps[step.index + 1 : until]
    )
