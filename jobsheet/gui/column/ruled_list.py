"""The ruled list under the hand: keys, mouse, focus, and what a screen reader is told of them.

What a person wants is told by its signals. To a screen reader it is a list (`list_reading.py`); what it
paints stands in `painted_list.py`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QPoint, QTimer, Signal
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.line import Line
from jobsheet.gui.column.measures import columns
from jobsheet.gui.column.painted_list import PaintedList
from jobsheet.gui.ink.look import look

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QContextMenuEvent, QFocusEvent, QHelpEvent, QKeyEvent, QMouseEvent, QPaintEvent

    from jobsheet.gui.column.dragging import DropMark, Grip
    from jobsheet.gui.column.header_form import HeaderForm
    from jobsheet.gui.column.open_row import OpenRow


class RuledList(PaintedList):
    """The lines of a job, and what a person does to them."""

    #: The keyboard came to a line, by a key or the mouse.
    reached = Signal(str)
    open_wanted = Signal(str)
    close_wanted = Signal()
    stepped = Signal(int)
    #: Rows, the set-up, and the place in it where they were let go.
    dropped = Signal(object, str, int)
    #: What can be done to what is chosen is asked for, at a place on the screen.
    menu_wanted = Signal(QPoint)
    dragging = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grip: Grip | None = None
        self._mark: DropMark | None = None
        self._is_read = False

    # --- what a screen reader is told ---

    def _be_read(self) -> None:
        """Once it has been seen it is a list."""
        if not self._is_read:
            from jobsheet.gui.column import list_reading

            list_reading.install(self)
            self._is_read = True

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802  named by the toolkit
        """The lines in sight; after the first time, what a screen reader is told is put in place."""
        super().paintEvent(event)
        if not self._is_read:
            QTimer.singleShot(0, self, self._be_read)

    def _tell_focus(self) -> None:
        """Another line has the keyboard."""
        if self.hasFocus():
            from jobsheet.gui.column import list_reading

            list_reading.focus_moved(self)

    def open(self, opened: OpenRow | HeaderForm | None) -> None:
        """Put an open form in the place of its line; None closes."""
        before = self.open_key
        super().open(opened)
        if self._is_read:
            from jobsheet.gui.column import list_reading

            for key in {before, self.open_key} - {""}:
                list_reading.opened_or_closed(self, key)

    # --- choosing ---

    def _chosen_now(self, key: str, before: frozenset[str]) -> None:
        """Paint and tell, a screen reader too."""
        old = self.chosen_key
        super()._chosen_now(key, before)
        if key != old:
            self._tell_focus()
        if self._is_read and max(len(before), len(self.choice.keys)) > 1 and before != self.choice.keys:
            from jobsheet.gui.column import list_reading

            list_reading.chosen_otherwise(self)

    def focus_line(
        self, key: str, choose: Callable[[str], None] | None = None, *, pressed: bool = False
    ) -> None:
        """Give the keyboard to a line, alone or as `choose` does it; one that is open keeps it in its form.

        What is pressed stands under the hand: it is not scrolled to, or the release would meet another line.
        """
        closed = key in self.by_key and key != self.open_key
        moves = closed and (key != self.chosen_key or not self.hasFocus())
        (choose or self.choose)(key)
        if closed:
            self.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
        if moves and self.hasFocus() and not pressed:
            self.reached.emit(key)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The ring comes."""
        super().focusInEvent(event)
        self.touch(self.by_key.get(self.chosen_key))
        self._tell_focus()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The ring goes; the bar and the tint stay."""
        super().focusOutEvent(event)
        self.touch(self.by_key.get(self.chosen_key))

    def step(self, by: int, *, rows_only: bool = False) -> str:
        """The key of the line that many lines further on, within the ends."""
        return self.standing.step(self.chosen_key, by, rows_only=rows_only)

    def _beside(self, by: int) -> str:
        """The next closed line in a direction: an open one is passed over."""
        key = self.step(by)
        return self.standing.step(key, by) if key and key == self.open_key else key

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Up and Down choose, with Shift more of them, Enter opens, Esc closes, Page
        Up and Page Down step through rows.
        """
        key, keys, modifier = event.key(), QtCore.Qt.Key, QtCore.Qt.KeyboardModifier
        if event.modifiers() & modifier.AltModifier:
            event.ignore()
            return
        on_line = self.focusWidget() is self
        choose = self.choose_up_to if event.modifiers() & modifier.ShiftModifier else self.choose
        if key == keys.Key_Escape and self._grip is not None and self._grip.dragging:
            self._let_go()
        elif key == keys.Key_Escape and self.opened is not None:
            self.close_wanted.emit()
        elif key in (keys.Key_PageUp, keys.Key_PageDown):
            self.stepped.emit(-1 if key == keys.Key_PageUp else 1)
        elif on_line and key in (keys.Key_Up, keys.Key_Down):
            self.focus_line(self._beside(-1 if key == keys.Key_Up else 1), choose)
        elif on_line and key in (keys.Key_Home, keys.Key_End):
            self.focus_line(self.step(-10_000 if key == keys.Key_Home else 10_000), choose)
        elif on_line and key == keys.Key_F10 and event.modifiers() & modifier.ShiftModifier:
            self._ask_for_menu()
        elif on_line and key == keys.Key_Space and event.modifiers() & modifier.ControlModifier:
            self.choose_also(self.chosen_key)
        elif on_line and key in (keys.Key_Return, keys.Key_Enter, keys.Key_Space):
            self.open_wanted.emit(self.chosen_key)
        else:
            event.ignore()

    # --- the mouse ---

    def _closed_at(self, y: int) -> Line | None:
        """The painted line at a height."""
        line = self.standing.at(y)
        return line if line is not None and line.is_painted and line.key != self.open_key else None

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A press gives the keyboard to a line, Shift and Ctrl choose several; on the
        number of a row it may become a drag.
        """
        at = event.position().toPoint()
        line = self._closed_at(at.y())
        if line is None:
            event.ignore()
            return
        modifier, left = QtCore.Qt.KeyboardModifier, event.button() == QtCore.Qt.MouseButton.LeftButton
        several = event.modifiers() & (modifier.ShiftModifier | modifier.ControlModifier)
        if left and event.modifiers() & modifier.ShiftModifier:
            self.focus_line(line.key, self.choose_up_to, pressed=True)
        elif left and event.modifiers() & modifier.ControlModifier:
            self.focus_line(line.key, self.choose_also, pressed=True)
        else:  # one of several that are chosen may be the beginning of a drag, or their menu is asked for
            self.focus_line(line.key, self._choose_or_keep, pressed=True)
        if self._grip is None:
            from jobsheet.gui.column.dragging import Grip

            self._grip = Grip()
        self._grip.press(line, self.marked, at, event.globalPosition().toPoint(), self.width(), hold=left)
        if several:
            self._grip.key = ""

    def _choose_or_keep(self, key: str) -> None:
        """Choose a line alone, unless it is one of several that are chosen."""
        if key in self.marked:
            self._chosen_now(key, self.choice.keys)
        else:
            self.choose(key)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Show where dragged rows would go."""
        y = round(event.position().y())
        if self._grip is None or not self._grip.moves(y):
            return
        if self._mark is None:
            from jobsheet.gui.column.dragging import DropMark

            self._mark = DropMark(self)
        self.setCursor(QtCore.Qt.CursorShape.ClosedHandCursor)
        _, _, mark = self.standing.drop_place(self._grip.rows, y)
        self._mark.show_at(mark, self.width())
        self.dragging.emit(y)

    def _let_go(self) -> tuple[str, tuple[str, ...]]:
        """The hand holds nothing any more: the line that was pressed, and the rows that were dragged."""
        self.unsetCursor()
        if self._mark is not None:
            self._mark.hide()
        return self._grip.release() if self._grip is not None else ("", ())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Drop, or open on a click."""
        at = event.position().toPoint()
        still = self._grip is not None and self._grip.still(event.globalPosition().toPoint())
        key, dragged = self._let_go()
        if dragged:
            set_up, index, _ = self.standing.drop_place(dragged, at.y())
            self.dropped.emit(dragged, set_up, index)
            return
        left = event.button() == QtCore.Qt.MouseButton.LeftButton
        if left and key in self.by_key and key != self.open_key and still:
            self.open_wanted.emit(key)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802
        """The right button, or the menu key at the line under the keyboard."""
        if event.reason() == event.Reason.Mouse:
            if self._closed_at(event.pos().y()) is None:
                event.ignore()
                return
            self.menu_wanted.emit(event.globalPos())
        else:
            self._ask_for_menu()

    def _ask_for_menu(self) -> None:
        """The menu under the line that has the keyboard."""
        place = self.place_of(self.chosen_key)
        if place is not None:
            self.menu_wanted.emit(
                self.mapToGlobal(QPoint(columns(look(), self.width()).text, place.bottom()))
            )

    def event(self, event: QEvent) -> bool:
        """All of a row in a tooltip: what is too long for its place can be read there."""
        if event.type() != QEvent.Type.ToolTip:
            return super().event(event)
        from PySide6.QtWidgets import QToolTip

        from jobsheet.gui.forms.plain_words import tip

        asked = cast("QHelpEvent", event)
        line = self._closed_at(asked.pos().y())
        place = self.place_of(line.key) if line is not None and line.is_row else None
        if line is not None and line.view is not None and place is not None:
            QToolTip.showText(asked.globalPos(), tip(line.view.spoken()), self, place)
        else:
            QToolTip.hideText()
        return True
