"""The window in which a file of typed text is edited: the ruled column left, what it
means right, undo through everything.

What cannot be used is never written over what can: it is kept as a draft until
it can be saved or is thrown away.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QRect, QTimer, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget

from jobsheet.edit.paper_commands import PaperChange, PaperCommand, PaperHistory, Replace
from jobsheet.errors import ChangedOutside, CommandError, DocumentError, JobsheetError, Problem
from jobsheet.gui.desk.keeping_pace import Pace
from jobsheet.gui.desk.problems_log import or_absent
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.plain_words import window_title
from jobsheet.gui.ink.look import look
from jobsheet.gui.papers.facts_view import FactsView
from jobsheet.gui.papers.paper_column import PaperColumn
from jobsheet.gui.papers.paper_ground import Ground, scrolling
from jobsheet.gui.papers.paper_head import PaperHead
from jobsheet.gui.papers.subject import Subject
from jobsheet.model.facts import Facts
from jobsheet.storage.own_paper import Lying, draft_of, keep_draft, problems, save_own
from jobsheet.storage.typed_paper import Paper

translate = QCoreApplication.translate
#: How long after the last edit the margin is made anew [ms].
MARGIN_QUIET = 150
MARGIN = 340


class PaperWindow(QMainWindow):
    """One paper, its history, and where it lies."""

    saved = Signal(str)

    def __init__(
        self, subject: Subject, paper: Paper, lying: Lying | None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.subject = subject
        self.lying = lying
        self.history = PaperHistory(paper, subject.layout)
        if self.is_new:
            self.history.mark_unsaved()
        self.history.subscribe(self._changed)
        self.problems: tuple[Problem, ...] = ()
        self._value: object | None = None
        self._last_good: object | None = None
        self._said = ""
        self._visited = ""
        self.head = PaperHead(self.title, self.state, self)
        self.column = PaperColumn(subject.layout, self)
        self.facts = FactsView(self)
        self.facts.setAccessibleName(translate("PaperWindow", "What it means"))
        self._areas = [scrolling(self.column, self), scrolling(self.facts, self)]
        self._ground = Ground(self)
        self.setCentralWidget(self._ground)
        for widget in (self.head, *self._areas):
            widget.setParent(self._ground)
        self.column.wanted.connect(self.do)
        self.head.close_wanted.connect(self.close)
        self.head.save_wanted.connect(self.save)
        self.head.draft_taken.connect(self.take_draft)
        self.head.draft_dropped.connect(self.drop_draft)
        self.head.changed.connect(self.place)
        self._pace = Pace(self.keep, self)
        self._margin_timer = _timer(self, MARGIN_QUIET, self._refresh_margin)
        self._make_actions()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)
        now = look()
        self.resize(now.px(1180), now.px(800))
        self.show_paper()
        self._refresh_margin()
        if lying is not None and (draft := draft_of(lying)) is not None and draft != paper:
            self.head.offer(draft)

    def _make_actions(self) -> None:
        """Keys; the buttons of the head call the same."""
        for text, keys, slot in (
            (translate("PaperWindow", "Save"), ("Ctrl+S",), self.save),
            (translate("PaperWindow", "Undo"), ("Ctrl+Z",), self.undo),
            (translate("PaperWindow", "Redo"), ("Ctrl+Shift+Z", "Ctrl+Y"), self.redo),
            (translate("PaperWindow", "Next problem"), ("Ctrl+Down",), self.next_problem),
            (translate("PaperWindow", "Close"), ("Ctrl+W",), self.close),
        ):
            action = QAction(text, self)
            action.setShortcuts([QKeySequence(key) for key in keys])
            action.triggered.connect(lambda _=False, slot=slot: slot())
            self.addAction(action)

    # --- editing ---

    def do(self, command: PaperCommand) -> None:
        """Make an edit."""
        try:
            self.history.do(command, self)
        except CommandError as error:
            self.say(str(error))

    def undo(self) -> None:
        """Take the last step back."""
        label = self.history.undo_label
        self.column.let_go()
        self.history.undo()
        if label:
            self.say(translate("PaperWindow", "Undone: {step}.").format(step=label))

    def redo(self) -> None:
        """Do again what was taken back."""
        self.column.let_go()
        self.history.redo()

    def _changed(self, change: PaperChange) -> None:
        """Show what a step changed, and keep it."""
        self._said = ""
        self.show_paper(anew=change.shape or (self.column.build is not None and change.asker is not self))
        self._pace.edited()
        self._margin_timer.start()

    def show_paper(self, *, anew: bool = True) -> None:
        """Read what is typed, and show it with what is wrong."""
        paper = self.history.paper
        name = self.lying.path.name if self.lying else "card"
        self._value, self.problems = problems(paper, name, self.subject.read)
        if self._value is not None:
            self._last_good = self._value
        self.column.put(paper, self.problems, anew=anew)
        self.head.refresh()
        self.setWindowTitle(f"{window_title(self.title())}[*]")
        self.setWindowModified(self.history.changed)

    def _refresh_margin(self) -> None:
        """What the paper means; while it cannot be used, what it meant last, in pencil."""
        facts: tuple[Facts, ...] = ()
        facts = or_absent(lambda: self.subject.facts(self._last_good, self.history.paper), facts)
        self.facts.put(facts, stale=self._value is None)
        self.place()

    def next_problem(self) -> None:
        """Go to the next thing that is wrong."""
        paths = list(dict.fromkeys(problem.path for problem in self.problems))
        if not paths:
            self.say(translate("PaperWindow", "Nothing is wrong."))
            return
        at = paths.index(self._visited) + 1 if self._visited in paths else 0
        self._visited = paths[at % len(paths)]
        widget = self.column.go_to(self._visited)
        if widget is not None:
            self._areas[0].ensureWidgetVisible(widget, 0, look().px(60))

    def say(self, sentence: str) -> None:
        """Tell at the head."""
        self._said = sentence
        self.head.refresh()

    @property
    def is_new(self) -> bool:
        """Whether there is no file of it yet, its own or a shipped one."""
        return self.lying is None or (not self.lying.shipped and not self.lying.path.exists())

    def title(self) -> str:
        """What it is called."""
        return self.subject.title(self.history.paper) or translate("PaperWindow", "no name yet")

    def state(self) -> tuple[str, bool]:
        """The sentence under the title, and whether it is about something wrong."""
        if self._said:
            return self._said, False
        if self.problems:
            first = self.problems[0]
            field = self.column.fields.get(first.path)
            sentence = (
                field.under() if field is not None and field.problem else f"{first.path}: {first.sentence}"
            )
            text = (
                translate("PaperWindow", "1 thing to mend (Ctrl + Down): {first}").format(first=sentence)
                if len(self.problems) == 1
                else translate("PaperWindow", "{count} things to mend (Ctrl + Down): {first}").format(
                    count=len(self.problems), first=sentence
                )
            )
            return text, True
        if self.lying is None or self.is_new:
            return translate("PaperWindow", "New, not saved yet."), False
        if self.lying.shipped:
            return translate(
                "PaperWindow", "Shipped with the program; saving makes a copy of your own, which then counts."
            ), False
        if self.history.changed:
            return translate("PaperWindow", "Changed, not saved yet."), False
        return translate("PaperWindow", "Your own file, {name}.").format(name=self.lying.path.name), False

    # --- saving ---

    def _where(self) -> Lying | None:
        """Where it lies, or will."""
        if self.lying is None and self.subject.place is not None:
            self.lying = self.subject.place(self.history.paper)
        return self.lying

    def save(self, *, over: bool = False) -> bool:
        """Save it, if it can be used; else keep it as a draft and say so."""
        lying = self._fresh_place()
        if lying is None:
            return False
        try:
            self.lying = save_own(self.history.paper, lying, self.subject.read, over=over)
        except DocumentError:
            self.keep()
            self.say(
                translate(
                    "PaperWindow",
                    "Not saved: mend what is marked first (Ctrl + Down goes there). What is typed is kept as a draft.",
                )
            )
            return False
        except ChangedOutside as error:
            answer = ask.changed_outside(self, str(error))
            if answer == "overwrite":
                return self.save(over=True)
            if answer == "save as" and self.subject.place is not None:
                # Another name is made as for a new one; the file that somebody else changed stays as it is.
                lying.draft.unlink(missing_ok=True)
                self.lying = self.subject.place(self.history.paper)
                return self.save()
            return False
        except JobsheetError as error:
            ask.tell(self, str(error))
            return False
        self._pace.done()
        self.history.mark_saved()
        self.setWindowModified(False)
        self.say(translate("PaperWindow", "Saved as {name}.").format(name=self.lying.path.name))
        self.saved.emit(self.lying.path.stem)
        return True

    def _fresh_place(self) -> Lying | None:
        """The place; that of a new one is found anew from its name, until it is first saved."""
        if self.subject.place is not None and self.lying is not None and self.is_new:
            self.lying.draft.unlink(missing_ok=True)
            self.lying = None
        return self._where()

    def keep(self) -> None:
        """Keep what is typed and not saved, so that nothing is lost."""
        self._pace.done()
        if not self.history.changed:
            if self.lying is not None:
                self.lying.draft.unlink(missing_ok=True)
            return
        lying = self._where()
        if lying is None:
            return
        try:
            keep_draft(self.history.paper, lying)
        except JobsheetError as error:
            self.say(str(error))

    def take_draft(self, draft: Paper) -> None:
        """Go on with what was typed last time."""
        self.history.do(Replace(draft, translate("PaperWindow", "take the draft")))
        self.column.put(self.history.paper, self.problems)

    def drop_draft(self) -> None:
        """Throw away what was typed last time."""
        if self.lying is not None:
            self.lying.draft.unlink(missing_ok=True)

    # --- placing, closing ---

    def _focus_moved(self, _old: QWidget | None, new: QWidget | None) -> None:
        """What has the focus is in view; what is typed next is a step of its own."""
        if new is not None and self.column.isAncestorOf(new):
            self.history.break_merge()
            self._areas[0].ensureWidgetVisible(new, 0, look().px(40))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Place everything."""
        super().resizeEvent(event)
        self.place()

    def place(self) -> None:
        """Head above; column and margin side by side, or one under the other where it is narrow."""
        now = look()
        width, high = self._ground.width(), self._ground.height()
        gap = now.px(8)
        top = self.head.arrange(width - 2 * gap) + 2 * gap
        self.head.move(gap, gap)
        if now.form(width) == "narrow":
            part = (high - top - 2 * gap) * 2 // 3
            places = [
                QRect(gap, top, width - 2 * gap, part),
                QRect(gap, top + part + gap, width - 2 * gap, high - top - part - 2 * gap),
            ]
        else:
            margin = now.px(MARGIN)
            left = width - margin - 3 * gap
            places = [
                QRect(gap, top, left, high - top - gap),
                QRect(2 * gap + left, top, margin, high - top - gap),
            ]
        for area, place in zip(self._areas, places, strict=True):
            area.setGeometry(place)
        bar = now.px(10)
        if self.column.width() != places[0].width() - bar - 2:
            self.column.arrange(places[0].width() - bar - 2)
        self.facts.arrange(places[1].width() - bar - 2)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Nothing unsaved is put away without being asked for."""
        if self.history.changed and (self.history.can_undo or self.lying is not None):
            answer = ask.save_changes(self, self.subject.title(self.history.paper))
            if answer == "cancel" or (answer == "save" and not self.save()):
                event.ignore()
                return
            if answer == "throw away":
                self.drop_draft()
        self._pace.done()
        event.accept()


def _timer(parent: QMainWindow, wait: int, slot: Callable[[], object]) -> QTimer:
    timer = QTimer(parent)
    timer.setSingleShot(True)
    timer.setInterval(wait)
    timer.timeout.connect(slot)
    return timer
