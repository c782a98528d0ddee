"""The only owner of the current job: every step kept, undo is the state before.

A state holds the job, the drafts (what is typed and cannot be read yet) and where the person is, so
that undo, the crash journal and switching rows lose nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.commands import Command, SetField, label_of
from jobsheet.edit.kept_steps import Steps
from jobsheet.errors import QuantityError
from jobsheet.model.job import Job

Drafts = Mapping[tuple[str, str], str]


class State(Struct, frozen=True):
    """One moment: the job, the half-typed fields by (owner, name), and the row that is open."""

    job: Job
    drafts: Drafts
    focus: str = ""
    label: str = ""


class Change(Struct, frozen=True, kw_only=True):
    """What a step changed, told once to all listeners: operation keys, order, header; and who asked."""

    label: str
    asker: object
    keys: frozenset[str]
    order: bool
    header: bool
    before: State
    after: State


class History(Steps[State, Change]):
    """Holds the states and makes the next one; the steps themselves are as those of any document."""

    def __init__(self, job: Job, path: str | None = None) -> None:
        super().__init__(State(job, MappingProxyType({})), _difference)
        self._saved: Job | None = job
        #: The job as it was before what is being typed, or when the hand last rested in it.
        self._confirmed = job
        self.path = path

    @property
    def job(self) -> Job:
        """The job as it is."""
        return self.state.job

    @property
    def drafts(self) -> Drafts:
        """What is typed and cannot be read yet."""
        return self.state.drafts

    def do(self, command: Command, asker: object = None) -> None:
        """Make the next state by a command; it raises and changes nothing where it makes no sense."""
        job = command.apply(self.job)
        if job is self.job:
            return
        self._confirmed = job
        keys = {operation.key for _, operation in job.operations()}
        drafts = {where: text for where, text in self.drafts.items() if _still_there(where[0], keys, job)}
        label = label_of(command, self.job, job)
        self._push(State(job, MappingProxyType(drafts), self.state.focus, label), command.merge_key, asker)

    def type(self, command: SetField, asker: object = None) -> None:
        """What was typed into a field: taken into the job if it can be read, else kept as a draft.

        Never raises for what was typed; typing in one field is one step of undo. While it cannot be read the
        field has the value that was last confirmed, not that of some beginning of the text: `10 m` on the way
        to `10 mm` was never meant.
        """
        if command.merge_key != self._merge:
            self._confirmed = self.job
        where = (command.owner, command.name)
        drafts = dict(self.drafts)
        job = self.job
        try:
            job = command.apply(job)
            drafts.pop(where, None)
        except QuantityError:
            job = self._confirmed
            drafts[where] = command.text
        if job is self.job and drafts == dict(self.drafts):
            return
        label = label_of(command, self.job, job)
        self._push(State(job, MappingProxyType(drafts), self.state.focus, label), command.merge_key, asker)

    def confirm(self) -> None:
        """The hand rests: what can be read is meant."""
        self._confirmed = self.job

    def focus(self, key: str) -> None:
        """Remember which row is open; no step of its own."""
        self._states[self._at] = replace(self.state, focus=key)
        self._merge = ""

    @property
    def changed(self) -> bool:
        """Whether the file no longer holds this job, or something is half typed."""
        return bool(self.drafts) or (self.job is not self._saved and self.job != self._saved)

    @property
    def saved(self) -> Job | None:
        """The job as its file has it; None where no file holds it."""
        return self._saved

    def stands(self, job: Job) -> None:
        """Another job stands in the file by now: what is on the desk is compared with that one."""
        self._saved = job
        self._merge = ""

    def mark_saved(self, path: str | None = None) -> None:
        """The job as it is now stands in the file."""
        self._saved = self.job
        self._merge = ""
        if path is not None:
            self.path = path

    def mark_unsaved(self) -> None:
        """No file holds this job: a new one, a sample, or one that was recovered."""
        self._saved = None

    def restore(self, job: Job, drafts: Drafts, focus: str = "") -> None:
        """Begin again from what a crash left, as one step that can be undone."""
        self._push(State(job, MappingProxyType(dict(drafts)), focus, "recover"), "", None)


def _still_there(owner: str, keys: set[str], job: Job) -> bool:
    section, _, key = owner.partition(":")
    if section == "job":
        return True
    return any(set_up.key == key for set_up in job.set_ups) if key else owner in keys


def _difference(before: State, after: State, label: str, asker: object) -> Change:
    """What differs between two states, by identity: what did not change is the very same object."""
    drafts = set(before.drafts.items()) ^ set(after.drafts.items())
    changed = {owner for (owner, _), _ in drafts}
    order = header = False
    if before.job is not after.job:
        old = {operation.key: operation for _, operation in before.job.operations()}
        new = {operation.key: operation for _, operation in after.job.operations()}
        changed |= {key for key in old.keys() | new.keys() if old.get(key) is not new.get(key)}
        shape = [
            [set_up.key, *(operation.key for operation in set_up.operations)] for set_up in before.job.set_ups
        ]
        order = shape != [
            [set_up.key, *(operation.key for operation in set_up.operations)] for set_up in after.job.set_ups
        ]
        header = replace(before.job, set_ups=()) != replace(after.job, set_ups=()) or any(
            replace(a, operations=()) != replace(b, operations=())
            for a, b in zip(before.job.set_ups, after.job.set_ups, strict=False)
        )
    return Change(
        label=label,
        asker=asker,
        keys=frozenset(changed),
        order=order,
        header=header,
        before=before,
        after=after,
    )
