"""What happened at the machine: left the steps, right sizes and minutes, under
them one conclusion and what to do.
"""

from __future__ import annotations

import importlib
from datetime import date, timedelta
from itertools import pairwise

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QRect
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence
from PySide6.QtWidgets import QMainWindow, QScrollArea, QWidget

from jobsheet.errors import JobsheetError, as_sentence
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.ground import Ground
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.ran.big_button import GAP, BigField
from jobsheet.gui.places.ran.ran_changes import RanChanges
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.gui.places.ran.ran_foot import RanFoot
from jobsheet.gui.places.ran.ran_head import RanHead
from jobsheet.gui.places.ran.ran_sizes import RanSizes
from jobsheet.gui.places.ran.ran_steps import RanSteps
from jobsheet.reckoning.run_words import day_words, read_day
from jobsheet.reckoning.runs_kept import Kept, this_moment
from jobsheet.storage.kept.own_pace import own_pace
from jobsheet.storage.records.run_log import path_beside

translate = QCoreApplication.translate
#: The right sheet is so wide, and never less [px at 100 %].
SHARE, LEAST = 0.37, 372


class RanWindow(QMainWindow):
    """One set-up on one day; nothing is recorded before *Keep*."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Ran", "What happened – job sheet"))
        self._visit = visit
        self.desk = RanDesk(visit.desk, visit.on())
        self._said, self._trouble = "", False
        self._look = look()
        self._ground = Ground(self, self.place)
        self.setCentralWidget(self._ground)
        self.head = RanHead(self.desk, self._ground)
        self.left, self._left_sheet = self._area()
        self.right, self._right_sheet = self._area()
        self.steps = RanSteps(self.desk, self._left_sheet)
        self.sizes = RanSizes(self.desk, self._right_sheet)
        self.changes = RanChanges(self.desk, self._left_sheet)
        self.foot = RanFoot(self.desk, self._ground)
        self._connect()
        now = look()
        size = visit.parent.size()
        self.resize(max(size.width(), now.px(900)), max(size.height(), now.px(640)))
        self._order()
        self.steps.begin()
        self.steps.setFocus()
        self.refresh()
        # What the first keeping needs to learn from it is read while nobody waits.
        QtCore.QTimer.singleShot(0, lambda: importlib.import_module("jobsheet.proving.learned"))

    def _area(self) -> tuple[QScrollArea, QWidget]:
        """A sheet that scrolls where it has no room."""
        area = QScrollArea(self._ground)
        area.setWidgetResizable(False)
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        area.verticalScrollBar().setStyleSheet(scroll_style(look()))
        inside = QWidget()
        area.setWidget(inside)
        return area, inside

    def _connect(self) -> None:
        for part in (self.steps.said, self.sizes.said, self.changes.said):
            part.connect(self._changed)
        self.steps.moved.connect(self._moved)
        self.sizes.moved.connect(lambda place: self._reveal(self.right, self.sizes, place))
        self.sizes.made.connect(self._order)
        self.head.day_typed.connect(self._day)
        self.head.day_moved.connect(self._day_by)
        self.head.role_typed.connect(self.desk.by)
        self.head.set_up_wanted.connect(self.to_set_up)
        self.head.close_wanted.connect(self.close)
        self.foot.keep_wanted.connect(self.keep)
        self.foot.back_wanted.connect(self.take_back)
        self.foot.save_wanted.connect(self.save)
        self.foot.proof_wanted.connect(self._proof)
        self.foot.pace_wanted.connect(self._pace)
        for keys, slot in (
            (("Ctrl+W",), self.close),
            (("Esc",), self._out),
            (("Ctrl+Return", "Ctrl+Enter"), self.keep),
            (("Ctrl+Z",), self.take_back),
            (("Ctrl+S",), self.save),
            (("Alt+PgUp",), lambda: self._beside(-1)),
            (("Alt+PgDown",), lambda: self._beside(1)),
        ):
            action = QAction(self)
            action.setShortcuts([QKeySequence(key) for key in keys])
            action.triggered.connect(lambda _=False, slot=slot: slot())
            self.addAction(action)

    # --- what is done ---

    def _out(self) -> None:
        """Esc: out of a field, back to the steps; from there, back to the job."""
        if self.steps.hasFocus():
            self.close()
        else:
            self.steps.setFocus()

    def _changed(self) -> None:
        """Something was said; what was told before is over."""
        self._said, self._trouble = "", False
        self.refresh()

    def _moved(self) -> None:
        """Another step is open."""
        self.refresh()
        self._reveal(self.left, self.steps, self.steps.open_place(), foot=self.steps.answers.goes_on)

    def _proof(self) -> None:
        self.desk.to_proof = not self.desk.to_proof
        self.refresh()

    def _pace(self) -> None:
        """Times by the factors of what ran here, or as planned again: only what is shown changes."""
        self.desk.times_as_here()
        own = own_pace()
        words = (
            translate("Ran", "Times are shown as they are planned again.")
            if own is None
            else translate(
                "Ran",
                "The time of a job is shown by your own times now, × {set_up} for setting up and × {work} for the rest; no planned minute is changed.",
            ).format(set_up=f"{own.set_up:.2g}", work=f"{own.work:.2g}")
        )
        self._tell(words, trouble=False)
        self._visit.proof_changed()

    def keep(self) -> None:
        """Keep what was said, half filled too."""
        try:
            done = self.desk.keep()
        except (JobsheetError, OSError) as error:
            self._tell(str(error), trouble=True)
            return
        said = " ".join(part for part in (self._kept_words(done), done.unclosed) if part)
        self._tell(said, trouble=bool(done.refused or done.unclosed))
        if done.trials or done.struck:
            self._visit.proof_changed()

    def _kept_words(self, done: Kept) -> str:
        """What was written where."""
        plan = self.desk.plan
        if done.refused:
            words = translate("Ran", "It is kept beside the job, but not in the proof log: {why}")
            return words.format(why=done.refused)
        name = path_beside(plan.path).name if plan is not None else ""
        words = (
            translate("Ran", "Kept: {count} entries in {name}.")
            if len(done.written) != 1
            else translate("Ran", "Kept: {count} entry in {name}.")
        ).format(count=len(done.written), name=name)
        if done.trials:
            numbers = ", ".join(str(entry.number) for entry, _ in done.trials)
            words += " " + translate("Ran", "In the proof log of {machine}: {numbers}.").format(
                machine=self.desk.machine, numbers=numbers
            )
        if done.back:
            words += " " + translate("Ran", "What stood there before is taken back.")
        return words

    def take_back(self) -> None:
        """Take back what is kept of this set-up on this day; it stays on the screen."""
        try:
            done = self.desk.take_back()
        except (JobsheetError, OSError) as error:
            self._tell(str(error), trouble=True)
            return
        words = translate(
            "Ran", "Taken back: {count} entries no longer count; here they can be mended and kept again."
        )
        if len(done.back) == 1:
            words = translate(
                "Ran", "Taken back: {count} entry no longer counts; here it can be mended and kept again."
            )
        said = words.format(count=len(done.back))
        self._tell(f"{said} {done.refused}".strip(), trouble=bool(done.refused))
        if done.struck:
            self._visit.proof_changed()

    def save(self) -> None:
        """Save the job, which gives it a file or makes it the plan that this is kept with."""
        if self._visit.save():
            self.desk.load()
            self.steps.begin()
            self._tell(translate("Ran", "The job is saved."), trouble=False)

    def _tell(self, words: str, *, trouble: bool) -> None:
        """Say something in the foot, and to a screen reader."""
        from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

        said = as_sentence(words)
        self._said, self._trouble = said, trouble
        self.refresh()
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.foot, said))

    # --- another set-up, another day ---

    def _leave(self) -> bool:
        """Whether what was not kept may go."""
        if not self.desk.unkept:
            return True
        answer = ask.keep_run(self)
        if answer == "keep":
            self.keep()
            return not self._trouble
        return answer == "throw away"

    def come(self, key: str) -> None:
        """It was called once more: to the set-up one is on, where nothing is lost by it."""
        self.raise_()
        self.activateWindow()
        if not self.desk.unkept:
            self.to_set_up(key)

    def to_set_up(self, key: str) -> None:
        """Another set-up of the job."""
        if self._leave():
            self.desk.go(set_up=key)
            self._shown_anew()

    def _beside(self, by: int) -> None:
        (self.head.before if by < 0 else self.head.after).click()

    def _day(self, text: str) -> None:
        """Another day, as it was typed."""
        today = this_moment()[0]
        try:
            day = read_day(text, today)
        except JobsheetError as error:
            self.head.day.setText(day_words(self.desk.day, year=True))
            self._tell(str(error), trouble=True)
            return
        self._to_day(day)

    def _day_by(self, by: int) -> None:
        day = (date.fromisoformat(self.desk.day) + timedelta(days=by)).isoformat()
        if day > this_moment()[0]:
            self._tell(translate("Ran", "That day is still to come."), trouble=True)
        else:
            self._to_day(day)

    def _to_day(self, day: str) -> None:
        """What was said and not kept goes along to the other day; what is kept
        there wins where nothing was said.
        """
        if day != self.desk.day:
            self.desk.to_day(day)
            self._said, self._trouble = "", False
            self.refresh()

    def _shown_anew(self) -> None:
        self._said, self._trouble = "", False
        self.steps.begin()
        self.steps.setFocus()
        self.refresh()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Coming back to it: job and record may have changed meanwhile."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and hasattr(self, "foot"):
            self.desk.load()
            self.refresh()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """What was not kept is asked about."""
        if self._leave():
            super().closeEvent(event)
        else:
            event.ignore()

    # --- showing ---

    def _order(self) -> None:
        """Tab goes as the hand does at the machine: steps, sizes, what one would
        change, minutes; then the head.
        """
        order: list[QWidget] = [
            self.steps,
            *self.steps.answers.fields.values(),
            *self.sizes.fields.values(),
            *self.changes.words.values(),
            self.changes.note,
            *self.sizes.times.values(),
            self.foot.pace,
            self.foot.proof,
            self.foot.save,
            self.foot.back,
            self.foot.keep,
            self.head.day,
            self.head.role,
        ]
        for widget, other in pairwise(order):
            QWidget.setTabOrder(widget, other)

    def refresh(self) -> None:
        """Show everything as it stands, in the look of the moment."""
        if self._look is not look():
            self._look = look()
            for field in self.findChildren(BigField):
                field.dress()
            for area in (self.left, self.right):
                area.verticalScrollBar().setStyleSheet(scroll_style(self._look))
        self.head.put()
        self.sizes.put()
        self.changes.put()
        self.foot.put(self._said, trouble=self._trouble)
        self.place()

    def place(self) -> None:
        """Head, two sheets, foot."""
        if not hasattr(self, "foot"):
            return  # the ground is laid before what lies on it
        now = look()
        gap = now.px(GAP)
        ground = self._ground.rect()
        top = self.head.arrange(ground.width())
        self.head.setGeometry(0, 0, ground.width(), top)
        foot = self.foot.arrange(ground.width() - 2 * gap)
        self.foot.setGeometry(gap, ground.height() - foot - gap, ground.width() - 2 * gap, foot)
        room = QRect(gap, top + gap, ground.width() - 2 * gap, ground.height() - top - foot - 3 * gap)
        shown = self.desk.asked is not None
        right = max(round((room.width() - gap) * SHARE), now.px(LEAST))
        left = room.width() - right - gap
        for area, at, wide in ((self.left, room.left(), left), (self.right, room.left() + left + gap, right)):
            area.setVisible(shown)
            area.setGeometry(at, room.top(), wide, max(room.height(), 0))
        if shown:
            self._fill(self.left, self._left_sheet, [self.steps, self.changes])
            self._fill(self.right, self._right_sheet, [self.sizes])
        for widget in (self.head, self.steps, self.sizes, self.changes, self.foot):
            widget.update()

    @staticmethod
    def _fill(area: QScrollArea, sheet: QWidget, parts: list[RanSteps | RanChanges | RanSizes]) -> None:
        """Parts one under the other; the last at the foot where there is room to spare."""
        width = area.width()
        heights = [part.arrange(width) for part in parts]
        if sum(heights) > area.height():
            width -= look().px(12)
            heights = [part.arrange(width) for part in parts]
        heights[0] += max(0, area.height() - sum(heights))
        sheet.resize(width, sum(heights))
        top = 0
        for part, high in zip(parts, heights, strict=True):
            part.setGeometry(0, top, width, high)
            top += high

    @staticmethod
    def _reveal(area: QScrollArea, part: QWidget, place: QRect, *, foot: bool = False) -> None:
        """Bring a place into view: where it is higher than the room its head, or
        its foot where the hand is there.
        """
        inside = place.translated(part.pos())
        for y in (inside.top(), inside.bottom()) if foot else (inside.bottom(), inside.top()):
            area.ensureVisible(0, y, 0, 12)
