"""Edits of steps and set-ups: add, duplicate, delete, move, number; each a
frozen value, and nobody writes an undo.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.commands import SetField, operation_of, set_up_of, with_set_up
from jobsheet.edit.numbering import in_words, new_key, new_set_up_key, numbers_for
from jobsheet.edit.photograph_commands import without_owner
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.holdings.all_holdings import held_alike
from jobsheet.holdings.placed import own_vice
from jobsheet.model.held_work import NOTHING, Holding
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.adviser.left_empty import given_back
from jobsheet.storage.card_files import find_card


class AddOperation(Struct, frozen=True):
    """A new operation of that kind behind another one, at the front, or at the end of its set-up.

    `texts` stand in its form in place of the example's: fields by name, as typed.
    """

    set_up_key: str
    kind: str
    after_key: str | None = None
    merge_key: str = ""
    texts: tuple[tuple[str, str], ...] = ()
    at_front: bool = False

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"add {kind_of(self.kind).title.lower()}"

    def named(self, before: Job, after: Job) -> str:
        """With the number that it got."""
        known = {operation.key for _, operation in before.operations()}
        made = [operation.number for _, operation in after.operations() if operation.key not in known]
        return f"{self.label}, {in_words(made)}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up = set_up_of(job, self.set_up_key)
        key, kind = new_key(job, self.kind), kind_of(self.kind)
        made = Operation(key=key, number=0, kind=self.kind, fields=kind.blank(job.units))
        left = given_back(made)  # cutter, place and depth are enough: the rest is as recommended
        made = left if left is not None else made
        job = _inserted(job, set_up, made, self.after_key, at_front=self.at_front)
        for name, text in self.texts:
            job = SetField(key, name, text).apply(job)
        return job


class AddSetUp(Struct, frozen=True):
    """A new set-up behind another one, or at the end."""

    after: str | None = None
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "add a set-up"

    def apply(self, job: Job) -> Job:
        """The next job."""
        index = len(job.set_ups)
        if self.after is not None:
            index = (
                next((i for i, set_up in enumerate(job.set_ups) if set_up.key == self.after), index - 1) + 1
            )
        held = held_alike(job.set_ups[index - 1].holding) if index else _own_vice(job)
        made = SetUp(key=new_set_up_key(job), number=0, holding=held)
        return numbered(replace(job, set_ups=(*job.set_ups[:index], made, *job.set_ups[index:])))


def _own_vice(job: Job) -> Holding:
    try:
        return own_vice(find_card(job.machine))
    except JobsheetError:
        return NOTHING


class DeleteSetUp(Struct, frozen=True):
    """Take out a set-up with all its steps."""

    key: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "take out the set-up"

    def named(self, before: Job, _after: Job) -> str:
        """With the set-up's number."""
        return f"take out set-up {set_up_of(before, self.key).number}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up_of(job, self.key)
        if len(job.set_ups) == 1:
            raise CommandError("A job keeps at least one set-up.")
        left = replace(job, set_ups=tuple(set_up for set_up in job.set_ups if set_up.key != self.key))
        return numbered(without_owner(left, self.key))


class MoveSetUp(Struct, frozen=True):
    """Move a set-up with all its steps to another place; steps keep their
    numbers until they are renumbered.
    """

    key: str
    index: int
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "move the set-up"

    def named(self, before: Job, _after: Job) -> str:
        """With the number that it had."""
        return f"move set-up {set_up_of(before, self.key).number}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        moved = set_up_of(job, self.key)
        rest = [set_up for set_up in job.set_ups if set_up.key != self.key]
        rest.insert(max(0, min(self.index, len(rest))), moved)
        return numbered(replace(job, set_ups=tuple(rest)))


class Renumber(Struct, frozen=True):
    """Number all steps 10, 20, 30 in cutting order: a sheet printed before no longer fits."""

    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "number the steps anew"

    def apply(self, job: Job) -> Job:
        """The next job."""
        number = 0
        set_ups = []
        for set_up in job.set_ups:
            operations = []
            for operation in set_up.operations:
                number += 10
                operations.append(
                    operation if operation.number == number else replace(operation, number=number)
                )
            set_ups.append(replace(set_up, operations=tuple(operations)))
        return replace(job, set_ups=tuple(set_ups))


def step_words(job: Job, key: str) -> str:
    """A step by its number, as Undo calls it."""
    return in_words([operation_of(job, key)[1].number])


def numbered(job: Job) -> Job:
    """Set-ups are numbered in their order."""
    return replace(
        job,
        set_ups=tuple(
            set_up if set_up.number == index else replace(set_up, number=index)
            for index, set_up in enumerate(job.set_ups, 1)
        ),
    )


def _inserted(job: Job, set_up: SetUp, made: Operation, after: str | None, *, at_front: bool = False) -> Job:
    """The job with an operation put in and numbered between its neighbours."""
    index = len(set_up.operations)
    if at_front:
        index = 0
    elif after is not None:
        index = (
            next((i for i, operation in enumerate(set_up.operations) if operation.key == after), index - 1)
            + 1
        )
    made = replace(made, number=numbers_for(job, set_up, index)[0])
    operations = (*set_up.operations[:index], made, *set_up.operations[index:])
    return with_set_up(job, replace(set_up, operations=operations))
