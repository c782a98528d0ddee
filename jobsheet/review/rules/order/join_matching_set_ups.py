"""Asks whether the work is taken out and put back the same way."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from itertools import pairwise

from msgspec.structs import replace

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.plan.faces import Plan, plan_of, positions
from jobsheet.review.plan.held import does, holding_roles
from jobsheet.review.rule import View, remark, rule

#: What ends a hold for a reason of its own.
_BETWEEN = ("cool", "take out", "put back", "square up", "check vice", "other")


@rule("join-matching-set-ups", "Join set-ups that match", "rework")
def join_matching_set_ups(view: View) -> Iterator[Remark]:
    """Two set-ups one after the other hold the work in the same way, and nothing between them changes it.

    Quiet where a rest, a check or an outside process stands between them as a step, where the work is turned end
    for end, where any fact of the holding is another, and where nothing is said of the holding.

    Because: Every re-clamping adds a location error.
    Not so: top up, A to the fixed jaw: face; unclamp; top up, A to the fixed jaw: drill
    So: top up, A to the fixed jaw: face and drill
    From: common practice
    """
    plan = plan_of(view)
    groups = list(plan.groups())
    for (set_up, before), (other, behind) in pairwise(groups):
        if not holding_roles(set_up).holds or not _same(set_up, other):
            continue
        if any(does(step.operation, *_BETWEEN) for step in (before[-1], behind[0])):
            continue
        if in_jaws(set_up, before[0].lie) and _changes(plan, set_up):
            continue
        message = f"Set-ups {set_up.number} and {other.number} can be one: finish before unclamping"
        fix = None
        if set_up.zero == other.zero or not any(positions(step.fields) for step in behind):
            fix = Fix(
                f"Join set-ups {set_up.number} and {other.number}",
                partial(_joined, first=set_up.key, second=other.key),
            )
        yield remark(view, "join-matching-set-ups", message, behind[0].key, fix=fix, set_up=other.key)


def _same(set_up: SetUp, other: SetUp) -> bool:
    faces = (set_up.up, set_up.operator, set_up.fixed_jaw) == (other.up, other.operator, other.fixed_jaw)
    return faces and replace(set_up.holding, note="") == replace(other.holding, note="")


def _changes(plan: Plan, set_up: SetUp) -> bool:
    """Whether the set-up itself cuts what the jaws or the parallels touch: then the second hold is another."""
    touched = {set_up.fixed_jaw, OPPOSITE[set_up.fixed_jaw], OPPOSITE[set_up.up]}
    return any(touched & set(step.makes) for step in plan.of(set_up.key))


def _joined(job: Job, first: str, second: str) -> Job:
    """The steps of the second behind those of the first; the zero of whichever has one."""
    found = {set_up.key: set_up for set_up in job.set_ups}
    if first not in found or second not in found:
        return job
    one, other = found[first], found[second]
    zero = one.zero if one.zero.named or one.zero.found else other.zero
    whole = replace(one, zero=zero, operations=(*one.operations, *other.operations))
    rest = tuple(whole if set_up.key == first else set_up for set_up in job.set_ups if set_up.key != second)
    return replace(
        job, set_ups=tuple(replace(set_up, number=number) for number, set_up in enumerate(rest, 1))
    )
