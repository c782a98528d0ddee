"""The forms of the job's header and of a set-up: groups of entries, each with its caption."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.edit.finished_lines import OWNER, name_of_line
from jobsheet.gui.column.at_the_lines import Elsewhere, ElsewhereLine, HungLines
from jobsheet.gui.column.offered_lines import OfferedLines
from jobsheet.gui.column.remarks import Offering, RemarkLine
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.field import Field
from jobsheet.gui.forms.form import LINES, Form
from jobsheet.gui.forms.shown import Section, Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.model.remark import Remark

#: What can hang under the field of a line.
Hung = RemarkLine | ElsewhereLine
SIDE = 18
CAPTION = 26
TITLE = 40
COLUMNS = {"wide": 5, "medium": 4, "narrow": 2}


class HeaderForm(QWidget):
    """Sections one under the other, opened in the column's place of their heading."""

    typed = Signal(str, str, str)
    mended = Signal(object)
    dismissed = Signal(object)
    previewed = Signal(object)
    closed = Signal(str)
    picks_wanted = Signal(str, str)
    height_changed = Signal()
    #: Of which section a line goes where: 0 strikes it.
    line_moved = Signal(str, int)
    #: What stands at a step shall be gone to.
    gone_to = Signal(object)

    def __init__(
        self, key: str, title: str, sections: tuple[Section, ...], units: str, close: str, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.key = key
        self._title = title
        self._offered = OfferedLines(self)
        self._offered.changed.connect(self._offers_changed)
        self._hung = HungLines(self, self.gone_to.emit)
        self._captions: list[tuple[str, int]] = []
        self._pictures: tuple[Drawing, ...] = ()
        self._drawn_at: list[tuple[int, int]] = []
        self._unsaid = ""
        self._unsaid_at = 0
        self.setAccessibleName(title)
        self.forms: dict[str, Form] = {}
        self._section_captions = {section.name: section.caption for section in sections}
        self._units = units
        for section in sections:
            self.forms[section.name] = self._made(section)
        self.close_button = Button(close, self, Manner.LINK)
        self.close_button.clicked.connect(lambda: self.closed.emit(self.key))

    def _made(self, section: Section) -> Form:
        """The form of a section."""
        form = Form(section.entries, self._units, section.caption, self)
        form.scope = section.name if section.name.startswith("job") else section.name.partition(":")[0]
        form.typed.connect(lambda name, text, part=section.name: self.typed.emit(part, name, text))
        form.height_changed.connect(self.height_changed)
        form.line_moved.connect(self.line_moved)
        form.picks_wanted.connect(lambda name, part=section.name: self.picks_wanted.emit(part, name))
        return form

    def ask(self, sections: tuple[Section, ...]) -> None:
        """Ask these fields: where a section has others than before (another kind
        of holding), its form is made anew.

        The field that the hand is in keeps it, where it is still there.
        """
        for section in sections:
            before = self.forms.get(section.name)
            if before is not None and _asked(before) == _asks(section):
                continue
            if before is not None and _goes_on(before, section):
                before.follow(section.entries)
                self._in_turn()
                self.height_changed.emit()
                continue
            form = self._made(section)
            in_hand = _under_the_hand(before)
            self.forms[section.name] = form
            form.show()
            if before is not None:
                before.hide()
                before.deleteLater()
                if in_hand in form.fields:
                    form.fields[in_hand].box.setFocus(Qt.FocusReason.OtherFocusReason)
            self._in_turn()
            self.height_changed.emit()

    def _in_turn(self) -> None:
        """Tab goes through the remarks over the form, then its sections in their order, also through one that
        was made anew, and behind a line of the finished part through what is said of it.
        """
        above, below = self._said_where()
        every: list[QWidget] = list(above)
        for form in self.forms.values():
            for field in form.fields.values():
                every += [field, *below.get(field, ())]
        stops = [stop for widget in every for stop in _stops(widget, self.window())]
        for widget, other in pairwise((*stops, self.close_button)):
            QWidget.setTabOrder(widget, other)

    def _said_where(self) -> tuple[list[RemarkLine], dict[Field, list[Hung]]]:
        """The remarks that stand over the form, and what stands under a line of it."""
        above = list(self.remark_lines)
        below: dict[Field, list[Hung]] = {}
        asked = self.forms.get(OWNER)
        for number, hung in self._hung.by_line(above).items():
            field = asked.fields.get(name_of_line(number)) if asked is not None else None
            if field is not None:
                below[field] = hung
                above = [remark_line for remark_line in above if remark_line not in hung]
        return above, below

    def _offers_changed(self) -> None:
        """A button that came with an offer stands in its turn."""
        self._in_turn()
        self.height_changed.emit()

    def put(self, title: str, values: Mapping[str, Mapping[str, Shown]]) -> None:
        """Show the fields as they stand."""
        if title != self._title:
            self._title = title
            self.setAccessibleName(title)
            self.update()
        for name, shown in values.items():
            self.forms[name].put(shown)

    def ask_for(self, words: str) -> None:
        """Say what should still be entered; nothing for an empty text."""
        if words != self._unsaid:
            taller = bool(words) != bool(self._unsaid)
            self._unsaid = words
            if taller:
                self.height_changed.emit()
            self.update()

    def draw(self, pictures: tuple[Drawing, ...]) -> None:
        """Show these over the fields, such as how the work is held: they follow what is entered."""
        if pictures == self._pictures:
            return
        taller = self._picture_height(self._pictures) != self._picture_height(pictures)
        self._pictures = pictures
        if taller:
            self.height_changed.emit()
        self.update()

    @staticmethod
    def _picture_height(pictures: tuple[Drawing, ...]) -> int:
        return round(max((drawing.height for drawing in pictures), default=0.0) * SCALE * look().scale)

    def say(
        self, remarks: tuple[Remark, ...], offering: Offering, at_steps: tuple[Elsewhere, ...] = ()
    ) -> None:
        """Show what there is to say about the job or the set-up as a whole; of what stands at a
        step the line of the part says where.
        """
        other = self._hung.put(at_steps)
        if remarks != tuple(line.remark for line in self.remark_lines):
            other = True
            for line in self._offered.put(remarks, offering):
                line.mended.connect(self.mended)
                line.dismissed.connect(self.dismissed)
                line.previewed.connect(self.previewed)
                line.show()
        if other:
            self._in_turn()
            self.height_changed.emit()

    @property
    def remark_lines(self) -> list[RemarkLine]:
        """The remarks shown."""
        return self._offered.lines

    def focus_first(self) -> None:
        """Put the cursor into the first field."""
        next(iter(self.forms.values())).focus_first()

    def arrange(self, width: int) -> int:
        """Place all sections; the height needed."""
        now = look()
        side = now.px(SIDE)
        hint = self.close_button.sizeHint()
        self.close_button.setGeometry(
            width - hint.width() - now.px(10), now.px(2), hint.width(), hint.height()
        )
        top = now.px(TITLE)
        self._captions = []
        above, below = self._said_where()
        for line in above:
            high = line.arrange(width)
            line.setGeometry(0, top, width, high)
            top += high
        self._drawn_at = []
        x = side
        for drawing in self._pictures:
            wide = round(drawing.width * SCALE * now.scale)
            if x > side and x + wide > width - side:
                x, top = side, top + self._picture_height((drawing,)) + now.px(10)
            self._drawn_at.append((x, top))
            x += wide + now.px(36)
        if self._pictures:
            top += self._picture_height(self._pictures) + now.px(10)
        self._unsaid_at = top
        if self._unsaid:
            top += now.px(CAPTION)
        count = COLUMNS[now.form(width + now.px(18))]
        for name, form in self.forms.items():
            self._captions.append((self._section_captions[name], top))
            top += now.px(CAPTION)
            inside = width - 2 * side
            left = {field: sum(one.arrange(inside) for one in hung) for field, hung in below.items()}
            high = form.arrange(inside, count, left)
            form.setGeometry(side, top, inside, high)
            for field in form.fields.values():
                _hang(below.get(field, []), QRect(side, top + field.geometry().bottom() + 1, inside, 0))
            top += high + now.px(4)
        return top + now.px(8)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click on the title closes."""
        if event.position().y() < look().px(TITLE):
            self.closed.emit(self.key)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, bar, title, captions."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            painter.fillRect(QRect(0, 0, now.px(4), self.height()), now.colour("bluemark"))
            side = now.px(SIDE)
            title = QRect(side, 0, self.close_button.x() - side, now.px(TITLE))
            ink.write(painter, now, title, self._title, now.head)
            for caption, top in self._captions:
                place = QRect(side, top, self.width() - 2 * side, now.px(CAPTION - 6))
                ink.write(painter, now, place, caption, now.bold)
                ink.horizontal(painter, now.colour("rule"), side, self.width() - side, place.bottom())
            for drawing, (x, y) in zip(self._pictures, self._drawn_at, strict=False):
                paint(painter, now, drawing, x, y)
            if self._unsaid:
                place = QRect(side, self._unsaid_at, self.width() - 2 * side, now.px(CAPTION - 4))
                ink.write(painter, now, place, self._unsaid, now.body, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)


def _hang(hung: list[Hung], foot: QRect) -> None:
    """Place what stands under a field, the last of it at its foot; they lie over
    the form, which may be younger.
    """
    bottom = foot.top()
    for one in reversed(hung):
        high = one.arrange(foot.width())
        bottom -= high
        one.setGeometry(foot.left(), bottom, foot.width(), high)
        one.raise_()


def _stops(widget: QWidget, window: QWidget) -> list[QWidget]:
    """Where Tab stops in it, itself first; the list of a choice is a window of its own."""
    return [
        other
        for other in (widget, *widget.findChildren(QWidget))
        if other.focusPolicy() & Qt.FocusPolicy.TabFocus and other.window() is window
    ]


def _asked(form: Form) -> list[tuple[str, tuple[str, ...]]]:
    return [(name, field.entry.choices) for name, field in form.fields.items()]


def _asks(section: Section) -> list[tuple[str, tuple[str, ...]]]:
    return [(entry.name, entry.choices) for entry in section.entries]


def _goes_on(form: Form, section: Section) -> bool:
    """Whether a section asks the same as before and lines behind it, or fewer of
    them: those that stay keep the hand.
    """
    one, other = _asked(form), _asks(section)
    short, long = sorted((one, other), key=len)
    return long[: len(short)] == short and all(name.startswith(LINES) for name, _ in long[len(short) :])


def _under_the_hand(form: Form | None) -> str:
    """The name of the field that has the keyboard, joined boxes too; nothing where none of the form has."""
    focus = QApplication.focusWidget()
    if form is None or focus is None:
        return ""
    return next(
        (name for name, field in form.fields.items() if field.box is focus or field.box.isAncestorOf(focus)),
        "",
    )
