"""Edits of several steps or whole set-ups at once, each one step of undo: take
out, move, double, put in, repeat.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.commands import operation_of, set_up_of, with_set_up
from jobsheet.edit.numbering import in_words, new_key, new_set_up_key, numbers_between, numbers_for
from jobsheet.edit.step_commands import numbered
from jobsheet.errors import CommandError
from jobsheet.model.job import Job, Operation, SetUp


class DeleteSteps(Struct, frozen=True):
    """Take steps out, wherever they stand; set-ups stay."""

    keys: tuple[str, ...]
    label: str = "take out steps"
    merge_key: str = ""

    def named(self, before: Job, _after: Job) -> str:
        """With the numbers that they had."""
        return f"{self.label.removesuffix(' steps')} {in_words(numbers_in(before, self.keys))}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        for key in self.keys:
            operation_of(job, key)
        gone = set(self.keys)
        return replace(job, set_ups=tuple(_without(set_up, gone) for set_up in job.set_ups))


class MoveSteps(Struct, frozen=True):
    """Move steps, in their order, to a place in a set-up, counted without the steps themselves."""

    keys: tuple[str, ...]
    set_up_key: str
    index: int
    label: str = "move steps"
    merge_key: str = ""

    def named(self, before: Job, _after: Job) -> str:
        """With the numbers that they had."""
        return f"move {in_words(numbers_in(before, self.keys))}"

    def apply(self, job: Job) -> Job:
        """The next job; the same where they stand there already."""
        moved = steps_in(job, self.keys)
        target = set_up_of(job, self.set_up_key)
        rest = _without(target, set(self.keys))
        index = max(0, min(self.index, len(rest.operations)))
        wanted = [*keys_of(rest.operations[:index]), *keys_of(moved), *keys_of(rest.operations[index:])]
        if wanted == keys_of(target.operations):
            return job
        without = DeleteSteps(self.keys).apply(job)
        return put_in(without, self.set_up_key, index, moved)


class DuplicateSteps(Struct, frozen=True):
    """The same steps once more, all of them behind the last."""

    keys: tuple[str, ...]
    label: str = "duplicate steps"
    merge_key: str = ""

    def named(self, before: Job, _after: Job) -> str:
        """With the numbers of those that were doubled."""
        return f"duplicate {in_words(numbers_in(before, self.keys))}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        steps = steps_in(job, self.keys)
        if not steps:
            return job
        set_up, last = operation_of(job, steps[-1].key)
        return put_in(job, set_up.key, set_up.operations.index(last) + 1, anew(job, steps))


class InsertSteps(Struct, frozen=True):
    """Put steps in behind a step, at the front of a set-up, or at its end where
    `at_end`; keys and numbers are made free.
    """

    steps: tuple[Operation, ...]
    set_up_key: str
    after_key: str | None = None
    at_end: bool = False
    label: str = "paste steps"
    merge_key: str = ""

    def named(self, before: Job, after: Job) -> str:
        """With the numbers that they got."""
        known = {operation.key for _, operation in before.operations()}
        return f"paste {in_words(operation.number for _, operation in after.operations() if operation.key not in known)}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up = set_up_of(job, self.set_up_key)
        keys = keys_of(set_up.operations)
        index = len(keys) if self.at_end else keys.index(self.after_key) + 1 if self.after_key in keys else 0
        return put_in(job, set_up.key, index, anew(job, self.steps))


class InsertSetUps(Struct, frozen=True):
    """Put whole set-ups in behind one of the job, or at the end; keys and numbers are made free."""

    set_ups: tuple[SetUp, ...]
    after_key: str | None = None
    label: str = "paste set-ups"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job."""
        keys = [set_up.key for set_up in job.set_ups]
        index = keys.index(self.after_key) + 1 if self.after_key in keys else len(keys)
        for place, set_up in enumerate(self.set_ups, index):
            job = _with_set_up_at(job, set_up, place)
        return numbered(job)


class RepeatSetUp(Struct, frozen=True):
    """The same set-up with its steps once more, right behind it."""

    key: str
    label: str = "repeat the set-up"
    merge_key: str = ""

    def named(self, before: Job, _after: Job) -> str:
        """With its number."""
        return f"repeat set-up {set_up_of(before, self.key).number}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        return InsertSetUps((set_up_of(job, self.key),), self.key).apply(job)


# --- what they share ---


def keys_of(operations: tuple[Operation, ...]) -> list[str]:
    """The keys of some steps."""
    return [operation.key for operation in operations]


def steps_in(job: Job, keys: tuple[str, ...]) -> tuple[Operation, ...]:
    """The steps of these keys in the order of the job; an edit that names one that is gone is refused."""
    for key in keys:
        operation_of(job, key)
    return tuple(operation for _, operation in job.operations() if operation.key in keys)


def numbers_in(job: Job, keys: tuple[str, ...]) -> list[int]:
    """Their numbers in the order of the job."""
    return [operation.number for operation in steps_in(job, keys)]


def anew(job: Job, steps: tuple[Operation, ...]) -> tuple[Operation, ...]:
    """The same steps with keys that the job has not; their numbers come with their place."""
    made: list[Operation] = []
    known = {operation.key for _, operation in job.operations()}
    for step in steps:
        key, count = new_key(job, step.kind), 1
        while key in known:
            count += 1
            key = f"{step.kind}-{count}"
        known.add(key)
        made.append(replace(step, key=key))
    return tuple(made)


def put_in(job: Job, set_up_key: str, index: int, steps: tuple[Operation, ...]) -> Job:
    """The job with steps put in at a place of a set-up and numbered between their neighbours."""
    if not steps:
        raise CommandError("There is no step to put in.")
    set_up = set_up_of(job, set_up_key)
    numbers = numbers_for(job, set_up, index, len(steps))
    made = tuple(replace(operation, number=number) for operation, number in zip(steps, numbers, strict=True))
    operations = (*set_up.operations[:index], *made, *set_up.operations[index:])
    return with_set_up(job, replace(set_up, operations=operations))


def _without(set_up: SetUp, gone: set[str]) -> SetUp:
    """A set-up without some steps; the very same where it has none of them."""
    left = tuple(operation for operation in set_up.operations if operation.key not in gone)
    return set_up if len(left) == len(set_up.operations) else replace(set_up, operations=left)


def _with_set_up_at(job: Job, set_up: SetUp, index: int) -> Job:
    """The job with a copy of a set-up at a place, its steps numbered after those before it."""
    before = [operation.number for other in job.set_ups[:index] for operation in other.operations]
    everything = [operation.number for _, operation in job.operations()]
    steps = anew(job, set_up.operations)
    numbers = numbers_between(before, everything, len(steps)) if steps else ()
    made = replace(
        set_up,
        key=new_set_up_key(job),
        number=0,
        operations=tuple(
            replace(operation, number=number) for operation, number in zip(steps, numbers, strict=True)
        ),
    )
    return replace(job, set_ups=(*job.set_ups[:index], made, *job.set_ups[index:]))
