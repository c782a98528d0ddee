"""A fix tried before it is offered: the changed plan reckoned and read, and what came of it. The
one place that says what is a fix.

It is offered only where no remark of its own is left, none is new, no limit comes out worse, and
the finished part is the same but for what the remark is about. Tried when a remark is looked at,
never at an edit; remembered by value.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from difflib import SequenceMatcher
from typing import Any

from msgspec import Struct

from jobsheet.model.figure import Limit
from jobsheet.model.job import Job
from jobsheet.model.not_checked import alone
from jobsheet.model.remark import Fix, Remark
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.remembered import forgotten_with_the_plan
from jobsheet.review.engine import reviewed
from jobsheet.review.mending.fixes import NotMended
from jobsheet.review.mending.same_part import TOLERANCE, elsewhere
from jobsheet.review.mending.same_place import Differing, differing, place

#: So many are kept: those of the row that is open, and of the last few keys of undo.
_KEPT = 64
Facts = Sequence[Any] | None


class _Plan(Struct, frozen=True):
    """A plan as it is judged here: what was reckoned, every remark, and what the solids say."""

    job: Job
    reckoned: Reckoned
    remarks: tuple[Remark, ...]
    facts: Facts


class FixTried(Struct, frozen=True, kw_only=True):
    """What a fix comes to. `why_not` is a sentence where it is not offered, and
    then `job` is the plan as it was.
    """

    fix: Fix
    job: Job
    ends: tuple[Remark, ...] = ()
    leaves: tuple[Remark, ...] = ()
    why_not: str = ""

    @property
    def offered(self) -> bool:
        """Whether it may be pressed."""
        return not self.why_not


#: Verdicts from good to bad; what nobody knows lies between.
_RANK = {"cut before": 0, "expected": 0, "tight": 2, "beyond": 3}
_UNKNOWN = 1

_last: list[_Plan] = []
forgotten_with_the_plan(_last.clear)
#: So many remarks that a fix brings are mended with it, one after the other.
_FOLLOWED = 3

_known: OrderedDict[tuple[Any, ...], tuple[tuple[Any, ...], FixTried]] = OrderedDict()
forgotten_with_the_plan(_known.clear)


def fix_tried(remark: Remark, job: Job, reckoned: Reckoned, facts: Facts) -> FixTried | None:
    """What the first fix of a remark that may be offered comes to in this plan, else
    its first; None where it has none.

    Parameters
    ----------
    job : Job
        The plan as it is typed: what a step leaves empty stays empty in the changed plan
    facts : sequence of `stages.checks.Fact`, or None
        What the solids of the plan say; without them the changed plan is read without its solids too
    """
    if not remark.fixes:
        return None
    around = _around(reckoned)
    labels = tuple(fix.label for fix in remark.fixes)
    about = (remark.rule, remark.operations, remark.set_up, remark.message, labels)
    key = (job, reckoned.job, about, facts is not None)
    known = _known.get(key)
    if known is not None and all(a is b for a, b in zip(known[0], around, strict=True)):
        _known.move_to_end(key)
        return known[1]
    found = _first_offered(remark, job, reckoned, facts)
    _known[key] = (around, found)
    while len(_known) > _KEPT:
        _known.popitem(last=False)
    return found


def _first_offered(remark: Remark, job: Job, reckoned: Reckoned, facts: Facts) -> FixTried:
    tried: list[FixTried] = []
    for fix in remark.fixes:
        found = alone(
            lambda fix=fix: _tried(remark, fix, job, reckoned, facts),  # type: ignore[misc]
            lambda why, fix=fix: FixTried(fix=fix, job=job, why_not=f"it could not be tried: {why}"),  # type: ignore[misc]
        )
        if found.offered:
            return found
        tried.append(found)
    return tried[0]


def _around(reckoned: Reckoned) -> tuple[Any, ...]:
    """What a plan is reckoned with beside itself: card, proof and workshop, remembered objects all."""
    setting = next(iter(reckoned.settings.values()), None)
    return reckoned.shop, setting.machine if setting else None, setting.proof if setting else None


def _tried(remark: Remark, fix: Fix, job: Job, reckoned: Reckoned, facts: Facts) -> FixTried:
    before = _before(job, reckoned, facts)
    try:
        after = _changed(before, job, fix)
    except NotMended as error:
        return FixTried(fix=fix, job=job, why_not=str(error))
    if after.job == job:
        return FixTried(fix=fix, job=job, why_not="it would change nothing")
    about, reshapes = set(remark.operations), set(fix.reshapes)
    first, said = after, differing(before.remarks, after.remarks, job, after.job)
    read = said
    for _ in range(_FOLLOWED):
        followed = _followed(before, after, read.brings)
        if followed is None:
            break
        after, by = followed
        about |= set(by.operations)
        reshapes |= set(by.fixes[0].reshapes)
        read = differing(before.remarks, after.remarks, job, after.job)
    if read.brings:  # what was brought is said as it was brought first
        after, read = first, said
    lost = _tools(job) - _tools(after.job) - set(remark.operations)
    why = (
        ("a step would lose its tool" if lost else "")
        or _left(remark, read)
        or _brought(read, after.job)
        or _worse(before, after)
        or _other_part(about, reshapes, before, after)
    )
    if why:
        return FixTried(fix=fix, job=job, why_not=why)
    changed = after.job
    whole = Fix(fix.label, lambda one: changed if one == job else fix.mend(one), tuple(sorted(reshapes)))
    return FixTried(fix=whole, job=changed, ends=read.ends, leaves=read.leaves)


def _before(job: Job, reckoned: Reckoned, facts: Facts) -> _Plan:
    """The plan as it is, read once for all of its fixes."""
    if _last and _last[0].reckoned is reckoned and _last[0].facts is facts:
        return _last[0]
    _last[:] = [_Plan(job, reckoned, _all(job, reckoned, facts), facts)]
    return _last[0]


def _changed(before: _Plan, job: Job, fix: Fix) -> _Plan:
    """The plan after a fix, reckoned and read; the very same job where it changes nothing."""
    changed = fix.mend(job)
    if changed == job:
        return _Plan(job, before.reckoned, before.remarks, before.facts)
    reckoner = Reckoner(before.reckoned.shop)
    for setting in before.reckoned.settings.values():
        reckoner.take_proof(setting.machine.name, setting.proof)
        break
    reckoned = reckoner.reckon(changed)
    facts = _facts(reckoned, before.facts)
    return _Plan(changed, reckoned, _all(changed, reckoned, facts), facts)


def _followed(before: _Plan, after: _Plan, brings: tuple[Remark, ...]) -> tuple[_Plan, Remark] | None:
    """The plan with what mends the first remark that was brought; None where
    none was, or nothing mends it.
    """
    if not brings or not brings[0].fixes:
        return None
    try:
        plan = _changed(before, after.job, brings[0].fixes[0])
    except NotMended:
        return None
    lost = _tools(after.job) - _tools(plan.job)  # a tool is never the price of mending another one
    return (plan, brings[0]) if plan.job != after.job and not lost else None


def _tools(job: Job) -> set[str]:
    """The steps that have a tool."""
    return {
        operation.key
        for _, operation in job.operations()
        if getattr(operation.fields, "cutter", None) is not None
    }


def _facts(reckoned: Reckoned, facts: Facts) -> Facts:
    if facts is None:
        return None
    from jobsheet.review.plan.solid_facts import facts_of

    return facts_of(reckoned.job, reckoned)


def _all(job: Job, reckoned: Reckoned, facts: Facts) -> tuple[Remark, ...]:
    """Every remark, also what was set aside: that nobody minds one does not make another like it welcome."""
    read = reviewed(job, reckoned, facts)
    return (*read.open, *(remark for remark, _ in read.aside))


def _left(remark: Remark, read: Differing) -> str:
    """Its own rule may speak at its place only of what it spoke of before beside it."""
    if all(place(end) != place(remark) for end in read.ends):
        now = next((leave for leave in read.leaves if place(leave) == place(remark)), None)
        return "the remark would stay" + (
            f": {now.message}" if now is not None and now.message != remark.message else ""
        )
    return ""


def _brought(read: Differing, changed: Job) -> str:
    if not read.brings:
        return ""
    first = read.brings[0]
    numbers = {operation.key: operation.number for _, operation in changed.operations()}
    at = (
        f"step {numbers[first.operations[0]]}: "
        if first.operations and first.operations[0] in numbers
        else ""
    )
    return f"it would bring another remark, {at}{first.message}"


def _worse(before: _Plan, after: _Plan) -> str:
    """A limit with a worse word than before, or a step that cannot be calculated any more."""
    for _, operation in after.job.operations():
        new, old = after.reckoned.operations[operation.key], before.reckoned.operations.get(operation.key)
        if new.problem and (old is None or not old.problem):
            return f"step {operation.number} could not be calculated then: {new.problem.rstrip('.')}"
        was = {limit.name: limit for limit in old.limits} if old is not None else None
        worst = next((limit for limit in new.limits if _is_worse(limit, was)), None)
        if worst is not None:
            said = f" ({worst.sentence})" if worst.sentence else ""
            return f"step {operation.number} would come out {worst.verdict} then: {worst.title.lower()}{said}"
    return ""


def _is_worse(limit: Limit, was: dict[str, Limit] | None) -> bool:
    """An added step has nothing to be compared with: of it nothing may be beyond."""
    if was is None:
        return limit.verdict == "beyond"
    old = was.get(limit.name)
    if limit.verdict == "not tried" and old is not None and old.from_class:
        return False  # both rest on the class alone: it says where to begin, not that anything gives out
    return _RANK.get(limit.verdict, _UNKNOWN) > (
        _RANK.get(old.verdict, _UNKNOWN) if old is not None else _UNKNOWN
    )


def _moved(old: tuple[str, ...], new: tuple[str, ...]) -> set[str]:
    """Steps that are added, taken out, or stand elsewhere among those that stay."""
    stay = {
        key
        for block in SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
        for key in old[block.a : block.a + block.size]
    }
    return (set(old) | set(new)) - stay


def _other_part(about: set[str], reshapes: set[str], before: _Plan, after: _Plan) -> str:
    """Where the finished part is another than it may be; unknown, and then
    nothing, while there are no solids.
    """
    if before.facts is None:
        return ""
    old, new = (tuple(operation.key for _, operation in plan.job.operations()) for plan in (before, after))
    keys = set(reshapes)
    if old != new:  # what is moved or added is what the remark is about
        keys |= about | _moved(old, new)
    off = elsewhere(before.reckoned, after.reckoned, keys, moves=bool(reshapes))
    return f"the finished part would be another by {off:.0f} mm³" if off > TOLERANCE else ""
