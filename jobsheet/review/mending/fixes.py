"""What mends a plan: functions that make, of what is asked for, a function Job -> Job.

A mend never loses a step: where the step or set-up that it is about is gone, the job stays as it is. It
raises nothing but `NotMended`, with a sentence that says why there is no better plan of this kind.
Rows change places and their numbers stay where they are; a step from another set-up
comes in a copy of its own set-up.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import count
from typing import Any

from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.holdings.all_holdings import changed_to, entries_of
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import laid
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.stock.all_shapes import changed as stock_changed
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout

Mend = Callable[[Job], Job]


class NotMended(JobsheetError):
    """Nothing better of this kind is to be had here; the words go behind `No fix is offered:`."""


_JOB: dict[str, tuple[Entry, ...]] = {"part": layout.PART}
_SET_UP: dict[str, tuple[Entry, ...]] = {
    "setup": layout.SET_UP,
    "holding": (),
    "zero": layout.ZERO,
}


def in_turn(*mends: Mend) -> Mend:
    """One mend after the other, as one."""

    def mend(job: Job) -> Job:
        for one in mends:
            job = one(job)
        return job

    return mend


# --- fields ---


def set_field(owner: str, name: str, text: str) -> Mend:
    """One field as it would be typed; `owner` is a step's key, `job`, `job:part`,
    `holding:set-up-1`, `zero:` or `setup:`.
    """

    def mend(job: Job) -> Job:
        try:
            return _with_field(job, owner, name, text)
        except (JobsheetError, KeyError, StopIteration):
            return job

    return mend


def _with_field(job: Job, owner: str, name: str, text: str) -> Job:
    section, _, key = owner.partition(":")
    if section == "job":
        if not key:
            return replace(job, **{name: _read(layout.JOB, name, text, job.units) or ""})
        if key == "stock":
            value = _read(stock_entries(job.stock), name, text, job.units)
            return replace(job, stock=stock_changed(job.stock, name, value))
        part = getattr(job, key)
        return replace(job, **{key: _changed(part, name, _read(_JOB[key], name, text, job.units))})
    if section in _SET_UP and key:
        set_up = next(set_up for set_up in job.set_ups if set_up.key == key)
        if section == "holding":
            if name == "kind":
                return with_set_up(job, replace(set_up, holding=changed_to(set_up.holding, text, job.units)))
            value = _read(entries_of(set_up.holding), name, text, job.units)
        else:
            value = _read(_SET_UP[section], name, text, job.units)
        if section == "setup":
            return with_set_up(job, laid(_changed(set_up, name, value)))
        return with_set_up(job, replace(set_up, **{section: _changed(getattr(set_up, section), name, value)}))
    _, operation = job.find(owner)
    value = _read(kind_of(operation.kind).entries, name, text, job.units)
    return with_operation(job, replace(operation, fields=_changed(operation.fields, name, value)))


def _read(entries: tuple[Entry, ...], name: str, text: str, units: str) -> Any:
    return next(entry for entry in entries if entry.name == name).read(text, units)


def _changed(fields: Any, name: str, value: Any) -> Any:
    """Fields with one value changed; nothing goes back to what it is when never filled in."""
    if value is None:
        defaults = type(fields).__struct_defaults__
        names = type(fields).__struct_fields__[-len(defaults) :] if defaults else ()
        value = dict(zip(names, defaults, strict=True)).get(name)
    return replace(fields, **{name: value})


# --- rows ---


def moved_before(key: str, before: str) -> Mend:
    """A step right before another one."""
    return lambda job: _moved(job, (key,), before, behind=0)


def moved_after(key: str, after: str) -> Mend:
    """A step right behind another one."""
    return lambda job: _moved(job, (key,), after, behind=1)


def all_moved_before(keys: tuple[str, ...], before: str) -> Mend:
    """Steps of one set-up, in their order, right before another step."""
    return lambda job: _moved(job, keys, before, behind=0)


def all_moved_after(keys: tuple[str, ...], after: str) -> Mend:
    """Steps of one set-up, in their order, right behind another step."""
    return lambda job: _moved(job, keys, after, behind=1)


def _moved(job: Job, keys: tuple[str, ...], other: str, *, behind: int) -> Job:
    home, there = _home(job, keys[0]) if keys else None, _home(job, other)
    if home is None or there is None or other in keys:
        return job
    moved = tuple(operation for operation in home.operations if operation.key in keys)
    rest = [operation for operation in home.operations if operation.key not in keys]
    if home.key == there.key:
        index = next(i for i, operation in enumerate(rest) if operation.key == other) + behind
        rest[index:index] = moved
        numbers = sorted(operation.number for operation in home.operations)
        made = tuple(
            replace(operation, number=number) for operation, number in zip(rest, numbers, strict=True)
        )
        return with_set_up(job, replace(home, operations=made))
    if not any(
        roles(operation).beside != "bench" for operation in rest
    ):  # the whole set-up goes: nothing else is cut in it
        return moved_set_up(home.key, there.key, behind=behind)(job)
    alone = replace(home, key=_new_set_up_key(job), operations=moved)
    job = with_set_up(job, replace(home, operations=tuple(rest)))
    index = _index(job, there.key) + behind
    return _numbered(replace(job, set_ups=(*job.set_ups[:index], alone, *job.set_ups[index:])))


def moved_set_up(key: str, other: str, *, behind: int = 0) -> Mend:
    """A set-up with all its steps right before another one, or behind it."""

    def mend(job: Job) -> Job:
        rest = [set_up for set_up in job.set_ups if set_up.key != key]
        if len(rest) == len(job.set_ups) or key == other or all(set_up.key != other for set_up in rest):
            return job
        moved = next(set_up for set_up in job.set_ups if set_up.key == key)
        rest.insert(next(i for i, set_up in enumerate(rest) if set_up.key == other) + behind, moved)
        return _numbered(replace(job, set_ups=tuple(rest)))

    return mend


def taken_out(key: str) -> Mend:
    """The job without this step."""

    def mend(job: Job) -> Job:
        home = _home(job, key)
        if home is None:
            return job
        return with_set_up(
            job,
            replace(
                home, operations=tuple(operation for operation in home.operations if operation.key != key)
            ),
        )

    return mend


def added_before(before: str, kind: str, texts: dict[str, str]) -> Mend:
    """A new step of that kind right before another one; `texts` as they would be
    typed, what is left out stays empty.
    """
    return lambda job: _added(job, before, kind, texts, behind=0)


def added_after(after: str, kind: str, texts: dict[str, str]) -> Mend:
    """A new step right behind another one."""
    return lambda job: _added(job, after, kind, texts, behind=1)


def _added(job: Job, other: str, kind: str, texts: dict[str, str], *, behind: int) -> Job:
    home = _home(job, other)
    if home is None:
        return job
    made = kind_of(kind)
    try:
        fields = fields_from(made.fields, made.entries, texts, job.units)
    except (JobsheetError, TypeError):
        return job
    keys = {operation.key for _, operation in job.operations()}
    key = next(f"{kind}-{n}" for n in range(1, len(keys) + 2) if f"{kind}-{n}" not in keys)
    index = next(i for i, operation in enumerate(home.operations) if operation.key == other) + behind
    number = _free_number(job, home, index)
    step = Operation(key=key, number=number, kind=kind, fields=fields)
    return with_set_up(
        job, replace(home, operations=(*home.operations[:index], step, *home.operations[index:]))
    )


def _free_number(job: Job, home: SetUp, index: int) -> int:
    """A number between those of the neighbours, the middle where there is room;
    else the nearest free one above.
    """
    taken = {operation.number for _, operation in job.operations()}
    low = home.operations[index - 1].number if index else 0
    higher = [number for number in taken if number > low]
    high = min(higher) if higher else low + 20
    free = [number for number in range(low + 1, high) if number not in taken]
    if free:
        fives = [number for number in free if number % 5 == 0]
        return min(fives or free, key=lambda number: abs(number - (low + high) / 2))
    return next(number for number in count(high) if number not in taken)


# --- the job around them ---


def with_set_up(job: Job, changed: SetUp) -> Job:
    """The job with one set-up changed; everything else is the very same object."""
    return replace(
        job, set_ups=tuple(changed if set_up.key == changed.key else set_up for set_up in job.set_ups)
    )


def with_operation(job: Job, changed: Operation) -> Job:
    """The job with one step changed."""
    home = _home(job, changed.key)
    if home is None:
        return job
    return with_set_up(
        job,
        replace(
            home,
            operations=tuple(
                changed if operation.key == changed.key else operation for operation in home.operations
            ),
        ),
    )


def _home(job: Job, key: str) -> SetUp | None:
    for set_up in job.set_ups:
        if any(operation.key == key for operation in set_up.operations):
            return set_up
    return None


def _index(job: Job, key: str) -> int:
    return next(index for index, set_up in enumerate(job.set_ups) if set_up.key == key)


def _new_set_up_key(job: Job) -> str:
    keys = {set_up.key for set_up in job.set_ups}
    return next(f"set-up-{n}" for n in range(1, len(keys) + 2) if f"set-up-{n}" not in keys)


def _numbered(job: Job) -> Job:
    """Set-ups are numbered in their order."""
    return replace(
        job,
        set_ups=tuple(
            set_up if set_up.number == index else replace(set_up, number=index)
            for index, set_up in enumerate(job.set_ups, 1)
        ),
    )
