"""Which remarks a change ends, which it leaves and which it brings: told by rule
and step, not by their words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from msgspec import Struct

from jobsheet.model.job import Job
from jobsheet.model.remark import Remark

#: A rule and what it speaks of: the first step, else the set-up, else the whole job.
Place = tuple[str, str]


class Differing(Struct, frozen=True, kw_only=True):
    """Two readings of one plan, before a change and after it."""

    ends: tuple[Remark, ...]
    leaves: tuple[Remark, ...]
    brings: tuple[Remark, ...]


def place(remark: Remark) -> Place:
    """What tells it from others."""
    line = f"line {remark.line}" if remark.line is not None else ""
    return remark.rule, remark.operations[0] if remark.operations else remark.set_up or line


def differing(before: Sequence[Remark], after: Sequence[Remark], job: Job, changed: Job) -> Differing:
    """What a change does to the remarks.

    A remark that a step of the job passes on to one that is added before it was there already: the hole still
    wants its spot, only that another drill begins it now.
    """
    now, was = Counter(map(place, after)), Counter(map(place, before))
    gone, come = was - now, now - was
    for former, new in _passed_on(gone, come, job, changed):
        amount = min(gone[former], come[new])
        gone[former] -= amount
        come[new] -= amount
    brings, ends = _drawn(after, come), _drawn(before, gone)
    return Differing(
        ends=ends, leaves=tuple(remark for remark in after if remark not in brings), brings=brings
    )


def _passed_on(
    gone: Counter[Place], come: Counter[Place], job: Job, changed: Job
) -> tuple[tuple[Place, Place], ...]:
    """A place that went and the one that came for it: of the same rule, in
    the same set-up, at an added step.
    """
    old = {operation.key: set_up.key for set_up, operation in job.operations()}
    new = {
        operation.key: set_up.key for set_up, operation in changed.operations() if operation.key not in old
    }
    found: dict[Place, Place] = {}
    for rule, key in come:
        home = new.get(key)
        former = next(
            (one for one in gone if one[0] == rule and _home(one, old) == home and one not in found), None
        )
        if home is not None and former is not None:
            found[former] = (rule, key)
    return tuple(found.items())


def _home(one: Place, homes: dict[str, str]) -> str:
    """The set-up that a place is in; a place may be a set-up itself."""
    return homes.get(one[1], one[1])


def _drawn(remarks: Iterable[Remark], wanted: Counter[Place]) -> tuple[Remark, ...]:
    """As many remarks of each place as are wanted."""
    left = Counter(wanted)
    found = []
    for remark in remarks:
        if left[place(remark)] > 0:
            left[place(remark)] -= 1
            found.append(remark)
    return tuple(found)
