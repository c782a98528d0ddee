"""One field: its label, its box with the unit inside, and the line that says what was understood.

The line is always there, so nothing jumps while typing. A text that cannot be read keeps standing as it
was typed, with a heavier edge, a wavy line under the part that is wrong, and a sentence with what to write.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QObject, QRect, QRectF, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.boxes import Inside, Line, Lines
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.forms.pick_box import Pick
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.operations.entry import Entry

translate = QtCore.QCoreApplication.translate
LABEL = 18
BOX = 30
UNDER = 16
LINE = 18
#: Up to so many choices stand side by side; more go into a list.
JOINED = 4
#: As long as they are no wider than two columns.
JOINED_WIDTH = 340
#: What a list can fill in, by the name or by what is asked: Down or F4 in the box,
#: or a press on the mark, asks for it.
LISTED = ("cutter", "wrench", "vice")
ASKS_LISTED = ("material", "machine", "several")
#: The keyboard is lent to a menu or another window; whoever types here comes back.
STAYING = (
    QtCore.Qt.FocusReason.PopupFocusReason,
    QtCore.Qt.FocusReason.MenuBarFocusReason,
    QtCore.Qt.FocusReason.ActiveWindowFocusReason,
)
#: What takes the rest of its line of the form.
GROWING = ("cutter", "places", "text")


def _asks_for_list(event: QEvent) -> bool:
    """Down or F4 alone, as in any box with a list; Alt + Down moves the row."""
    return (
        isinstance(event, QKeyEvent)
        and event.key() in (QtCore.Qt.Key.Key_Down, QtCore.Qt.Key.Key_F4)
        and event.modifiers()
        in (QtCore.Qt.KeyboardModifier.NoModifier, QtCore.Qt.KeyboardModifier.KeypadModifier)
    )


def box_for(entry: Entry, parent: QWidget, *, joined: bool) -> Inside:
    """The control that fits what is asked."""
    choices = (
        entry.choices if entry.asks in ("choice", "face") else ("yes", "no") if entry.asks == "flag" else ()
    )
    if choices:
        if joined and len(choices) <= JOINED:
            boxes = Joined(choices, entry.title, parent)
            if boxes.needs() <= look().px(JOINED_WIDTH):
                return boxes
            boxes.deleteLater()
            boxes.hide()
        return Pick(choices, parent)
    if entry.lines > 1:
        return Lines(parent)
    return Line(parent)


def _with_unit(line: str, unit: str) -> str:
    """What was understood, as it is read out: with the unit, where the line does not name it."""
    return (
        line
        if not unit or unit in line.replace("=", " ").split() or line.endswith(unit)
        else f"{line} {unit}".strip()
    )


class Field(QWidget):
    """One entry of a form."""

    typed = Signal(str, str)
    height_changed = Signal()
    picks_wanted = Signal(str)

    def __init__(self, entry: Entry, units: str, parent: QWidget, *, joined: bool = True) -> None:
        super().__init__(parent)
        self.entry = entry
        self.listed = self.has_list()
        self.box = self.make_box(joined=joined)
        self.unit = entry.unit(units)
        self.understood = ""
        self.problem: QuantityError | None = None
        #: What stands for it while it is left empty.
        self.proposed = ""
        self._under_height = UNDER
        #: Between a key and what the owner shows for it.
        self._telling = False
        #: While text under the cursor stands as it was typed: how its owner would write it.
        self._own_spelling: str | None = None
        self.box.setAccessibleName(entry.title)
        if isinstance(self.box, Pick):
            from jobsheet.gui.forms.plain_widgets import named

            named(self.box, entry.title)
        hover(self.box, entry.hint)
        self.setAccessibleName(entry.title)
        self.box.typed.connect(self._typed)
        self.box.installEventFilter(self)
        self.setFocusProxy(self.box)

    def has_list(self) -> bool:
        """Whether a list can fill it in."""
        return self.entry.name in LISTED or self.entry.asks in ASKS_LISTED

    def make_box(self, *, joined: bool) -> Inside:
        """The control that what is typed stands in."""
        return box_for(self.entry, self, joined=joined)

    def holds_cursor(self) -> bool:
        """Whether the cursor is in it."""
        return self.box.hasFocus()

    def help_topic(self) -> str:
        """Its page: that of the entry, in the form that it stands in."""
        scope = getattr(self.parentWidget(), "scope", "")
        return f"field:{scope}/{self.entry.name}" if scope else ""

    def go_in(self) -> None:
        """Put the cursor where something is to be mended, or else where the field begins."""
        self.box.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def last_stop(self) -> QWidget:
        """Where Tab leaves it."""
        return self.box

    def _typed(self, text: str) -> None:
        """Report what was entered, under the entry's name."""
        self._telling = isinstance(self.box, Line | Lines)
        try:
            self.typed.emit(self.entry.name, text)
        finally:
            self._telling = False

    def _put_text(self, text: str) -> None:
        """Write into the box, but never over what is being typed there: another
        spelling waits until it is left.
        """
        if self._telling:
            self._own_spelling = text
        elif text != self._own_spelling:
            self._own_spelling = None
            self.box.put(text)

    def let_go(self) -> None:
        """Whoever typed has left or takes something back: the owner's spelling counts."""
        if self._own_spelling is not None:
            text, self._own_spelling = self._own_spelling, None
            self.box.put(text)

    def take_units(self, units: str) -> None:
        """A bare number means another unit from now on; what stands here stays."""
        if (unit := self.entry.unit(units)) != self.unit:
            self.unit = unit
            self.update()

    def put(self, text: str, understood: str, problem: QuantityError | None) -> None:
        """Show what is written and how it was understood, or why it was not."""
        self._put_text(text)
        line = understood or (self.entry.hint if not text else "")
        before = self._under_height
        if line != self.understood or problem is not self.problem:
            self.understood, self.problem = line, problem.kept() if problem is not None else None
            self.box.setAccessibleDescription(str(problem) if problem else _with_unit(line, self.unit))
            self._under_height = self.under_height(self.width())
            self.update()
        if self._under_height != before:
            self.height_changed.emit()

    def propose(self, text: str) -> None:
        """What stands for the field while it is left empty, in pencil; nothing where nothing does."""
        if text == self.proposed or not isinstance(self.box, Line):
            return
        self.proposed = text
        self.box.propose(text.removesuffix(f" {self.unit}") if self.unit else text)
        said = translate("Field", "as recommended: {text}").format(text=text) if text else ""
        self.box.setAccessibleDescription(said or _with_unit(self.understood, self.unit))
        self.update()

    def under(self) -> str:
        """The text of the line under the box."""
        if self.problem:
            return str(self.problem)
        return translate("Field", "as recommended") if self.proposed else self.understood

    def under_height(self, width: int) -> int:
        """The height of the line at 100 %: room for the hint from the start, more only for what is wrong."""
        now = look()
        if self.problem:
            high = ink.paragraph_height(now, self.under(), now.caption_bold, width - now.px(16))
        else:
            texts = {self.entry.hint, self.understood}
            high = max(ink.paragraph_height(now, text, now.caption, width) for text in texts)
        return max(UNDER, round(high / now.scale) + 2)

    def span(self, columns: int, one: float) -> int:
        """How many columns of the form it takes, when one is so wide [px]."""
        entry = self.entry
        if isinstance(self.box, Lines):
            return columns
        if entry.asks in ("cutter", "places") or (isinstance(self.box, Joined) and self.box.needs() > one):
            return min(2, columns)
        return 1

    def may_grow(self) -> bool:
        """Whether more width is of use to it."""
        return self.entry.asks in GROWING

    def needed_height(self, width: int) -> int:
        """Its height [px] at a width."""
        self._under_height = self.under_height(width)
        return look().px(LABEL + self._box_height() + self._under_height)

    def _box_height(self) -> int:
        """The height of the frame at 100 %."""
        return BOX + LINE * (self.entry.lines - 1) if isinstance(self.box, Lines) else BOX

    def frame(self) -> QRect:
        """Where the frame stands."""
        now = look()
        return QRect(0, now.px(LABEL), self.width(), now.px(self._box_height()))

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Put the box inside its frame, clear of the unit."""
        now = look()
        frame = self.frame()
        if isinstance(self.box, Joined):
            self.box.setGeometry(frame)
            return
        beside = self._beside()
        unit = now.width(beside, now.body) + now.px(8) if beside else 0
        side = now.px(8)
        inside = frame.adjusted(side, now.px(5), -side - unit, -now.px(5))
        self.box.setGeometry(inside)

    def _beside(self) -> str:
        """What stands at the right inside the frame: the unit, and the mark that there is a list."""
        return f"{self.unit} ▾".strip() if self.listed else self.unit

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Redraw the frame when the box gets or loses the focus; ask for the list."""
        if self.listed and event.type() == QEvent.Type.KeyPress and _asks_for_list(event):
            self.picks_wanted.emit(self.entry.name)
            return True
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
            if isinstance(event, QFocusEvent) and event.lostFocus() and event.reason() not in STAYING:
                self.let_go()
        return super().eventFilter(watched, event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click on the label or the unit goes into the box."""
        self.box.setFocus(QtCore.Qt.FocusReason.MouseFocusReason)
        event.accept()
        at = event.position().toPoint()
        if self.listed and self.frame().contains(at) and at.x() > self.box.geometry().right():
            self.picks_wanted.emit(self.entry.name)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Label, frame, unit and the line under it."""
        now = look()
        with QPainter(self) as painter:
            label = QRect(0, 0, self.width(), now.px(LABEL))
            ink.write(painter, now, label, self.entry.title, now.label, "pencil")
            frame = self.frame()
            if not isinstance(self.box, Joined):
                self._paint_frame(painter, frame)
            under = QRect(0, frame.bottom() + 1, self.width(), self.height() - frame.bottom() - 1)
            if self.problem:
                signs.draw(
                    painter,
                    "problem-caret",
                    now.tokens.vermmark,
                    0,
                    under.top() + now.px(9),
                    now.px(13),
                )
                text = under.adjusted(now.px(16), 1, 0, 0)
                ink.paragraph(painter, now, text, self.under(), now.caption_bold, "verm")
            else:
                text = under.adjusted(0, 1, 0, 0)
                ink.paragraph(painter, now, text, self.under(), now.caption, "pencil")

    def _paint_frame(self, painter: QPainter, frame: QRect) -> None:
        """The frame in its state, the unit, and the wavy line."""
        now = look()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.problem:
            pen = QPen(now.colour("vermmark"), now.px(2))
        elif self.box.hasFocus():
            pen = QPen(now.colour("bluemark"), now.px(3))
        else:
            pen = QPen(now.colour("edge"), 1)
        half = pen.widthF() / 2
        painter.setPen(pen)
        painter.setBrush(now.colour("paper"))
        painter.drawRoundedRect(QRectF(frame).adjusted(half, half, -half, -half), now.px(2), now.px(2))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        if beside := self._beside():
            place = frame.adjusted(0, 0, -now.px(9), 0)
            ink.write(painter, now, place, beside, now.body, "pencil", ink.RIGHT)
        if self.problem and isinstance(self.box, Line):
            self._paint_wave(painter, frame)

    def _paint_wave(self, painter: QPainter, frame: QRect) -> None:
        """Under the part of the text that is wrong."""
        now = look()
        text, problem = self.box.text(), self.problem
        if problem is None:
            return
        end = len(text) if problem.end is None else min(problem.end, len(text))
        start = min(problem.start, end)
        left = frame.left() + now.px(8) + 2 + now.width(text[:start], now.body)
        right = max(left + now.px(8), frame.left() + now.px(8) + 2 + now.width(text[:end], now.body))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink.wavy_under(painter, now, left, min(right, frame.right() - now.px(6)), frame.bottom() - now.px(6))
