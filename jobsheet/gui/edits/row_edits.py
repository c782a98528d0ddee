"""What a person does to rows: add, duplicate, delete, move, step through, go to what is wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtWidgets import QMenu

from jobsheet.edit.commands import ChooseMachine, Command, SetFields
from jobsheet.edit.step_commands import (
    AddOperation,
    AddSetUp,
    DeleteOperation,
    DeleteSetUp,
    DuplicateOperation,
    MoveOperation,
    MoveSetUp,
    Renumber,
)
from jobsheet.errors import JobsheetError
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job, SetUp
from jobsheet.model.remark import Fix, Note, Remark

if TYPE_CHECKING:
    from jobsheet.gui.column.remarks import RemarkLine
    from jobsheet.gui.column.ruled_list import RuledList
    from jobsheet.gui.desk.desk import Desk
    from jobsheet.gui.window.window import Window

translate = QCoreApplication.translate


class Mend:
    """A remark's fix as an edit that can be undone."""

    merge_key = ""

    def __init__(self, fix: Fix) -> None:
        self._fix = fix
        self.label = fix.label

    def apply(self, job: Job) -> Job:
        """The job after it."""
        return self._fix.mend(job)


Said = tuple[tuple[Remark, ...], tuple[Note, ...]]


def _differ(one: Said, other: Said) -> bool:
    """Whether two readings say other things; a fix is a function and made anew each time."""
    return one[1] != other[1] or [_words(remark) for remark in one[0]] != [
        _words(remark) for remark in other[0]
    ]


def _words(remark: Remark) -> tuple[object, ...]:
    """What a person sees of a remark."""
    label = remark.fix.label if remark.fix else ""
    return (remark.rule, remark.severity, remark.message, remark.why, remark.operations, remark.set_up, label)


class RowEdits:
    """Edits of rows and set-ups, from keys, menus and the mouse."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self._reviewed: tuple[object, object] | None = None
        self._visited: tuple[str, str] = ("", "")

    def forget(self) -> None:
        """Another job lies on the desk: nothing of the last one is known."""
        self._reviewed = None
        self._visited = ("", "")

    @property
    def _desk(self) -> Desk:
        return self._window.desk

    @property
    def _ruled(self) -> RuledList:
        return self._window.bench.column.ruled

    @property
    def key(self) -> str:
        """The operation meant: the open one, else the chosen one; nothing on a heading."""
        key = self._window.opened_key or self._ruled.chosen_key
        return key if any(operation.key == key for _, operation in self._desk.job.operations()) else ""

    @property
    def set_up(self) -> SetUp:
        """The set-up meant."""
        chosen = self._window.opened_key or self._ruled.chosen_key
        for set_up in self._desk.job.set_ups:
            if set_up.key == chosen or any(operation.key == chosen for operation in set_up.operations):
                return set_up
        return self._desk.job.set_ups[-1]

    def _do(self, command: Command) -> bool:
        """Make an edit, or say why it cannot be made."""
        try:
            self._desk.do(command)
        except JobsheetError as error:
            self._window.say(str(error))
            return False
        return True

    # --- steps ---

    def add(self, kind: str, set_up_key: str = "") -> None:
        """A new step after the chosen one, opened to be filled in."""
        before = {operation.key for _, operation in self._desk.job.operations()}
        if self._do(AddOperation(set_up_key or self.set_up.key, kind, self.key or None)):
            new = next(o for _, o in self._desk.job.operations() if o.key not in before)
            self._window.open_key(new.key)
            self._window.say(translate("RowEdits", "{number} added.").format(number=new.number))

    def duplicate(self) -> None:
        """The same step once more."""
        before = {operation.key for _, operation in self._desk.job.operations()}
        if self.key and self._do(DuplicateOperation(self.key)):
            new = next(o for _, o in self._desk.job.operations() if o.key not in before)
            self._window.close_row()
            self._ruled.focus_line(new.key)
            self._window.bench.column.reveal(new.key)
            self._window.say(translate("RowEdits", "{number} added.").format(number=new.number))

    def delete(self) -> None:
        """Take a step out; a line in its place offers to undo."""
        key = self.key
        if not key:
            return
        set_up, operation = self._desk.job.find(key)
        keys = [line.key for line in self._ruled.lines]
        after = next(iter(keys[keys.index(key) + 1 :]), "")
        near = [one.key for one in set_up.operations]
        place = near.index(key)
        if not self._do(DeleteOperation(key)):
            return
        text = translate("RowEdits", "{number} removed.").format(number=operation.number)
        self._ruled.notice(after, text, ((translate("RowEdits", "Undo"), self.undo),))
        left = [one for one in near if one != key]
        self._ruled.focus_line(left[min(place, len(left) - 1)] if left else set_up.key)
        self._window.say(text)

    def move(self, by: int) -> None:
        """One place up or down, over the ends into the set-up beside."""
        key = self.key
        if not key:
            return
        set_up, _ = self._desk.job.find(key)
        place = [one.key for one in set_up.operations].index(key) + by
        set_ups = self._desk.job.set_ups
        index = set_ups.index(set_up)
        if place < 0 and index:
            self.move_to(key, set_ups[index - 1].key, len(set_ups[index - 1].operations))
        elif place >= len(set_up.operations) and index + 1 < len(set_ups):
            self.move_to(key, set_ups[index + 1].key, 0)
        elif 0 <= place < len(set_up.operations):
            self.move_to(key, set_up.key, place)

    def move_up(self) -> None:
        """One place up."""
        self.move(-1)

    def move_down(self) -> None:
        """One place down."""
        self.move(1)

    def drop(self, key: str, set_up_key: str, index: int) -> None:
        """A row was let go somewhere."""
        self.move_to(key, set_up_key, index)
        self._ruled.focus_line(key)

    def move_to(self, key: str, set_up_key: str, index: int) -> None:
        """Move, and say the new place."""
        focused = self._window.focusWidget()
        if self._do(MoveOperation(key, set_up_key, index)):
            set_up, operation = self._desk.job.find(key)
            place = [one.key for one in set_up.operations].index(key) + 1
            words = translate("RowEdits", "Now {number}: place {place} of {count} in set-up {set_up}.")
            self._window.say(
                words.format(
                    number=operation.number, place=place, count=len(set_up.operations), set_up=set_up.number
                )
            )
            self._window.bench.column.reveal(key)
            if not self._window.opened_key:
                self._ruled.focus_line(key)
            elif focused is not None:
                focused.setFocus()

    def step(self, by: int) -> None:
        """The next or previous operation; an open row stays open by opening that one."""
        key = self._ruled.step(by, rows_only=True)
        if not key:
            return
        if self._window.opened_key:
            self._window.open_key(key)
        else:
            self._ruled.focus_line(key)
            self._window.bench.column.reveal(key)

    def ask_kind(self) -> None:
        """The kinds of step in a menu beside the row."""
        menu = QMenu(self._window)
        menu.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.fill_menu("[kinds]", menu)
        line = self._ruled.by_key.get(self._ruled.chosen_key)
        place = line.mapToGlobal(QPoint(self._window.now.px(116), line.height())) if line else QPoint()
        menu.popup(place)

    def renumber(self) -> None:
        """Number all steps 10, 20, 30."""
        if self._do(Renumber()):
            self._window.say(translate("RowEdits", "All steps are numbered anew: print the sheets again."))

    # --- set-ups ---

    def add_set_up(self) -> None:
        """A new set-up, opened to be filled in."""
        before = {set_up.key for set_up in self._desk.job.set_ups}
        if self._do(AddSetUp(self.set_up.key)):
            self._window.open_key(next(s.key for s in self._desk.job.set_ups if s.key not in before))

    def delete_set_up(self) -> None:
        """Take out a set-up with its steps; a line in its place offers to undo."""
        set_up = self.set_up
        index = self._desk.job.set_ups.index(set_up)
        if self._do(DeleteSetUp(set_up.key)):
            after = self._desk.job.set_ups[index].key if index < len(self._desk.job.set_ups) else ""
            text = translate("RowEdits", "Set-up {number} removed.").format(number=set_up.number)
            self._ruled.notice(after, text, ((translate("RowEdits", "Undo"), self.undo),))
            self._window.say(text)

    def move_set_up(self, by: int) -> None:
        """A set-up one place up or down."""
        set_up = self.set_up
        self._do(MoveSetUp(set_up.key, self._desk.job.set_ups.index(set_up) + by))

    def move_set_up_up(self) -> None:
        """A set-up one place up."""
        self.move_set_up(-1)

    def move_set_up_down(self) -> None:
        """A set-up one place down."""
        self.move_set_up(1)

    # --- undo ---

    def undo(self) -> None:
        """Take back the last step, and go to where it was."""
        self._travel(self._desk.history.undo)

    def redo(self) -> None:
        """Do again what was taken back."""
        self._travel(self._desk.history.redo)

    def _travel(self, go: object) -> None:
        """Go through the history and show the row that came back."""
        before = {operation.key for _, operation in self._desk.job.operations()}
        if callable(go):
            go(self._desk)
        back = [o.key for _, o in self._desk.job.operations() if o.key not in before]
        if back:
            self._ruled.focus_line(back[0])
            self._window.bench.column.reveal(back[0])

    # --- remarks ---

    def review(self) -> bool:
        """Ask the rules about the job as it is; whether what they say is new."""
        desk = self._desk
        if desk.reckoned is None:
            return False
        facts = self._window.solids.facts_about(desk.reckoned)
        about = (desk.job, facts)
        if self._reviewed is not None and all(a is b for a, b in zip(self._reviewed, about, strict=True)):
            return False
        self._reviewed = about
        from jobsheet.gui.desk.reviewing import remarks_and_notes

        found = remarks_and_notes(desk.job, desk.reckoned, facts)
        if not _differ(found, (desk.remarks, desk.notes)):
            return False
        desk.remarks, desk.notes = found
        return True

    def mend(self, remark: Remark) -> None:
        """Do what a remark offers."""
        if remark.fix is not None and self._do(Mend(remark.fix)):
            self._window.say(translate("RowEdits", "Done: {fix}.").format(fix=remark.fix.label))

    def take(self, key: str, edits: tuple[tuple[str, str], ...]) -> None:
        """Write an offer into a step, as one edit."""
        if self._do(SetFields(key, edits)):
            said = ", ".join(f"{name.replace('_', ' ')} {text or '–'}" for name, text in edits)
            self._window.say(translate("RowEdits", "Written in: {edits}.").format(edits=said))

    def preview(self, line: RemarkLine) -> None:
        """Say what a remark's fix would change."""
        from jobsheet.edit.difference import changes

        fix, job = line.remark.fix, self._desk.job
        if fix is not None:
            try:
                line.preview(changes(job, fix.mend(job)))
            except JobsheetError as error:
                line.preview((str(error),))

    def dismiss(self, remark: Remark) -> None:
        """Set a remark aside for this job, with a reason; a hazard in a trainee's job needs initials too."""
        from jobsheet.edit.setting_aside import Dismiss
        from jobsheet.review.engine import about

        needs = remark.severity == "hazard" and self._desk.job.trainee
        answer = ask.reason(self._window, remark.message, initials=needs)
        if answer is None:
            return
        reason, initials = answer
        if needs and not initials.strip():
            self._window.say(
                translate("RowEdits", "Not set aside: a hazard in a trainee's job needs initials.")
            )
            return
        if self._do(Dismiss(remark.rule, about(remark), reason, initials)):
            self._window.say(translate("RowEdits", "Set aside; the reason is printed with the plan."))

    def bring_back(self) -> None:
        """All remarks that were set aside are open again."""
        from jobsheet.edit.setting_aside import BringBack

        if not self._desk.job.dismissed:
            self._window.say(translate("RowEdits", "No remark is set aside in this job."))
        elif self._do(BringBack()):
            self._window.say(translate("RowEdits", "All remarks are open again."))

    def previous_remark(self) -> None:
        """The remark or field before the last one visited."""
        self.next_remark(by=-1)

    def next_remark(self, by: int = 1) -> None:
        """The next field that cannot be read, or the next remark, after the last one visited."""
        problems = [("field", owner, name) for owner, name in self._desk.problems()]
        remarks = [
            ("remark", (remark.operations or (remark.set_up or "job",))[0], remark.rule)
            for remark in self._desk.remarks
        ]
        every = [*problems, *remarks]
        if not every:
            self._window.say(
                translate("RowEdits", "Nothing to mend: no remark and no field that cannot be read.")
            )
            return
        last = next((i for i, item in enumerate(every) if item[1:] == self._visited), -1)
        what, owner, name = every[(last + by) % len(every) if last >= 0 or by > 0 else -1]
        self._visited = (owner, name)
        if what == "field":
            self._go_to_field(owner, name)
        else:
            self._window.open_key(owner)
            opened = self._ruled.opened
            if opened is not None:
                lines = getattr(opened, "remark_lines", [])
                line = next((line for line in lines if line.remark.rule == name), None)
                if line is not None:
                    line.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def _go_to_field(self, owner: str, name: str) -> None:
        """Open the form of an owner and put the cursor into a field."""
        section, _, key = owner.partition(":")
        if section == "job":
            self._window.edit_job()
        else:
            self._window.open_key(key or owner)
        opened = self._ruled.opened
        forms = getattr(opened, "forms", None) or {owner: getattr(opened, "form", None)}
        form = forms.get(owner)
        if form is not None and name in form.fields:
            field = form.fields[name]
            field.box.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
            self._window.say(str(field.problem or ""))

    # --- what comes after the figures ---

    def refresh_strip(self) -> None:
        """The drawings of the stages around the open or chosen row."""
        from jobsheet.gui.strip.stage_blocks import stages

        chosen = self._window.opened_key or self._ruled.chosen_key
        set_up = self.set_up
        current = chosen
        if chosen in (set_up.key, "job", "") and set_up.operations:
            current = set_up.operations[0].key if chosen == set_up.key else chosen
        strip = self._window.strip()
        strip.put(stages(self._desk.job, self._desk.sweeps, set_up.key), current)

    # --- menus and words ---

    def fill_menu(self, name: str, menu: QMenu) -> None:
        """Kinds, machines or samples."""
        menu.clear()
        if name == "[kinds]":
            from jobsheet.operations import registry

            for kind in registry.kinds():
                menu.addAction(registry.title(kind)).triggered.connect(
                    lambda _=False, kind=kind: self.add(kind)
                )
        elif name == "[machines]":
            from jobsheet.storage.machine_file import card_names, find_card

            for card in card_names():
                try:
                    title = find_card(card).title
                except JobsheetError:
                    title = card  # choosing it says what is wrong with it
                action = menu.addAction(title)
                action.setCheckable(True)
                action.setChecked(card == self._desk.job.machine)
                action.triggered.connect(lambda _=False, card=card: self._do(ChooseMachine(card)))
            menu.addSeparator()
            menu.addActions(
                [
                    self._window.actions_by_id[id_]
                    for id_ in ("fits", "prove", "capability", "card", "new-card", "cabinet")
                ]
            )
        elif name == "[samples]":
            from jobsheet import paths

            for path in sorted(paths.sample_jobs().glob("*.yaml")):
                menu.addAction(path.stem).triggered.connect(
                    lambda _=False, path=path: self._window.files.open_sample(path)
                )

    def show_keys(self) -> None:
        """The keys, in one box."""
        ask.tell(
            self._window,
            translate(
                "RowEdits",
                "Up, Down: choose a row\nEnter: open it\nEsc: close it\nPage Up, Page Down: step through the rows\n"
                "Alt + Up, Alt + Down: move a row\nIns: add a step\nCtrl + D: duplicate\nDel: take out\n"
                "F8, Shift + F8: next or previous remark or problem\nF6: prove the machine\nF7: what it will carry\nCtrl + M: the job on another machine\nF9: the work after, before, as stock\nF2: part, stock and machine\nCtrl + Z, Ctrl + Shift + Z: undo, redo",
            ),
        )

    def show_about(self) -> None:
        """What this program is for."""
        ask.tell(
            self._window,
            translate(
                "RowEdits",
                "Job sheets for manual milling machines.\nComputed for planning: start lighter; watch, listen and feel."
                "\nThe machine’s manual, your workshop’s rules and the law where you work come first.",
            ),
        )
