"""All that was recorded of a machine: what does not fit on top, then every trial and mark, each
to be struck or given back in place.
"""

from __future__ import annotations

from itertools import pairwise

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.clock import today
from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.asked_here import Question
from jobsheet.gui.places.proving.odd_view import OddView
from jobsheet.gui.places.proving.proving_desk import ProvingDesk
from jobsheet.gui.places.proving.record_acts import RecordActs
from jobsheet.gui.places.proving.record_line import RecordLine
from jobsheet.gui.places.proving.record_rows import RecordRow, limit_words, record_rows
from jobsheet.model.trials import CHANGES
from jobsheet.operations.entry import Entry
from jobsheet.reckoning.ladder.ladders import Ladder
from jobsheet.reckoning.ladder.usual_cut import in_sizes
from jobsheet.reckoning.odd_trials import Odd, odd_trials

translate = QCoreApplication.translate
PAD, HEAD, CHART = 14, 36, 400
#: So many lines are shown at once; the older ones are one press away.
AT_ONCE = 40


class RecordView(QWidget):
    """The record: lines to go through by key, one question at a time under the line that it is about."""

    #: Something of the record is otherwise than it was: what is to be said of it.
    recorded = Signal(str)
    height_changed = Signal()
    #: This part of it is to be seen.
    look_at = Signal(QWidget)
    back_wanted = Signal()

    def __init__(self, desk: ProvingDesk, acts: RecordActs, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._acts = desk, acts
        self._rows: tuple[RecordRow, ...] = ()
        self._shown = AT_ONCE
        self.lines: list[RecordLine] = []
        self.odd: list[OddView] = []
        self.question = Question(self, desk.units)
        self.question.height_changed.connect(self.height_changed)
        self.question.closed.connect(self._closed)
        #: The line that the question is about; empty for the machine itself.
        self._about = ""
        self.changed = Button(translate("Record", "The machine changed…"), self, in_row=True)
        self.changed.clicked.connect(self.ask_changed)
        self.back = Button(translate("Record", "Back to the chart"), self, in_row=True)
        self.back.clicked.connect(self.back_wanted)
        #: What such cuts taught, in sizes, a line each; and the ladder that the
        #: form would begin, with its chart.
        self.carries: tuple[str, ...] = ()
        self.unread: tuple[str, ...] = ()
        self._foreseen: Ladder | None = None
        self._chart: tuple[int, Drawing] | None = None
        self._foot = 0
        self.older = Button("", self, Manner.LINK)
        self.older.clicked.connect(self._show_older)
        self.older.hide()

    # --- showing ---

    def put(self, desk: ProvingDesk) -> None:
        """Show the record of the machine as it stands."""
        self._desk = desk
        log = desk.log
        rows = record_rows(log)
        odds = odd_trials(desk.known(), log)
        if rows != self._rows:
            self._rows = rows
            self._make_lines()
        if tuple(odd_view.odd for odd_view in self.odd) != odds:
            for odd_view in self.odd:
                odd_view.hide()
                odd_view.deleteLater()
            by_id = {row.id: row for row in rows}
            self.odd = [OddView(odd, by_id.get(odd.trial.id), self) for odd in odds]
            for odd_view in self.odd:
                odd_view.strike_wanted.connect(self._strike_odd)
                odd_view.keep_wanted.connect(self._keep)
                odd_view.changed_wanted.connect(self.ask_changed_then)
                odd_view.show()
        self.carries = self._carried()
        # A record that cannot be read counts for nothing, and that is said.
        self.unread = tuple(f"{log.machine}.txt: {problem}" for problem in log.problems)
        self._chart = None
        self.back.setVisible(desk.ladder is not None)
        self.setAccessibleName(". ".join((f"{self.head()}: {self.beside()}", *self.unread, *self.carries)))
        self.update()

    def foresee(self, ladder: Ladder | None) -> None:
        """The ladder that the form would begin: what it is about is drawn where there is room."""
        self._foreseen, self._chart = ladder, None
        self.height_changed.emit()
        self.update()

    def _carried(self) -> tuple[str, ...]:
        """What each kind of cut taught, in sizes of the newest such cut."""
        known, standing = self._desk.known(), self._desk.log.standing
        if known is None:
            return ()
        lines = []
        for capacity in known.capacities:
            sizes = in_sizes(capacity, standing)
            if sizes is not None:
                cuts = sum(
                    (trial.process, trial.cutter_kind) == (capacity.process, capacity.cutter_kind)
                    for trial in standing
                )
                words = (
                    translate("Record", "{process}, {cut}; {count} cuts, the newest of {day}")
                    if cuts != 1
                    else translate("Record", "{process}, {cut}; one cut, of {day}")
                )
                lines.append(
                    words.format(process=capacity.process, cut=sizes.words(), count=cuts, day=capacity.newest)
                )
        return tuple(lines)

    def _drawing(self, width: int) -> Drawing | None:
        """What is known of the cuts of the form, before its ladder."""
        ladder = self._foreseen
        if ladder is None or not ladder.rungs or self._desk.ladder is not None:
            return None
        if self._chart is None or self._chart[0] != width:
            from jobsheet.report.charts import chance_chart

            factor = SCALE * look().scale
            before, after = self._desk.before(ladder), self._desk.after(ladder)
            if before is None:
                return None
            drawing = chance_chart(
                ladder, before, after, self._desk.same_cuts(), width / factor, look().px(CHART) / factor,
                planned=after.planned or None if after is not None else None,
            )  # fmt: skip
            self._chart = (width, drawing)
        return self._chart[1]

    def head(self) -> str:
        """What stands over it."""
        return translate("Record", "What was recorded")

    def beside(self) -> str:
        """How much there is, and how much of it was struck out."""
        cuts = [row for row in self._rows if row.record.is_cut]
        if not cuts:
            return translate("Record", "nothing yet")
        struck = sum(bool(row.struck) for row in cuts)
        words = (
            translate("Record", "one trial")
            if len(cuts) == 1
            else translate("Record", "{count} trials").format(count=len(cuts))
        )
        invented = any(row.invented for row in cuts)
        parts = (
            words,
            translate("Record", "invented") if invented else "",
            translate("Record", "{count} struck out").format(count=struck) if struck else "",
        )
        return ", ".join(part for part in parts if part)

    def _make_lines(self) -> None:
        held = next((line.row.id for line in self.lines if line.hasFocus()), "")
        for line in self.lines:
            line.hide()
            line.deleteLater()
        self.lines = []
        for row in self._rows[: self._shown]:
            line = RecordLine(row, self)
            line.clicked.connect(lambda _=False, row=row: self.ask_about(row))
            line.moved.connect(lambda far, line=line: self._go(line, far))
            line.reached.connect(lambda line=line: self.look_at.emit(line))
            line.show()
            self.lines.append(line)
            if row.id == held:
                line.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
        left = len(self._rows) - len(self.lines)
        self.older.setText(translate("Record", "Show {count} older").format(count=left))
        self.older.setAccessibleName(self.older.text())
        self.older.setVisible(left > 0)

    def _show_older(self) -> None:
        self._shown = len(self._rows)
        self._make_lines()
        self.height_changed.emit()

    def focus_lines(self) -> None:
        """Go to the newest line; to what does not fit where there is something."""
        first = self.odd[0].strike if self.odd else self.lines[0] if self.lines else self.changed
        first.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def _go(self, line: RecordLine, far: int) -> None:
        place = min(max(self.lines.index(line) + far, 0), len(self.lines) - 1)
        self.lines[place].setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def _line_of(self, id_: str) -> RecordLine | None:
        return next((line for line in self.lines if line.row.id == id_), None)

    # --- what is asked in place ---

    def ask_about(self, row: RecordRow) -> None:
        """Strike it out, with a reason; or give it back."""
        self._about = row.id
        role = self._desk.asked.role
        if row.struck:
            words = translate("Record", "{which} was struck out {why}. Shall it count again?")
            sentence = words.format(which=row.named(), why=row.struck)

            def give(_texts: dict[str, str]) -> None:
                self._acts.give_back(row.record, role)
                self.recorded.emit(translate("Record", "It counts again: {which}.").format(which=row.named()))

            self.question.ask(lambda _: sentence, (), {}, translate("Record", "Give it back"), give)
        else:
            sentence = translate(
                "Record",
                "Strike out {which}? It stays to be read, and no longer counts. Ctrl + Z gives it back.",
            ).format(which=row.named())
            why = Entry(name="why", title=translate("Record", "Why it is wrong"), asks="text")

            def strike(texts: dict[str, str]) -> None:
                self._acts.strike(row.record, texts["why"], role)
                self.recorded.emit(translate("Record", "Struck out: {which}.").format(which=row.named()))

            self.question.ask(
                lambda _: sentence, (why,), {"why": ""}, translate("Record", "Strike it out"), strike
            )
        self.height_changed.emit()
        self.look_at.emit(self.question)

    def _row_of(self, odd: Odd) -> RecordRow | None:
        return next((row for row in self._rows if row.id == odd.trial.id), None)

    def _strike_odd(self, odd: Odd) -> None:
        if (row := self._row_of(odd)) is not None:
            if self._line_of(row.id) is None:
                self._show_older()
            self.ask_about(row)

    def _keep(self, odd: Odd) -> None:
        self._acts.keep(odd.trial, self._desk.asked.role)
        row = self._row_of(odd)
        which = row.named() if row is not None else odd.trial.outcome
        self.recorded.emit(
            translate("Record", "{which} was so: it counts as it stands.").format(
                which=which[:1].upper() + which[1:]
            )
        )
        self.focus_lines()

    def ask_changed(self) -> None:
        """The machine changed: what, when, and what was done."""
        self._about = ""
        machine = self._desk.machine_name

        def act(texts: dict[str, str]) -> None:
            self._acts.changed(machine, texts["what"], texts["date"], texts["note"], self._desk.asked.role)
            self._marked(texts["what"])

        entries = (
            self._what(),
            Entry(
                name="date", title=translate("Record", "When"), asks="text", hint=translate("Record", "such as 2026-11-25")
            ),
            self._note(),
        )  # fmt: skip
        texts = {"what": "gibs", "date": today(), "note": ""}
        self.question.ask(self._fades, entries, texts, translate("Record", "Mark it"), act)
        self.height_changed.emit()
        self.look_at.emit(self.question)

    def ask_changed_then(self, odd: Odd) -> None:
        """The machine changed when a trial did not fit: what it was; the day is that of the trial."""
        self._about = ""

        def act(texts: dict[str, str]) -> None:
            self._acts.changed_then(odd, texts["what"], texts["note"], self._desk.asked.role)
            self._marked(texts["what"])

        self.question.ask(
            self._fades, (self._what(odd.limit), self._note()), {"what": self._what(odd.limit).choices[0], "note": ""},
            translate("Record", "Mark it"), act,
        )  # fmt: skip
        self.height_changed.emit()
        self.look_at.emit(self.question)

    @staticmethod
    def _what(limit: str = "") -> Entry:
        choices = tuple(word for word, limits in CHANGES.items() if not limit or limit in limits)
        return Entry(name="what", title=translate("Record", "What changed"), asks="choice", choices=choices)

    @staticmethod
    def _note() -> Entry:
        return Entry(
            name="note", title=translate("Record", "What was done"), asks="text", optional=True,
            hint=translate("Record", "such as adjusted, renewed"),
        )  # fmt: skip

    @staticmethod
    def _fades(texts: dict[str, str]) -> str:
        """What then says less, for the change that is chosen."""
        about = limit_words(texts.get("what", "gibs"))
        return translate(
            "Record",
            "The machine changed. What was known of {about} before then says less, and no good cut from before is rested on; nothing is thrown away.",
        ).format(about=about)

    def _marked(self, what: str) -> None:
        """Say what was marked; the chances of a ladder that lies here rest on what was known before."""
        words = translate(
            "Record", "Marked: {what}. What was known of {about} before says less from then on."
        ).format(what=what, about=limit_words(what))
        if self._desk.ladder is not None and self._desk.current is not None:
            self._desk.leave()
            words += translate("Record", " The ladder rested on it: plan it anew.")
        self.recorded.emit(words)

    def _closed(self) -> None:
        """The question is gone: back to the line that it was about."""
        line = self._line_of(self._about)
        (line or self.changed).setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
        self.height_changed.emit()

    # --- placing ---

    def arrange(self, width: int) -> int:
        """Place everything from the top; the height needed."""
        now = look()
        right = width - now.px(8)
        for button in (self.back, self.changed):
            if button.isHidden():
                continue
            hint = button.sizeHint()
            right -= hint.width()
            button.setGeometry(right, (now.px(HEAD) - hint.height()) // 2, hint.width(), hint.height())
        top = now.px(HEAD) + 1
        asked = not self.question.isHidden()
        line = self._line_of(self._about) if self._about else None
        for words in (*self.unread, *self.carries):
            top += ink.paragraph_height(now, words, now.body, width - 2 * now.px(PAD)) + now.px(4)
        top += now.px(12) if self.carries or self.unread else 0
        if asked and line is None:
            top = self._place(self.question, top, width, self.question.arrange(width))
        for odd in self.odd:
            top = self._place(odd, top, width, odd.arrange(width))
        for record_line in self.lines:
            top = self._place(record_line, top, width, record_line.needed(width - 2))
            if asked and record_line is line:
                top = self._place(self.question, top, width, self.question.arrange(width))
        if not self.older.isHidden():
            hint = self.older.sizeHint()
            self.older.setGeometry(now.px(PAD), top + now.px(4), hint.width(), hint.height())
            top += hint.height() + now.px(8)
        self._order()
        self._foot = top
        drawn = self._drawing(width - 2 * now.px(PAD)) is not None
        return top + (now.px(HEAD + CHART + 12) if drawn else now.px(12))

    def _order(self) -> None:
        """Tab goes as the eye does."""
        chain: list[QWidget] = [self.changed]
        if not self.back.isHidden():
            chain.append(self.back)
        for odd in self.odd:
            chain += [odd.strike, odd.keep, odd.then]
        chain += [*self.lines, self.older]
        for widget, after in pairwise(chain):
            self.setTabOrder(widget, after)

    @staticmethod
    def _place(widget: QWidget, top: int, width: int, high: int) -> int:
        widget.setGeometry(1, top, width - 2, high)
        return top + high

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, the heading, and what to do where there is nothing."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            head = QRect(now.px(PAD), 0, self.width(), now.px(HEAD))
            wide = ink.write(painter, now, head, self.head(), now.head)
            first = self.back if not self.back.isHidden() else self.changed
            end = min(first.x(), self.changed.x())
            rest = QRect(head.x() + wide + now.px(10), 0, end - head.x() - wide - now.px(16), now.px(HEAD))
            ink.write(painter, now, rest, self.beside(), now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD))
            inside = self.width() - 2 * now.px(PAD)
            box = QRect(now.px(PAD), now.px(HEAD) + now.px(6), inside, self.height())
            for words in (*self.unread, *self.carries):
                tone = "verm" if words in self.unread else "ink"
                box.translate(0, ink.paragraph(painter, now, box, words, now.body, tone) + now.px(4))
            drawing = self._drawing(inside)
            if drawing is not None:
                head.moveTop(self._foot)
                ink.write(painter, now, head, translate("Record", "What is known of such cuts"), now.head)
                paint(painter, now, drawing, now.px(PAD), self._foot + now.px(HEAD))
