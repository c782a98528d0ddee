"""Edits as frozen values: each has a label and `apply(job) -> Job`; nobody writes an undo.

The same commands serve the window, the command line and the tests; none needs a display.
"""

from __future__ import annotations

from typing import Any, Protocol

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.storage import layout

#: Header sections by name: where they lie in the job, and their entries.
SECTIONS: dict[str, tuple[Entry, ...]] = {"job": layout.JOB, "part": layout.PART, "stock": layout.STOCK}
SET_UP_SECTIONS: dict[str, tuple[Entry, ...]] = {
    "setup": layout.SET_UP, "holding": layout.HOLDING, "zero": layout.ZERO,
}  # fmt: skip


class Command(Protocol):
    """Anything that makes the next job of a job."""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        ...

    @property
    def merge_key(self) -> str:
        """Commands of one key in a row are one step of undo; empty never merges."""
        ...

    def apply(self, job: Job) -> Job:
        """The next job; raises QuantityError or CommandError and then changes nothing."""
        ...


def owner_of(owner: str) -> tuple[str, str]:
    """What an owner names: `job:part` is a header section, `holding:set-up-1` one of a set-up, else an operation's key."""
    section, _, key = owner.partition(":")
    if section == "job":
        return "job", key or "job"
    if section in SET_UP_SECTIONS and key:
        return section, key
    return "operation", owner


def entry_of(job: Job, owner: str, name: str) -> Entry:
    """The entry that stands behind a field of the window.

    Raises
    ------
    CommandError
        If there is no such owner or field.
    """
    what, key = owner_of(owner)
    if what == "job":
        entries = SECTIONS.get(key, ())
    elif what == "operation":
        entries = kind_of(_operation(job, key)[1].kind).entries
    else:
        entries = SET_UP_SECTIONS[what]
    for entry in entries:
        if entry.name == name:
            return entry
    raise CommandError(f"There is no field {name} in {owner}.")


def value_of(job: Job, owner: str, name: str) -> Any:
    """The value that a field of the window shows."""
    what, key = owner_of(owner)
    if what == "job":
        return getattr(job if key == "job" else getattr(job, key), name)
    if what == "operation":
        return getattr(_operation(job, key)[1].fields, name)
    set_up = _set_up(job, key)
    return getattr(set_up if what == "setup" else getattr(set_up, what), name)


def _operation(job: Job, key: str) -> tuple[SetUp, Operation]:
    try:
        return job.find(key)
    except KeyError:
        raise CommandError("This step is no longer in the job.") from None


def _set_up(job: Job, key: str) -> SetUp:
    for set_up in job.set_ups:
        if set_up.key == key:
            return set_up
    raise CommandError("This set-up is no longer in the job.")


def _with_set_up(job: Job, changed: SetUp) -> Job:
    return replace(job, set_ups=tuple(changed if one.key == changed.key else one for one in job.set_ups))


def _with_operation(job: Job, changed: Operation) -> Job:
    """The job with one operation changed; everything else is the very same object."""
    set_up, _ = _operation(job, changed.key)
    operations = tuple(changed if one.key == changed.key else one for one in set_up.operations)
    return _with_set_up(job, replace(set_up, operations=operations))


class SetField(Struct, frozen=True):
    """What was typed into one field: `owner` as in `owner_of`."""

    owner: str
    name: str
    text: str

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"change {self.name.replace('_', ' ')}"

    @property
    def merge_key(self) -> str:
        """Typing in one field is one step."""
        return f"{self.owner}/{self.name}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        entry = entry_of(job, self.owner, self.name)
        if self.owner == "job" and self.name == "units":
            return ChangeUnits(entry.read(self.text, job.units)).apply(job)
        if self.owner == "job" and self.name == "machine":
            return ChooseMachine(self.text).apply(job)
        value = entry.read(self.text, job.units)
        what, key = owner_of(self.owner)
        if what == "operation":
            _, operation = _operation(job, key)
            fields = _changed(operation.fields, self.name, value, entry)
            return _with_operation(job, replace(operation, fields=fields))
        if what == "job":
            return (
                replace(job, **{self.name: _plain(value)})
                if key == "job"
                else replace(job, **{key: _changed(getattr(job, key), self.name, value, entry)})
            )
        set_up = _set_up(job, key)
        if what == "setup":
            return _with_set_up(job, _changed(set_up, self.name, value, entry))
        return _with_set_up(
            job, replace(set_up, **{what: _changed(getattr(set_up, what), self.name, value, entry)})
        )


class SetFields(Struct, frozen=True):
    """Several fields of one operation as they would be typed, as one step: what an offer writes in."""

    owner: str
    edits: tuple[tuple[str, str], ...]
    what: str = "take what was offered"
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return self.what

    def apply(self, job: Job) -> Job:
        """The next job."""
        for name, text in self.edits:
            job = SetField(self.owner, name, text).apply(job)
        return job


def _plain(value: Any) -> Any:
    return "" if value is None else value


def _changed(fields: Any, name: str, value: Any, entry: Entry) -> Any:
    """Fields with one value changed; an optional one left empty goes back to what it is when never filled in."""
    if value is None and entry.optional:
        defaults = type(fields).__struct_defaults__
        names = type(fields).__struct_fields__[-len(defaults) :] if defaults else ()
        value = dict(zip(names, defaults, strict=True)).get(name)
    return replace(fields, **{name: value})


class ChooseMachine(Struct, frozen=True):
    """Plan the job for another machine: its name, and the hash of its card as it is today."""

    name: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "choose the machine"

    def apply(self, job: Job) -> Job:
        """The next job."""
        from jobsheet.errors import NoSuchEntry, QuantityError
        from jobsheet.storage.machine_file import card_digest, find_card

        try:
            card = find_card(self.name)
        except NoSuchEntry as error:
            sentence = str(error)
            raise QuantityError(f"{sentence[:1].upper()}{sentence[1:]}.", 0, len(self.name)) from None
        return replace(job, machine=card.name, card_hash=card_digest(card.name))


class ChangeUnits(Struct, frozen=True):
    """What a bare number means from now on; numbers written bare so far get their unit, so nothing changes size."""

    units: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "change the units"

    def apply(self, job: Job) -> Job:
        """The next job."""
        if self.units == job.units:
            return job
        from jobsheet.edit.spelling import with_units_written

        return replace(with_units_written(job, self.units), units=self.units)


class AddOperation(Struct, frozen=True):
    """A new operation of that kind behind another one, or at the end of its set-up."""

    set_up_key: str
    kind: str
    after_key: str | None = None
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"add {kind_of(self.kind).title.lower()}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up = _set_up(job, self.set_up_key)
        made = Operation(
            key=new_key(job, self.kind), number=0, kind=self.kind, fields=kind_of(self.kind).blank(job.units)
        )
        return _inserted(job, set_up, made, self.after_key)


class DuplicateOperation(Struct, frozen=True):
    """The same step once more, right behind it."""

    key: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "duplicate the step"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up, operation = _operation(job, self.key)
        made = replace(operation, key=new_key(job, operation.kind))
        return _inserted(job, set_up, made, self.key)


class DeleteOperation(Struct, frozen=True):
    """Take a step out."""

    key: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "take out the step"

    def apply(self, job: Job) -> Job:
        """The next job."""
        set_up, _ = _operation(job, self.key)
        left = tuple(one for one in set_up.operations if one.key != self.key)
        return _with_set_up(job, replace(set_up, operations=left))


class MoveOperation(Struct, frozen=True):
    """Move a step to a place in a set-up, counted without the step itself. It gets a number that fits there."""

    key: str
    set_up_key: str
    index: int
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "move the step"

    def apply(self, job: Job) -> Job:
        """The next job."""
        origin, operation = _operation(job, self.key)
        target = _set_up(job, self.set_up_key)
        rest = tuple(one for one in target.operations if one.key != self.key)
        index = max(0, min(self.index, len(rest)))
        if origin.key == target.key and origin.operations.index(operation) == index:
            return job
        without = DeleteOperation(self.key).apply(job)
        after = rest[index - 1].key if index else None
        return _inserted(without, _set_up(without, self.set_up_key), operation, after, at_front=index == 0)


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
        keys = {one.key for one in job.set_ups}
        key = next(f"set-up-{n}" for n in range(1, len(keys) + 2) if f"set-up-{n}" not in keys)
        made = SetUp(key=key, number=0)
        index = len(job.set_ups)
        if self.after is not None:
            index = next((i for i, one in enumerate(job.set_ups) if one.key == self.after), index - 1) + 1
        return _numbered(replace(job, set_ups=(*job.set_ups[:index], made, *job.set_ups[index:])))


class DeleteSetUp(Struct, frozen=True):
    """Take out a set-up with all its steps."""

    key: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "take out the set-up"

    def apply(self, job: Job) -> Job:
        """The next job."""
        _set_up(job, self.key)
        if len(job.set_ups) == 1:
            raise CommandError("A job keeps at least one set-up.")
        return _numbered(replace(job, set_ups=tuple(one for one in job.set_ups if one.key != self.key)))


class MoveSetUp(Struct, frozen=True):
    """Move a set-up with all its steps to another place; steps keep their numbers until they are renumbered."""

    key: str
    index: int
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "move the set-up"

    def apply(self, job: Job) -> Job:
        """The next job."""
        moved = _set_up(job, self.key)
        rest = [one for one in job.set_ups if one.key != self.key]
        rest.insert(max(0, min(self.index, len(rest))), moved)
        return _numbered(replace(job, set_ups=tuple(rest)))


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


def _numbered(job: Job) -> Job:
    """Set-ups are numbered in their order."""
    return replace(
        job,
        set_ups=tuple(
            one if one.number == index else replace(one, number=index)
            for index, one in enumerate(job.set_ups, 1)
        ),
    )


def new_key(job: Job, kind: str) -> str:
    """A key that no operation of the job has: the kind and a count."""
    keys = {operation.key for _, operation in job.operations()}
    return next(f"{kind}-{n}" for n in range(1, len(keys) + 2) if f"{kind}-{n}" not in keys)


def _inserted(job: Job, set_up: SetUp, made: Operation, after: str | None, *, at_front: bool = False) -> Job:
    """The job with an operation put in and numbered between its neighbours."""
    index = len(set_up.operations)
    if at_front:
        index = 0
    elif after is not None:
        index = next((i for i, one in enumerate(set_up.operations) if one.key == after), index - 1) + 1
    number = _number_between(job, set_up, index)
    made = replace(made, number=number)
    operations = (*set_up.operations[:index], made, *set_up.operations[index:])
    return _with_set_up(job, replace(set_up, operations=operations))


def _number_between(job: Job, set_up: SetUp, index: int) -> int:
    """A number for a step put in at this place: the next ten at the end, the middle between two (25).

    Where no number is left between its neighbours, the nearest free one above is taken; the order is
    that of the rows, and `Renumber` mends the numbers.
    """
    everything = [operation.number for _, operation in job.operations()]
    taken = set(everything)
    before_this = [one.number for one in _before(job, set_up, index)]
    behind_this = [number for number in everything if number not in before_this]
    low = before_this[-1] if before_this else 0
    higher = [number for number in behind_this if number > low]
    if not higher:
        candidate = (low // 10 + 1) * 10
        while candidate in taken:
            candidate += 10
        return candidate
    high = min(higher)
    free = [number for number in range(low + 1, high) if number not in taken]
    if free:
        fives = [number for number in free if number % 5 == 0]
        return min(fives or free, key=lambda number: abs(number - (low + high) / 2))
    candidate = low + 1
    while candidate in taken:
        candidate += 1
    return candidate


def _before(job: Job, set_up: SetUp, index: int) -> list[Operation]:
    """The operations that come before this place in cutting order."""
    found: list[Operation] = []
    for one in job.set_ups:
        if one.key == set_up.key:
            found.extend(set_up.operations[:index])
            break
        found.extend(one.operations)
    return found
