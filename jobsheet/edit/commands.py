"""Edits as frozen values: each has a label and `apply(job) -> Job`; nobody writes an undo.

The same commands serve the window, the command line and the tests; none needs a display.
"""

from __future__ import annotations

from typing import Any, Protocol, runtime_checkable

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.finished_lines import OWNER, entry_of_line, value_of_line, with_field
from jobsheet.errors import CommandError
from jobsheet.holdings.all_holdings import NONE, changed_to, entries_of, roles_of
from jobsheet.model.held_work import Holding
from jobsheet.model.job import AS_RECOMMENDED, Job, Operation, SetUp
from jobsheet.model.lying import beside, laid
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.stock.all_shapes import changed as stock_changed
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout

#: Header sections by name: where they lie in the job, and their entries.
SECTIONS: dict[str, tuple[Entry, ...]] = {"job": layout.JOB, "part": layout.PART}
SET_UP_SECTIONS: dict[str, tuple[Entry, ...]] = {
    "setup": layout.SET_UP,
    "holding": (),
    "zero": layout.ZERO,
}


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


@runtime_checkable
class Named(Protocol):
    """A command that can say what exactly it did, once it was done."""

    def named(self, before: Job, after: Job) -> str:
        """What Undo calls it, with the number of the step."""
        ...


def label_of(command: Command, before: Job, after: Job) -> str:
    """What Undo calls an edit: with the step that was edited, where the command says which."""
    return command.named(before, after) if isinstance(command, Named) else command.label


def owner_of(owner: str) -> tuple[str, str]:
    """What an owner names: `job:part` is a header section, `holding:set-up-1` one of
    a set-up, else an operation's key.
    """
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
    if owner == OWNER:
        return entry_of_line(name)
    if what == "job":
        entries = stock_entries(job.stock) if key == "stock" else SECTIONS.get(key, ())
    elif what == "operation":
        entries = kind_of(operation_of(job, key)[1].kind).entries
    elif what == "holding":
        entries = entries_of(set_up_of(job, key).holding)
    elif what == "setup":
        entries = laying_of(set_up_of(job, key))
    else:
        entries = SET_UP_SECTIONS[what]
    for entry in entries:
        if entry.name == name:
            return entry
    raise CommandError(f"There is no field {name} in {owner}.")


def laying_of(set_up: SetUp) -> tuple[Entry, ...]:
    """The fields of how a set-up lies: towards you and on the fixed jaw only what
    can be there while that face is up.
    """
    sides = beside(set_up.up)
    jaws = roles_of(set_up.holding).jaws
    return tuple(
        replace(entry, choices=sides) if entry.name in ("operator", "fixed_jaw") else entry
        for entry in layout.SET_UP
        if entry.name != "fixed_jaw" or jaws
    )


def value_of(job: Job, owner: str, name: str) -> Any:
    """The value that a field of the window shows."""
    what, key = owner_of(owner)
    if owner == OWNER:
        return value_of_line(job, name)
    if what == "job":
        return getattr(job if key == "job" else getattr(job, key), name)
    if what == "operation":
        return getattr(operation_of(job, key)[1].fields, name)
    set_up = set_up_of(job, key)
    if (what, name) == ("holding", "kind"):
        return set_up.holding.kind or NONE
    return getattr(set_up if what == "setup" else getattr(set_up, what), name)


def operation_of(job: Job, key: str) -> tuple[SetUp, Operation]:
    """The step of that key and its set-up; an edit that names none is refused."""
    try:
        return job.find(key)
    except KeyError:
        raise CommandError("This step is no longer in the job.") from None


def set_up_of(job: Job, key: str) -> SetUp:
    """The set-up of that key; an edit that names none is refused."""
    for set_up in job.set_ups:
        if set_up.key == key:
            return set_up
    raise CommandError("This set-up is no longer in the job.")


def with_set_up(job: Job, changed: SetUp) -> Job:
    """The job with that set-up in the place of the one with its key."""
    return replace(
        job, set_ups=tuple(changed if set_up.key == changed.key else set_up for set_up in job.set_ups)
    )


def with_operation(job: Job, changed: Operation) -> Job:
    """The job with that step in the place of the one with its key; everything
    else is the very same object.
    """
    set_up, _ = operation_of(job, changed.key)
    operations = tuple(
        changed if operation.key == changed.key else operation for operation in set_up.operations
    )
    return with_set_up(job, replace(set_up, operations=operations))


class SetField(Struct, frozen=True):
    """What was typed into one field: `owner` as in `owner_of`; `what` names the edit
    where the field has parts of its own.
    """

    owner: str
    name: str
    text: str
    what: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return self.what or f"change {self.name.replace('_', ' ')}"

    def named(self, before: Job, _after: Job) -> str:
        """With the step or the set-up that has the field."""
        what, key = owner_of(self.owner)
        title = entry_of(before, self.owner, self.name).title.lower()
        if what == "job":
            return f"change {title}"
        if what == "operation":
            return f"{self.what or f'change {title}'} of step {operation_of(before, key)[1].number}"
        return f"change {title} of set-up {set_up_of(before, key).number}"

    @property
    def merge_key(self) -> str:
        """Typing in one field, or in one part of it, is one step."""
        return f"{self.owner}/{self.name}/{self.what}" if self.what else f"{self.owner}/{self.name}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        entry = entry_of(job, self.owner, self.name)
        if self.owner == "job" and self.name == "units":
            return ChangeUnits(entry.read(self.text, job.units)).apply(job)
        if self.owner == "job" and self.name == "machine":
            return ChooseMachine(self.text).apply(job)
        value = entry.read(self.text, job.units)
        if self.owner == OWNER:
            return with_field(job, self.name, value)
        what, key = owner_of(self.owner)
        if what == "operation":
            _, operation = operation_of(job, key)
            fields = _changed(operation.fields, self.name, value, entry)
            return with_operation(job, _still_left(operation, replace(operation, fields=fields)))
        if what == "job":
            if key == "stock":
                return replace(job, stock=stock_changed(job.stock, self.name, value))
            return (
                replace(job, **{self.name: _plain(value)})
                if key == "job"
                else replace(job, **{key: _changed(getattr(job, key), self.name, value, entry)})
            )
        set_up = set_up_of(job, key)
        if what == "holding" and self.name == "kind":
            return with_set_up(
                job, replace(set_up, holding=changed_to(set_up.holding, value or "", job.units))
            )
        if what == "setup":
            changed = _changed(set_up, self.name, value, entry)
            return with_set_up(
                job, laid(changed) if self.name in ("up", "operator", "fixed_jaw") else changed
            )
        return with_set_up(
            job, replace(set_up, **{what: _changed(getattr(set_up, what), self.name, value, entry)})
        )


class HoldBy(SetField, frozen=True, kw_only=True):
    """Another kind of holding is chosen whose facts were entered before: going back to it loses none."""

    holding: Holding

    def apply(self, job: Job) -> Job:
        """The next job."""
        return with_set_up(job, replace(set_up_of(job, owner_of(self.owner)[1]), holding=self.holding))


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

    def named(self, before: Job, _after: Job) -> str:
        """With the step that it was written into."""
        what, key = owner_of(self.owner)
        return (
            f"{self.what} in step {operation_of(before, key)[1].number}" if what == "operation" else self.what
        )

    def apply(self, job: Job) -> Job:
        """The next job."""
        for name, text in self.edits:
            job = SetField(self.owner, name, text).apply(job)
        return job


def _still_left(before: Operation, after: Operation) -> Operation:
    """A feed is typed where everything was left to the adviser: only the feed
    is pinned, the rest stays left.
    """
    from jobsheet.reckoning.adviser.left_empty import left_of

    if left_of(before).names and not left_of(after).names and not after.empty:
        return replace(after, empty=AS_RECOMMENDED)
    return after


class GiveBack(Struct, frozen=True):
    """One value of a step is taken out and left to the adviser, with all that stands empty
    beside it; without a name every value.
    """

    key: str
    name: str = ""
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "leave as recommended"

    def named(self, before: Job, _after: Job) -> str:
        """With the field and the step."""
        title = entry_of(before, self.key, self.name).title.lower() if self.name else "speed, feed and layers"
        return f"leave {title} of step {operation_of(before, self.key)[1].number} as recommended"

    def apply(self, job: Job) -> Job:
        """The next job."""
        from jobsheet.reckoning.adviser.left_empty import given_back

        _, operation = operation_of(job, self.key)
        made = given_back(operation, *((self.name,) if self.name else ()))
        if made is None:
            raise CommandError(
                "Nothing is recommended for this field; speed, feed, layer, width and pecks are."
            )
        return job if made == operation else with_operation(job, made)


def _plain(value: object) -> Any:
    return "" if value is None else value


def _changed(fields: Any, name: str, value: Any, entry: Entry) -> Any:
    """Fields with one value changed; an optional one left empty goes back to
    what it is when never filled in.
    """
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
        from jobsheet.storage.card_files import find_card, planned_for

        try:
            card = find_card(self.name)
        except NoSuchEntry as error:
            sentence = str(error)
            raise QuantityError(f"{sentence[:1].upper()}{sentence[1:]}.", 0, len(self.name)) from None
        return planned_for(job, card.name)


class ChangeUnits(Struct, frozen=True):
    """What a bare number means from now on; numbers written bare so far get
    their unit, so nothing changes size.
    """

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
