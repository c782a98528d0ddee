"""Asks whether the zero that places count from is found in their set-up."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before, moved_before
from jobsheet.review.mending.zero_step import finding_texts
from jobsheet.review.plan.faces import Plan, Step, finds_zero, plan_of, positions
from jobsheet.review.plan.held import does, fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("find-the-zero-here", "Find the zero in its set-up", "scrap")
def find_the_zero_here(view: View) -> Iterator[Remark]:
    """Places are counted from a zero that no step finds before them in this set-up.

    Quiet where the work comes against the same stop with the same zero as in a set-up before, and where nothing says where the zero
    is: then the zero itself is asked for. What a hand vice holds is marked out and punched: the drill finds the punch mark, no dial.

    Because: The dials still count from the work before, and every hole is off by as much as this one lies elsewhere.
    Not so: clamp, spot, drill
    So: clamp, find the edges, spot, drill
    From: common practice
    """
    plan = plan_of(view)
    set_ups: list[SetUp] = []
    for set_up, steps in plan.groups():
        finders = [step for step in steps if finds_zero(step)]
        first = next((step for step in steps if positions(step.fields)), None)
        if finders:
            set_ups.append(set_up)
        if first is None or (finders and finders[0].index < first.index):
            continue
        if not finders and (_nothing_named(set_up) or any(_same_stop(set_up, other) for other in set_ups)):
            continue
        if holding_roles(set_up).drills_only and _marked_out(plan, first):
            continue
        message = (
            "Find the zero before this step: places are counted here, and nothing finds it in this set-up"
            + (" until later" if finders else "")
        )
        yield remark(
            view, "find-the-zero-here", message, first.key, set_up=set_up.key, fix=_fix(plan, set_up, first, finders)
        )  # fmt: skip


def _nothing_named(set_up: SetUp) -> bool:
    """Of that name-the-datum speaks."""
    return not (set_up.zero.named.strip() or set_up.zero.found.strip())


def _marked_out(plan: Plan, first: Step) -> bool:
    """Whether the places were scribed and punched before, on the face that is up."""
    return any(
        does(step.operation, "mark out") and step.lie.up == first.lie.up for step in plan.steps[: first.index]
    )


def _same_stop(one: SetUp, other: SetUp) -> bool:
    """Whether both count from the same zero at the same stop, the work lying the same way: another face at the stop is another zero."""
    stops = (fact(one, "stop"), fact(other, "stop"))
    zeros = [
        (set_up.zero.x_from, set_up.zero.y_from, set_up.zero.x_counts, set_up.zero.y_counts)
        for set_up in (one, other)
    ]
    return (
        stops[0] is not None
        and stops[0] == stops[1]
        and zeros[0] == zeros[1]
        and (one.up, one.operator) == (other.up, other.operator)
        and one.holding.kind == other.holding.kind
    )


def _fix(plan: Plan, set_up: SetUp, first: Step, finders: list[Step]) -> Fix:
    """Places count from the work as it is when its edges are found: with that they come to lie elsewhere."""
    counted = tuple(operation.key for operation in set_up.operations)
    if finders:
        mend = moved_before(finders[0].key, first.key)
        return Fix(f"Move {finders[0].number} before {first.number}", mend, counted)
    adding = added_before(first.key, written.FIND, finding_texts(plan.job, set_up))
    return Fix(f"Find the edges before {first.number}", adding, counted)
