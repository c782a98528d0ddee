"""The proving place: left the ladder, right what the machine has shown, under it one conclusion and what to do."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, QSize
from PySide6.QtGui import QAction, QKeySequence, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QScrollArea, QWidget

from jobsheet.errors import JobsheetError, QuantityError
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.forms.title_block import Cell, CellText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look, scroll_style
from jobsheet.gui.margin.dialled import DialsView
from jobsheet.gui.places.proving.ladder_view import LadderView
from jobsheet.gui.places.proving.proved_view import HEAD, PAD, Proved, recorded
from jobsheet.gui.places.proving.proving_desk import ProvingDesk, entries
from jobsheet.operations.kind import Dial
from jobsheet.operations.registry import kind as kind_of

translate = QCoreApplication.translate
HIGH, GAP = 56, 8
#: Below this width [px at 100 %] the chart stands under the ladder.
BESIDE = 900


class ProvingWindow(QMainWindow):
    """One machine is proved at a time; everything entered is in its log at once."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setWindowTitle(translate("Proving", "Proving – job sheet"))
        self._visit = visit
        self.desk = ProvingDesk(visit.desk.job)
        self._said = ""
        self._ground = _Ground(self)
        self.setCentralWidget(self._ground)
        self.head = _Head(self)
        self.left = _Left(self)
        self.right = Proved(self, self.desk, self.take_back)
        self._area = QScrollArea(self._ground)
        self._area.setWidgetResizable(False)
        self._area.setFrameShape(QScrollArea.Shape.NoFrame)
        self._area.verticalScrollBar().setStyleSheet(scroll_style(look()))
        self._inside = QWidget()
        self._area.setWidget(self._inside)
        for widget in (self.left, self.right):
            widget.setParent(self._inside)
        self.head.setParent(self._ground)
        self._make_actions()
        now = look()
        size = visit.parent.size()
        self.resize(max(size.width(), now.px(900)), max(size.height(), now.px(640)))
        self.refresh()

    def _make_actions(self) -> None:
        for keys, slot in (
            (("Ctrl+W", "Esc"), self.close),
            (("Ctrl+Z",), self.take_back),
            (("Ctrl+P",), self.print_sheet),
        ):
            action = QAction(self)
            action.setShortcuts([QKeySequence(key) for key in keys])
            action.triggered.connect(lambda _=False, slot=slot: slot())
            self.addAction(action)

    # --- what is done ---

    def start(self) -> None:
        """Plan the ladder of the form."""
        try:
            self.desk.start()
            self._said = ""
        except JobsheetError as error:
            words = str(error)
            self._said = f"{words[:1].upper()}{words[1:]}".rstrip(".") + "."
        self.refresh()
        if self.desk.current is not None:
            self.left.ladder.setFocus()

    def another(self) -> None:
        """Back to the form; what was recorded stays recorded."""
        self.desk.ladder = None
        self.desk.done = {}
        self._said = ""
        self.refresh()

    def happened(self, digit: int) -> None:
        """What happened on the current rung."""
        ladder = self.left.ladder
        try:
            seconds, tachometer = ladder.number("seconds"), ladder.number("tachometer")
        except QuantityError as problem:
            self._say(str(problem))
            return
        try:
            self.desk.enter(
                digit, seconds=seconds, tachometer=tachometer, slipped=ladder.slipped, note=ladder.note()
            )  # fmt: skip
        except JobsheetError as error:
            self._say(str(error))
            return
        self._said = ""
        self.refresh()
        self._visit.proof_changed()
        if self.desk.current is not None:
            ladder.setFocus()

    def take_back(self) -> None:
        """Strike the last trial of this ladder out."""
        try:
            trial = self.desk.take_back()
        except JobsheetError as error:
            self._say(str(error))
            return
        if trial is not None:
            self._say(
                translate("Proving", "Struck out: {outcome}. The log keeps both.").format(
                    outcome=trial.outcome
                )
            )
            self._visit.proof_changed()

    def print_sheet(self) -> None:
        """Save the proving sheet as PDF."""
        ladder = self.desk.ladder
        if ladder is None or ladder.refused:
            return
        from pathlib import Path

        from jobsheet.gui.desk.job_pdf import proving_pdf

        initials = ask.proving_initials(self)
        if initials is None:
            return
        name = f"proving-{ladder.machine.name}-{ladder.process}.pdf"
        path = ask.export_path(self, Path.home() / name)
        if path is None:
            return
        try:
            path.write_bytes(proving_pdf(ladder, initials, trainee=self._visit.desk.job.trainee))
            self._say(translate("Proving", "Saved as {name}.").format(name=path.name))
        except (JobsheetError, OSError) as error:
            ask.tell(self, str(error))

    def _say(self, words: str) -> None:
        self._said = words
        self.refresh()

    # --- showing ---

    def refresh(self) -> None:
        """Show everything as it stands."""
        self.head.put(self.desk)
        self.left.put(self.desk, self._said)
        self.right.put(self.desk)
        self.place()

    def place(self) -> None:
        """Head, then ladder and chart side by side, or one under the other."""
        if not hasattr(self, "_inside"):
            return  # the ground is laid before what lies on it
        now = look()
        ground = self._ground.size()
        self.head.setGeometry(0, 0, ground.width(), now.px(HIGH))
        gap, top = now.px(GAP), now.px(HIGH) + now.px(GAP)
        self._area.setGeometry(gap, top, ground.width() - gap, ground.height() - top - gap)
        # The viewport is not laid out before it is shown: reckon with its size as it will be.
        bar = now.px(12)
        room = QSize(self._area.width() - bar, self._area.height())
        width = room.width() - gap
        if self.width() / now.scale >= BESIDE:
            left = round(width * 0.46)
            right = width - left - gap
            high = max(self.left.arrange(left), self.right.needed(right), room.height())
            self.left.setGeometry(0, 0, left, high)
            self.right.setGeometry(left + gap, 0, right, high)
            whole = high
        else:
            first = self.left.arrange(width)
            self.left.setGeometry(0, 0, width, first)
            second = self.right.needed(width)
            self.right.setGeometry(0, first + gap, width, second)
            whole = first + gap + second
        self._inside.resize(width + gap, whole)
        self.left.update()
        self.right.arrange()


class _Ground(QWidget):
    """The bench under the sheets."""

    def __init__(self, window: ProvingWindow) -> None:
        super().__init__(window)
        self._window = window

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Everything is placed on it anew."""
        super().resizeEvent(event)
        self._window.place()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Bench."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("bench"))


class _Head(QWidget):
    """Cells as on a drawing, and the buttons."""

    def __init__(self, window: ProvingWindow) -> None:
        super().__init__(window)
        self.cells = [Cell(name, self) for name in ("part", "limit", "cutter", "work")]
        for cell in self.cells:
            cell.setEnabled(False)
        self.another = Button(translate("Proving", "Start another ladder"), self)
        self.another.clicked.connect(window.another)
        self.sheet = Button(translate("Proving", "Print the sheet…"), self)
        self.sheet.clicked.connect(window.print_sheet)
        self.back = Button(translate("Proving", "Back to the job"), self)
        self.back.clicked.connect(window.close)

    def put(self, desk: ProvingDesk) -> None:
        """Which machine, which limit, which cutter, which work."""
        ladder = desk.ladder
        if ladder is None:
            shown = [CellText(translate("Proving", "Proving"), translate("Proving", "a new ladder"))]
        else:
            about = (
                translate("Proving", "chatter")
                if desk.about == "chatter"
                else translate("Proving", "spindle torque")
            )
            shown = [
                CellText(translate("Proving", "Proving"), ladder.machine.title),
                CellText(translate("Proving", "Limit"), f"{about}, {ladder.process}"),
                CellText(translate("Proving", "Cutter"), ladder.cutter.text),
                CellText(
                    translate("Proving", "Work"),
                    ", ".join(part for part in (ladder.material, ladder.holding) if part),
                ),
            ]
        for cell, text in zip(
            self.cells, [*shown, *(CellText("") for _ in range(4 - len(shown)))], strict=True
        ):
            cell.put(text)
        self.another.setVisible(ladder is not None)
        self.sheet.setVisible(ladder is not None and not ladder.refused)
        self.arrange()

    def resizeEvent(self, _event: QResizeEvent) -> None:  # noqa: N802
        """Place the cells again."""
        self.arrange()

    def arrange(self) -> None:
        """Buttons at the right, cells as far as they fit."""
        now = look()
        right = self.width() - now.px(10)
        for button in (self.back, self.another, self.sheet):
            if button.isHidden():
                continue
            hint = button.sizeHint()
            right -= hint.width()
            button.setGeometry(right, (self.height() - hint.height()) // 2, hint.width(), hint.height())
        left = 0
        for cell in self.cells:
            wide = cell.sizeHint().width()
            fits = bool(cell.shown.value) and left + wide <= right
            cell.setVisible(fits)
            if fits:
                cell.setGeometry(left, 0, wide, self.height())
                left += wide

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, a heavy rule above and an ink line below."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, 2)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)


class _Left(QWidget):
    """The form that starts a ladder, or the ladder."""

    def __init__(self, window: ProvingWindow) -> None:
        super().__init__(window)
        self._window = window
        units = window.desk.units
        self.form = Form(entries(), units, translate("Proving", "A new ladder"), self, joined=False)
        # A test piece is cut with whatever lies at hand: no list of the cabinet here.
        self.form.fields["cutter"].from_cabinet = False
        self.form.typed.connect(self._typed)
        self.form.height_changed.connect(window.place)
        self.button = Button(translate("Proving", "Plan the ladder"), self, Manner.FILLED)
        self.button.clicked.connect(window.start)
        self.ladder = LadderView(units, self)
        self.ladder.happened.connect(window.happened)
        self.ladder.height_changed.connect(window.place)
        self.dials = DialsView(self)
        self._desk = window.desk
        self._said = ""
        self._words_top = 0

    def _typed(self, name: str, text: str) -> None:
        self._desk.set(name, text)
        self._show_form()
        if name == "machine":
            self._window.refresh()

    def _show_form(self) -> None:
        shown = {}
        for entry in entries():
            text = getattr(self._desk.asked, entry.name)
            problem = None
            if entry.asks not in ("choice", "text") and text.strip():
                try:
                    entry.read(text, self._desk.units)
                except QuantityError as error:
                    problem = error
            shown[entry.name] = Shown(text, entry.hint, problem)
        self.form.put(shown)

    def put(self, desk: ProvingDesk, said: str) -> None:
        """Show the form or the ladder."""
        self._desk, self._said = desk, said
        fresh = desk.ladder is None
        self.form.setVisible(fresh)
        self.button.setVisible(fresh)
        self.ladder.setVisible(not fresh and bool(desk.ladder and desk.ladder.rungs))
        if fresh:
            self._show_form()
        else:
            self.ladder.put(desk.ladder, desk.done, desk.current)
        self.dials.put(_dials(desk), stale=False, why_not="")
        self.dials.setVisible(desk.current is not None)
        self.update()

    def _words(self) -> list[str]:
        """What stands under form or ladder: what was just said, then when to stop."""
        ladder = self._desk.ladder
        words = [self._said] if self._said else []
        if ladder is not None and ladder.refused:
            words += recorded(self._desk)
        elif ladder is not None:
            words.append(f"{ladder.stop[0]} {' · '.join(ladder.stop[1:])}.")
            words += [ladder.ends] if self._desk.current is None and not self._desk.stopped else []
        return words

    def arrange(self, width: int) -> int:
        """Place form or ladder; the height needed."""
        now = look()
        pad, top = now.px(PAD), now.px(HEAD) + now.px(6)
        inside = width - 2 * pad
        if self._desk.ladder is None:
            high = self.form.arrange(inside, 2)
            self.form.setGeometry(pad, top, inside, high)
            hint = self.button.sizeHint()
            self.button.setGeometry(pad - now.px(4), top + high + now.px(6), hint.width(), hint.height())
            top += high + hint.height() + now.px(12)
        elif self._desk.ladder.rungs:
            if not self.dials.isHidden():
                high = self.dials.arrange(width)
                self.dials.setGeometry(0, top, width, high)
                top += high
            high = self.ladder.arrange(width)
            self.ladder.setGeometry(0, top, width, high)
            top += high + now.px(6)
        self._words_top = top
        for words in self._words():
            top += ink.paragraph_height(now, words, now.body, inside) + now.px(8)
        return top + now.px(10)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, the heading, the words."""
        now = look()
        pad = now.px(PAD)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            ladder = self._desk.ladder
            head = QRect(pad, 0, self.width(), now.px(HEAD))
            title = (
                translate("Proving", "Ladder") if ladder is not None else translate("Proving", "A new ladder")
            )
            wide = ink.write(painter, now, head, title, now.head)
            hint = translate("Proving", "from the bottom; ends at the first sign of trouble")
            ink.write(painter, now, head.translated(wide + now.px(10), 0), hint, now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD))
            top = self._words_top
            for index, words in enumerate(self._words()):
                box = QRect(pad, top, self.width() - 2 * pad, self.height())
                tone = "verm" if self._said and not index else "ink"
                top += ink.paragraph(painter, now, box, words, now.body, tone) + now.px(8)


def _dials(desk: ProvingDesk) -> tuple[Dial, ...]:
    """The three things to set for the current rung."""
    ladder, rung = desk.ladder, desk.current
    if ladder is None or rung is None or rung.figures.figures is None:
        return ()
    return tuple(kind_of(ladder.kind).dials(rung.fields, rung.figures.figures, ladder.setting))
