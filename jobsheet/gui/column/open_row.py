"""The open row: title, form, remarks and the words of the sheet at the left, its margin at the right."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QFont, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.measures import COLUMNS, TITLE, columns
from jobsheet.gui.column.offered_lines import OfferedLines
from jobsheet.gui.column.remarks import Offering, RemarkLine
from jobsheet.gui.column.shorter_words import figures_line
from jobsheet.gui.column.suggested import Suggestions
from jobsheet.gui.column.views import RowView
from jobsheet.gui.column.words_line import WordsLine
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.tokens import SEVERITIES
from jobsheet.gui.margin.margin import Margin
from jobsheet.model.job import Operation
from jobsheet.model.remark import Remark
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import Kind
from jobsheet.reckoning.reckoner import Outcome

if TYPE_CHECKING:
    from jobsheet.gui.column.readings_view import ReadingsView
    from jobsheet.reckoning.answers.all_answers import Answers

SIDE = 18
translate = QCoreApplication.translate


class OpenRow(QWidget):
    """One operation, opened in place."""

    typed = Signal(str, str)
    done = Signal(str, str, str, bool)
    place_chosen = Signal(int)
    mended = Signal(object)
    dismissed = Signal(object)
    previewed = Signal(object)
    offered = Signal(object)
    picks_wanted = Signal(str)
    closed = Signal(str)
    height_changed = Signal()

    def __init__(self, view: RowView, kind: Kind[Any], units: str, form: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = view.key
        self.view = view
        self.form = Form(kind.entries, units, view.title, self, joined=form != "narrow")
        self.form.scope = kind.name
        self.form.typed.connect(self.typed)
        self.form.done.connect(self.done)
        if self.form.rows is not None:
            self.form.rows.chosen.connect(self._place_chosen)
        self.form.height_changed.connect(self.height_changed)
        self.form.picks_wanted.connect(self.picks_wanted)
        self.margin = Margin(self)
        self.margin.height_changed.connect(self.height_changed)
        self._offered = OfferedLines(self)
        self._offered.changed.connect(self._offers_changed)
        self._words: list[WordsLine] = []
        self.suggestions = Suggestions(self)
        self.suggestions.taken.connect(self.offered)
        self.suggestions.height_changed.connect(self.height_changed)
        self._units = units
        self.readings: ReadingsView | None = None
        self._said: tuple[tuple[Remark, ...], tuple[str, ...], tuple[str, ...]] = ((), (), ())
        self._bottom = 0
        self.setAccessibleName(view.title)

    def put(
        self, view: RowView, values: Mapping[str, Shown], outcome: Outcome | None, *, why_not: str
    ) -> None:
        """Show the fields as they stand and the figures that belong to them."""
        if view != self.view:
            self.view = view
            self.setAccessibleName(view.title)
            self.update()
        self.form.put(values)
        focus = self.form.focusWidget()
        held = focus is not None and focus.hasFocus()
        self.margin.put(outcome, stale=view.stale, why_not=why_not, keep_order=held)

    def help_topic(self) -> str:
        """The page of its kind."""
        return f"kind:{self.form.scope}"

    def _place_chosen(self, place: int) -> None:
        """The cursor is in the row of a place."""
        if self.margin.plan is not None:
            self.margin.plan.choose(place)
        self.place_chosen.emit(place)

    def say(
        self,
        remarks: tuple[Remark, ...],
        reminders: tuple[str, ...],
        prints: tuple[str, ...],
        offering: Offering,
    ) -> bool:
        """Show what there is to say about this step, each remark with what is
        offered; whether anything changed.
        """
        if (remarks, reminders, prints) == self._said:
            return False
        before = self._said
        self._said = (remarks, reminders, prints)
        same_shape = remarks == before[0] and reminders == before[1] and len(prints) == len(before[2])
        if same_shape:
            for line, text in zip(self._words[len(reminders) :], prints, strict=True):
                line.put(text)
            return True
        for old in self._words:
            old.hide()
            old.deleteLater()
        for remark_line in self._offered.put(remarks, offering):
            remark_line.mended.connect(self.mended)
            remark_line.dismissed.connect(self.dismissed)
            remark_line.previewed.connect(self.previewed)
        caption = translate("OpenRow", "reminder")
        self._words = [WordsLine(caption, text, self, quiet=True) for text in reminders]
        caption = translate("OpenRow", "prints as")
        for index, text in enumerate(prints):
            self._words.append(WordsLine(caption if not index else "", text, self, quiet=False))
        for shown in (*self._offered.lines, *self._words):
            shown.show()
        self._order_tabs()
        return True

    def _offers_changed(self) -> None:
        """A fix was tried, and its line says something else."""
        self._order_tabs()
        self.height_changed.emit()

    def answer(self, answers: Answers, operation: Operation, setting: Setting | None) -> bool:
        """Show what the machine answers; whether anything changed. Nothing of it
        is made before it is first asked.
        """
        from jobsheet.gui.column.recommended import recommended

        if self.readings is None:
            from jobsheet.gui.column.readings_view import ReadingsView

            self.readings = ReadingsView(self)
        changed = self.readings.put(answers.readings, self._units)
        changed = self.suggestions.put(recommended(operation, answers)) or changed
        beside = self.margin.answer(answers, self._units, self.view.pace, self.offered)
        beside.watch.put(operation, setting)
        if changed:
            self._order_tabs()
        return True

    def _order_tabs(self) -> None:
        """Tab goes through the form, then the remarks, the suggestions, and the margin."""
        fields = list(self.form.fields.values())
        stops: list[QWidget] = [fields[-1].last_stop()] if fields else []
        for line in self._offered.lines:
            stops.append(line)
            if line.button is not None:
                stops.append(line.button)
            stops.append(line.aside)
        stops += self.suggestions.stops()
        stops += [self.margin.beat.button, *self.margin.limits.stops()]
        if self.margin.beside is not None:
            stops += self.margin.beside.stops()
        stops.append(self.margin.more)
        for widget, after in pairwise(stops):
            QWidget.setTabOrder(widget, after)

    def _lines(self) -> list[RemarkLine | WordsLine | Suggestions | ReadingsView]:
        """All that is said under the form, from the top."""
        late = [self.readings] if self.readings is not None else []
        return [*self._offered.lines, self.suggestions, *late, *self._words]

    @property
    def remark_lines(self) -> list[RemarkLine]:
        """The remarks shown, worst first."""
        return self._offered.lines

    def arrange(self, width: int) -> int:
        """Place form, remarks and margin for a width; the height needed."""
        now = look()
        at = columns(now, width)
        narrow = at.form == "narrow"
        left_width = width if narrow else at.margin
        side = now.px(SIDE)
        top = now.px(TITLE)
        inside = left_width - 2 * side
        high = self.form.arrange(inside, COLUMNS[at.form])
        self.form.setGeometry(side, top, inside, high)
        top += high + now.px(6)
        bar = now.px(4)
        margin_top = 0
        if narrow:
            high = self.margin.arrange(width - bar, compact=True)
            self.margin.setGeometry(bar, top, width - bar, high)
            margin_top = top
            top += high
        for line in self._lines():
            high = line.arrange(left_width - bar)
            line.setGeometry(bar, top, left_width - bar, high)
            top += high
        if not narrow:
            high = self.margin.arrange(width - at.margin - 1, compact=at.form == "medium")
            self.margin.setGeometry(at.margin + 1, 0, width - at.margin - 1, high)
            top = max(top, high)
        self._bottom = margin_top
        return top + now.px(4)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click on the title closes."""
        now = look()
        at = columns(now, self.width())
        edge = self.width() if at.form == "narrow" else at.margin
        if event.position().y() < now.px(TITLE) and event.position().x() < edge:
            self.closed.emit(self.key)

    def _beside_title(self, form: str, width: int) -> tuple[str, QFont]:
        """What stands at the right of the title: the keys, or where the
        margin lies far below, its figures.
        """
        now = look()
        if form == "narrow":
            rest = width - now.width(self.view.title, now.head) - now.px(2 * SIDE + 16)
            figures = figures_line(self.view)
            return (figures if now.width(figures, now.body) <= rest else ""), now.body
        return (translate("OpenRow", "Esc closes, Alt + Up moves") if form == "wide" else ""), now.caption

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, bar, sign, number, icon, title, and the line of the margin."""
        now, view = look(), self.view
        at = columns(now, self.width())
        high, head = self.height(), now.px(TITLE)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            painter.fillRect(QRect(0, 0, now.px(4), high), now.colour("bluemark"))
            if view.severity:
                icon, _, mark = SEVERITIES[view.severity]
                signs.draw(painter, icon, getattr(now.tokens, mark), at.sign, head / 2, now.px(16))
            number = QRect(0, 0, at.number_right, head)
            ink.write(painter, now, number, str(view.number), now.title, "ink", ink.RIGHT)
            signs.draw(painter, view.icon, now.tokens.ink, at.icon, head / 2, now.px(30))
            end = self.width() if at.form == "narrow" else at.margin
            hint, small = self._beside_title(at.form, end - at.text)
            room = now.width(hint, small) + now.px(SIDE)
            title = QRect(at.text + now.px(4), 0, end - at.text - room - now.px(12), head)
            font = now.title if now.width(view.title, now.title) <= title.width() else now.head
            ink.write(painter, now, title, view.title, font)
            place = QRect(end - room, 0, room - now.px(SIDE), head)
            ink.write(painter, now, place, hint, small, "pencil", ink.RIGHT)
            if at.form == "narrow":
                ink.horizontal(painter, now.colour("ink"), 0, self.width(), self._bottom - 1)
            else:
                ink.upright(painter, now.colour("ink"), at.margin, 0, high)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), high - 1)
