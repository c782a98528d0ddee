"""The ruled sheet inside the column: lines one under the other, one of them open; keys and dragging.

It knows lines by their keys and what stands above what, nothing of jobs: what to show is given to it, and
what a person wants is told by its signals.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QRect, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.rows import HeadingLine, RowLine, SheetLine
from jobsheet.gui.column.views import HeadingView, RowView
from jobsheet.gui.ink.look import look

if TYPE_CHECKING:
    from jobsheet.gui.column.header_form import HeaderForm
    from jobsheet.gui.column.notices import EmptyLine, NoticeLine
    from jobsheet.gui.column.open_row import OpenRow

    Line = HeadingLine | RowLine | NoticeLine | EmptyLine

View = HeadingView | RowView


class DropMark(QWidget):
    """The blue line where a dragged row would come to stand."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Only the line."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("bluemark"))


class RuledList(QWidget):
    """All lines, placed by hand: no layout has to be asked."""

    chosen = Signal(str)
    open_wanted = Signal(str)
    close_wanted = Signal()
    stepped = Signal(int)
    dropped = Signal(str, str, int)
    laid_out = Signal()
    dragging = Signal(int)
    empty_pressed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lines: list[Line] = []
        self.by_key: dict[str, SheetLine] = {}
        self.opened: OpenRow | HeaderForm | None = None
        self.chosen_key = ""
        self._notice: NoticeLine | None = None
        self._notice_before = ""
        self._mark = DropMark(self)
        self._mark.hide()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self.arrange)

    # --- what stands on the sheet ---

    def put(self, views: list[View]) -> None:
        """Show these lines in this order; lines that stay are kept, with their focus."""
        kept: dict[str, SheetLine] = {}
        lines: list[HeadingLine | RowLine] = []
        for view in views:
            line = self.by_key.get(view.key)
            if isinstance(view, HeadingView):
                if isinstance(line, HeadingLine):
                    line.put(view)
                else:
                    line = HeadingLine(view, self)
                    self._connect(line)
            elif isinstance(line, RowLine):
                line.put(view)
            else:
                line = RowLine(view, self)
                self._connect(line)
                line.dragged.connect(self._drag)
                line.dropped.connect(self._drop)
            kept[view.key] = line
            lines.append(line)
        for key, old in self.by_key.items():
            if key not in kept:
                old.hide()
                old.deleteLater()
        order_changed = [line.key for line in lines] != [
            line.key for line in self.lines if isinstance(line, SheetLine)
        ]
        self.by_key = kept
        if order_changed:
            for old_line in self.lines:
                if not isinstance(old_line, SheetLine) and old_line is not self._notice:
                    old_line.hide()
                    old_line.deleteLater()
            self.lines = self._with_empty(lines)
            self._place_notice()
            for shown in self.lines:
                if self.opened is None or shown.key != self.opened.key:
                    shown.show()
            self.arrange()
        if self.chosen_key not in self.by_key:
            self.choose(next(iter(self.by_key), ""))

    def _with_empty(self, lines: list[HeadingLine | RowLine]) -> list[Line]:
        """The lines, with advice under the only set-up when it has no operation."""
        found: list[Line] = list(lines)
        if lines and not any(isinstance(line, RowLine) for line in lines):
            from jobsheet.gui.column.notices import EmptyLine

            empty = EmptyLine(f"empty:{lines[-1].key}", self)
            empty.pressed.connect(lambda: self.empty_pressed.emit(lines[-1].key))
            found.append(empty)
        return found

    def _connect(self, line: HeadingLine | RowLine) -> None:
        """Hear what a line reports."""
        line.chosen.connect(self._line_chosen)
        line.opened.connect(self.open_wanted)

    def notice(self, before: str, text: str, offers: tuple[tuple[str, Callable[[], None]], ...]) -> None:
        """Show a line above the line of that key (at the end when there is none); an empty text takes it away."""
        old = self._notice
        if old is not None:
            old.hide()
            old.deleteLater()
            if old in self.lines:
                self.lines.remove(old)
        elif not text:
            return
        if text:
            from jobsheet.gui.column.notices import NoticeLine

            self._notice = NoticeLine("notice", text, offers, self)
        else:
            self._notice = None
        self._notice_before = before
        self._place_notice()
        if self._notice is not None:
            self._notice.show()
        self.arrange()

    @property
    def notice_line(self) -> NoticeLine | None:
        """The line that tells what happened, if there is one."""
        return self._notice

    def _place_notice(self) -> None:
        """Put the notice into its place among the lines."""
        if self._notice is None:
            return
        if self._notice in self.lines:
            self.lines.remove(self._notice)
        keys = [line.key for line in self.lines]
        place = keys.index(self._notice_before) if self._notice_before in keys else len(keys)
        self.lines.insert(place, self._notice)

    def open(self, opened: OpenRow | HeaderForm | None) -> None:
        """Put an open form in the place of its line; None closes."""
        if self.opened is not None:
            self.opened.hide()
            self.opened.deleteLater()
            line = self.by_key.get(self.opened.key)
            if line is not None:
                line.show()
        self.opened = opened
        if opened is not None:
            line = self.by_key.get(opened.key)
            if line is not None:
                line.hide()
            opened.height_changed.connect(self.arrange_later)
            opened.show()
            self.choose(opened.key)
        self.arrange()

    # --- where everything stands ---

    def place_of(self, key: str) -> QRect | None:
        """Where the line of that key stands."""
        line = self.by_key.get(key)
        return line.geometry() if line is not None else None

    def arrange_later(self) -> None:
        """Place everything again once the present change is through."""
        self._later.start()

    def arrange(self) -> None:
        """Place every line for the width of the sheet."""
        self._later.stop()
        now, width, top = look(), self.width(), 0
        form = now.form(width + now.px(18))
        opened = self.opened
        for line in self.lines:
            if opened is not None and line.key == opened.key:
                high = opened.arrange(width)
                opened.setGeometry(0, top, width, high)
            else:
                high = now.px(line.height_at_100(form))
                line.setGeometry(0, top, width, high)
            top += high
        if opened is not None and opened.key not in self.by_key:
            top = self._arrange_above(opened, width, top)
        self.resize(width, max(top, 1))
        self.laid_out.emit()

    def _arrange_above(self, opened: OpenRow | HeaderForm, width: int, height: int) -> int:
        """A form that belongs to no line (the job's own) stands above all of them."""
        high = opened.arrange(width)
        opened.setGeometry(0, 0, width, high)
        for line in self.lines:
            line.move(0, line.y() + high)
        return height + high

    def set_width(self, width: int) -> None:
        """Take a width and place everything in it."""
        if width != self.width():
            self.resize(width, self.height())
            self.arrange()

    # --- choosing ---

    def _line_chosen(self, key: str) -> None:
        """A line got the focus."""
        self.choose(key)

    def choose(self, key: str) -> None:
        """Mark the line under the keyboard."""
        if key == self.chosen_key and key in self.by_key and self.by_key[key].is_chosen:
            return
        before = self.by_key.get(self.chosen_key)
        if before is not None:
            before.set_chosen(chosen=False)
        self.chosen_key = key
        line = self.by_key.get(key)
        if line is not None:
            line.set_chosen(chosen=True)
        self.chosen.emit(key)

    def focus_line(self, key: str) -> None:
        """Give the keyboard to a line."""
        line = self.by_key.get(key)
        if line is not None and not line.isHidden():
            line.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
        self.choose(key)

    def step(self, by: int, *, rows_only: bool = False) -> str:
        """The key of the line that many lines further on, within the ends."""
        keys = [line.key for line in self.lines if isinstance(line, RowLine if rows_only else SheetLine)]
        if not keys:
            return ""
        if self.chosen_key in keys:
            return keys[min(max(keys.index(self.chosen_key) + by, 0), len(keys) - 1)]
        every = [line.key for line in self.lines]
        if self.chosen_key in every:
            here = every.index(self.chosen_key)
            beyond = [key for key in keys if (every.index(key) > here) == (by > 0)]
            if beyond:
                return beyond[0] if by > 0 else beyond[-1]
        return keys[0]

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Up and Down choose, Enter opens, Esc closes, Page Up and Page Down step through rows."""
        key = event.key()
        if event.modifiers() & QtCore.Qt.KeyboardModifier.AltModifier:
            event.ignore()
            return
        on_line = isinstance(self.focusWidget(), SheetLine)
        if key == QtCore.Qt.Key.Key_Escape and self.opened is not None:
            self.close_wanted.emit()
        elif key in (QtCore.Qt.Key.Key_PageUp, QtCore.Qt.Key.Key_PageDown):
            self.stepped.emit(-1 if key == QtCore.Qt.Key.Key_PageUp else 1)
        elif on_line and key in (QtCore.Qt.Key.Key_Up, QtCore.Qt.Key.Key_Down):
            self.focus_line(self._beside(-1 if key == QtCore.Qt.Key.Key_Up else 1))
        elif on_line and key in (QtCore.Qt.Key.Key_Home, QtCore.Qt.Key.Key_End):
            self.focus_line(self.step(-10_000 if key == QtCore.Qt.Key.Key_Home else 10_000))
        elif on_line and key in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter, QtCore.Qt.Key.Key_Space):
            self.open_wanted.emit(self.chosen_key)
        else:
            event.ignore()

    def _beside(self, by: int) -> str:
        """The next closed line in a direction: an open one is passed over."""
        key = self.step(by)
        if self.opened is not None and key == self.opened.key:
            before = self.chosen_key
            self.chosen_key = key
            key = self.step(by)
            self.chosen_key = before
        return key

    # --- dragging a row by its number ---

    def place_at(self, dragged: str, y: int) -> tuple[str, int, int]:
        """Where a row let go at a height would stand: set-up, index in it without the row, y of the mark."""
        set_up, index, mark = "", 0, 0
        for line in self.lines:
            shown = self.opened if self.opened is not None and line.key == self.opened.key else line
            middle = shown.y() + shown.height() // 2
            if isinstance(line, HeadingLine):
                if set_up and y < middle:
                    break
                set_up, index, mark = line.key, 0, shown.y() + shown.height()
            elif isinstance(line, RowLine):
                if y < middle:
                    break
                mark = shown.y() + shown.height()
                if line.key != dragged:
                    index += 1
        return set_up, index, mark

    def _drag(self, key: str, y: int) -> None:
        """Show where the row would go."""
        _, _, mark = self.place_at(key, y)
        now = look()
        self._mark.setGeometry(QRect(0, mark - now.px(2), self.width(), now.px(4)))
        self._mark.show()
        self._mark.raise_()
        self.dragging.emit(y)

    def _drop(self, key: str, y: int) -> None:
        """Tell where the row shall go."""
        self._mark.hide()
        set_up, index, _ = self.place_at(key, y)
        self.dropped.emit(key, set_up, index)
