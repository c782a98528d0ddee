"""What lies on the desk: one job with its history, its figures, its file;
everything the panels show comes from here.

It owns no widget. An edit goes through the history, is reckoned at once, and is then told to the window.
"""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QCoreApplication, QObject, Signal

from jobsheet.edit.commands import Command, SetField, entry_of, laying_of, set_up_of, value_of
from jobsheet.edit.finished_lines import OWNER, entries_of_lines
from jobsheet.edit.history import Change, History
from jobsheet.errors import JobsheetError
from jobsheet.gui.column.views import HeadingView, RowAsked, RowView, heading_view, row_view
from jobsheet.gui.desk.lines_shown import line_shown
from jobsheet.gui.desk.problems_log import or_absent
from jobsheet.gui.forms.shown import Section, Shown, shown
from jobsheet.holdings.all_holdings import asked_of
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.remark import Note, Remark
from jobsheet.model.shape import Sweep
from jobsheet.operations import registry
from jobsheet.operations.kind import Aim
from jobsheet.reckoning.adviser.left_empty import filled_texts, left_of
from jobsheet.reckoning.reckoner import Outcome, Reckoned, Reckoner
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout

if TYPE_CHECKING:
    from jobsheet.gui.desk.last_runs import LastRun
    from jobsheet.reckoning.paces import Pace

translate = QCoreApplication.translate


class Desk(QObject):
    """The job that is open."""

    changed = Signal(object)

    def __init__(self, job: Job, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.reckoner = Reckoner()
        #: An edit shows what was recommended before it; what is recommended after it follows (`settle`).
        self.reckoner.patience = 0
        self.path: Path | None = None
        self.digest: str | None = None
        self.named = ""
        self.recovered = False
        #: The job whose drawing is planned from as an exercise; None of any other.
        self.exercise: Job | None = None
        #: The job that this one was made from a moment ago; None of any other.
        self.made_from: Job | None = None
        self.saved_at = ""
        self.history = History(job)
        self.reckoned: Reckoned | None = None
        self.problem = ""
        self.remarks: tuple[Remark, ...] = ()
        self.notes: tuple[Note, ...] = ()
        #: What the review could not ask: it is said where its answer would have stood.
        self.not_checked: tuple[NotChecked, ...] = ()
        #: Whether the rules were asked about this job at all: until then nothing is said of
        #: remarks, and not that there are none.
        self.is_read = False
        #: The time of the job as it was said last, while that of so many steps is still to come.
        self.time_said = ""
        self.time_is_old = False
        #: Whether the edit that is told just now is a key in a text, of which more may come.
        self.typing = False
        #: The field that the cursor is in, by owner and name.
        self.held = ("", "")
        self._views: dict[str, tuple[tuple[Any, ...], RowView]] = {}
        #: The remarks by what they are about, and those that they were sorted from.
        self._remarks_by_key: tuple[tuple[Remark, ...], dict[str, tuple[Remark, ...]]] = ((), {})
        #: How each step went the last time, once somebody looked.
        self._ran: dict[str, LastRun] = {}
        #: By what real times differ from planned ones here, where enough runs are written down.
        self.paces: tuple[Pace, ...] = ()
        self.take(self.history)

    def take(self, history: History) -> None:
        """Put another job on the desk."""
        self.history = history
        self.history.subscribe(self._heard)
        self.remarks, self.notes, self.not_checked = (), (), ()
        self._views, self._ran = {}, {}
        self.is_read, self.time_said = False, ""
        self.reckon()

    @property
    def job(self) -> Job:
        """The job as it is now."""
        return self.history.job

    def do(self, command: Command) -> None:
        """Make an edit."""
        self.history.do(command, self)

    def type(self, command: SetField, *, by_key: bool = False) -> None:
        """Make an edit in a field: it merges with the one before; `by_key` says that the text may go on."""
        self.typing = by_key
        if by_key:
            self.held = (command.owner, command.name)
        try:
            self.history.type(command, self)
        finally:
            self.typing = False

    def hold(self, field: tuple[str, str]) -> bool:
        """The cursor is in this field now; whether a row shows other figures for that."""
        before, self.held = self.held, field
        return before != field and any(draft in (before, field) for draft in self.history.drafts)

    def _heard(self, change: Change) -> None:
        """Reckon, then tell."""
        self.reckon()
        self.changed.emit(change)

    def reckon(self) -> None:
        """Figures and limits of everything; what did not change is remembered below."""
        try:
            self.reckoned = self.reckoner.reckon(self.job)
            self.problem = ""
        except JobsheetError as error:
            self.reckoned = None
            self.problem = str(error)

    def reckon_all(self) -> None:
        """What nobody has looked at yet is reckoned too."""
        if self.reckoned is not None:
            tuple(self.reckoned.operations.values())

    def settle(self) -> bool:
        """One step that was left behind takes what is recommended for it now; whether there was one."""
        if self.reckoned is None or not self.reckoner.behind:
            return False
        self.reckoner.patience = 1
        try:
            self.reckon()
        finally:
            self.reckoner.patience = 0
        return True

    def filled(self, key: str) -> Operation:
        """A step as it was reckoned: what it leaves empty stands in it as recommended."""
        _, operation = (self.reckoned.job if self.reckoned is not None else self.job).find(key)
        return operation

    def learn(self) -> None:
        """Reckon with what the proof logs say now; the first time costs a
        moment, so never before the first paint.
        """
        self.reckoner.learns = True
        self.reckoner.forget_proof()
        self.reckon()

    def outcome(self, key: str) -> Outcome | None:
        """What is known of an operation; nothing, and why, while a text in it
        was left that cannot be read.
        """
        outcome = self.reckoned.operations.get(key) if self.reckoned else None
        if outcome is None or not self.history.drafts:
            return outcome
        left = self.left_unread(key)
        if not left:
            return outcome
        return Outcome(key=key, title=outcome.title, problem=self.unreadable(*left))

    def left_unread(self, key: str) -> tuple[str, str] | None:
        """The first field that a step's figures hang on, its own or the
        header's, that was left and cannot be read.
        """
        drafts = self.history.drafts
        if not drafts:
            return None
        from jobsheet.gui.desk import unread

        hung_on = unread.hangs_on(self.job, key)
        return next((draft for draft in drafts if draft != self.held and hung_on(*draft)), None)

    def sweeps(self, operation: Operation) -> tuple[Sweep, ...]:
        """The shapes that an operation takes away."""
        setting = self.reckoned.settings.get(operation.key) if self.reckoned else None
        if setting is None:
            return ()
        return or_absent(lambda: registry.kind(operation.kind).sweep(operation.fields, setting), ())

    def look_at_runs(self) -> bool:
        """How the steps went the last time, from the record beside the job; whether it is new."""
        from jobsheet.gui.desk.last_runs import last_runs
        from jobsheet.gui.desk.paces_known import paces_known

        before, self._ran = (self._ran, self.paces), last_runs(self.path)
        self.paces = paces_known(self.path)
        return before != (self._ran, self.paces)

    # --- remarks ---

    def remarks_of(self, key: str) -> tuple[Remark, ...]:
        """The remarks about an operation or a set-up, worst first."""
        of, found = self._remarks_by_key
        if of is not self.remarks:
            from jobsheet.gui.desk.remarks_by_key import by_key

            found = by_key(self.remarks)
            self._remarks_by_key = self.remarks, found
        return found.get(key, ())

    def remarks_about(self, key: str) -> tuple[Remark, ...]:
        """The remarks about a set-up alone, or about the job: where no step and no set-up is named."""
        if key != "job":
            return tuple(remark for remark in self.remarks if remark.set_up == key and not remark.operations)
        return tuple(remark for remark in self.remarks if not (remark.operations or remark.set_up))

    def reminders_of(self, key: str) -> tuple[str, ...]:
        """What is printed beside a step and never counted; before it, what could not be checked of it."""
        said = [note.text.split(". ")[0].rstrip(".") + "." for note in self.notes if note.operation == key]
        return (
            *(not_checked.words() for not_checked in self.not_checked if not_checked.operation == key),
            *said,
        )

    # --- drafts ---

    def drafts_of(self, owner: str) -> dict[str, str]:
        """The texts of an owner that cannot be read, by field."""
        return {name: text for (who, name), text in self.history.drafts.items() if who == owner}

    def problems(self) -> list[tuple[str, str]]:
        """(owner, field) of every text that cannot be read, in the order of the job."""
        owners = ["job:part", "job:stock", OWNER, "job"]
        for set_up in self.job.set_ups:
            owners += [f"{part}:{set_up.key}" for part in ("setup", "holding", "zero")]
            owners += [operation.key for operation in set_up.operations]
        return sorted(
            self.history.drafts, key=lambda draft: owners.index(draft[0]) if draft[0] in owners else 0
        )

    # --- what rows and forms show ---

    def views(self) -> list[HeadingView | RowAsked]:
        """Every line of the sheet in its order; a row is put together when it comes into sight."""
        views: list[HeadingView | RowAsked] = []
        for set_up in self.job.set_ups:
            views.append(heading_view(set_up, self.job))
            views.extend(
                RowAsked(operation.key, partial(self._view, set_up, operation))
                for operation in set_up.operations
            )
        return views

    def _view(self, set_up: SetUp, operation: Operation) -> RowView:
        """A row; made again only when something in it changed."""
        outcome, stale = self.outcome(operation.key), self._in_pencil(operation.key)
        setting = self.reckoned.settings.get(operation.key) if self.reckoned else None
        extent = setting.extent if setting is not None else None
        remarks = self.remarks_of(operation.key) if self.remarks else ()
        last = self._ran.get(operation.key)
        about = (operation, outcome, remarks, stale, set_up.up, set_up.operator, extent, last)
        known = self._views.get(operation.key)
        if known is not None and all(a is b or a == b for a, b in zip(known[0], about, strict=True)):
            return known[1]
        view = row_view(operation, outcome, remarks, self._aim(set_up, extent), stale=stale)
        if self.problem or last is not None:
            from msgspec.structs import replace

            view = replace(view, problem=self.problem or view.problem)
            if last is not None:
                view = replace(view, last=last.words, last_outcome=last.outcome)
        self._views[operation.key] = (about, view)
        return view

    def _aim(self, set_up: SetUp, extent: tuple[float, float, float] | None) -> Aim:
        """What the words of a row may name of the work."""
        from jobsheet.model.lying import lying, stock_box
        from jobsheet.operations.shared.aimed import aim_of

        if extent is None:
            return Aim()
        return aim_of(lying(set_up, stock_box(self.job)), extent, self.job.units)

    def view(self, key: str) -> RowView:
        """The row of an operation."""
        set_up, operation = self.job.find(key)
        return self._view(set_up, operation)

    def _in_pencil(self, key: str) -> bool:
        """Whether a text that the figures hang on is in hand and cannot be read
        yet: the last confirmed ones stand.
        """
        if self.held not in self.history.drafts:
            return False
        from jobsheet.gui.desk import unread

        return unread.hangs_on(self.job, key)(*self.held)

    def operation_fields(self, key: str) -> dict[str, Shown]:
        """What stands in the form of an operation."""
        _, operation = self.job.find(key)
        drafts = self.drafts_of(key)
        units = self.job.units
        proposed = filled_texts(operation, self.filled(key)) if left_of(operation).names else {}
        return {
            entry.name: shown(
                entry,
                getattr(operation.fields, entry.name),
                drafts.get(entry.name),
                units,
                proposed.get(entry.name, ""),
            )
            for entry in registry.kind(operation.kind).entries
        }

    def why_not(self, key: str) -> str:
        """Why an operation has no figures; empty when it has."""
        if self.problem:
            return self.problem
        outcome = self.outcome(key)
        if outcome is None or not outcome.problem:
            return ""
        left = self.left_unread(key) or next(((key, name) for name in self.drafts_of(key)), None)
        if left is None:
            return outcome.problem
        return translate("Desk", "{sentence} Ctrl + Down goes to the field.").format(
            sentence=self.unreadable(*left)
        )

    def unreadable(self, owner: str, name: str) -> str:
        """Which field cannot be read."""
        return translate("Desk", "{field} cannot be read.").format(
            field=entry_of(self.job, owner, name).title
        )

    def prints(self, key: str) -> tuple[str, ...]:
        """The very words of the sheet for an operation."""
        outcome = self.outcome(key)
        if outcome is None:
            return ()
        return tuple(f"{row.do}: {row.note}" if row.note else row.do for row in outcome.rows)

    # --- header forms ---

    def set_up(self, key: str) -> SetUp | None:
        """The set-up of that key."""
        return next((set_up for set_up in self.job.set_ups if set_up.key == key), None)

    def job_sections(self) -> tuple[Section, ...]:
        """The form of the title block; a section is named by the owner that edits call it by."""
        hidden = ("card_hash",)
        entries = tuple(entry for entry in layout.JOB if entry.name not in hidden)
        return (
            Section("job:part", translate("Desk", "Part"), layout.PART),
            Section("job:stock", translate("Desk", "Stock"), stock_entries(self.job.stock)),
            Section(OWNER, translate("Desk", "What the part shall be"), entries_of_lines(self.job.finished)),
            Section("job", translate("Desk", "Job"), entries),
        )

    def set_up_sections(self, key: str) -> tuple[Section, ...]:
        """The form of a set-up's heading."""
        return (
            Section(f"setup:{key}", translate("Desk", "Lay it"), laying_of(set_up_of(self.job, key))),
            Section(f"holding:{key}", translate("Desk", "Hold"), asked_of(set_up_of(self.job, key).holding)),
            Section(f"zero:{key}", translate("Desk", "Zero"), layout.ZERO),
        )

    def header_fields(self, sections: tuple[Section, ...]) -> dict[str, dict[str, Shown]]:
        """What stands in the sections of the job or of a set-up."""
        job, drafts = self.job, self.history.drafts
        return {
            section.name: {
                entry.name: line_shown(job, entry.name, drafts.get((OWNER, entry.name)))
                if section.name == OWNER
                else shown(
                    entry,
                    value_of(job, section.name, entry.name),
                    drafts.get((section.name, entry.name)),
                    job.units,
                )
                for entry in section.entries
            }
            for section in sections
        }
