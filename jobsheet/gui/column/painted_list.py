"""What the ruled list is before anybody touches it: lines, one of them open, and
the painting of those in sight.

It knows lines by their keys and what stands above what, nothing of jobs. It paints the closed lines by
itself; only what is open, or asks something, is a widget.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QRect, QTimer, Signal, Slot
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.choice import Choice
from jobsheet.gui.column.line import Line, LineWidget, Put
from jobsheet.gui.column.lines_painted import height_at_100, paint_lines
from jobsheet.gui.column.standing import Standing, same_order
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink.look import look

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent

    from jobsheet.gui.column.header_form import HeaderForm
    from jobsheet.gui.column.notice_line import NoticeLine
    from jobsheet.gui.column.open_row import OpenRow

Offers = tuple[tuple[str, Callable[[], None]], ...]


class PaintedList(QWidget):
    """All lines, placed by hand: no layout has to be asked."""

    chosen = Signal(str)
    laid_out = Signal()
    empty_pressed = Signal(str)
    #: One of the last jobs, offered where nothing is planned yet.
    recent_pressed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.standing = Standing()
        self.by_key: dict[str, Line] = {}
        self.opened: OpenRow | HeaderForm | None = None
        self.chosen_key = ""
        self.choice = Choice()
        self.notice_line: NoticeLine | None = None
        self._notice_before = ""
        #: What asks something between two lines, until it is answered or left.
        self.guest: LineWidget | None = None
        self._guest_before = ""
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(lambda: self.keeping(lambda: None))
        #: Makes a change and places everything again; whoever scrolls the list
        #: keeps what the hand is at in its place.
        self.keeping: Callable[[Callable[[], None]], None] = self._placed
        self._reach()

    @property
    def lines(self) -> list[Line]:
        """All lines in their order."""
        return self.standing.lines

    @property
    def open_key(self) -> str:
        """The key of what is open, or nothing."""
        return self.opened.key if self.opened is not None else ""

    # --- what stands in it ---

    def put(self, views: Sequence[Put]) -> None:
        """Show these lines in this order; those in sight that show something else are painted anew."""
        sight = self.visibleRegion().boundingRect()
        lines = []
        for view in views:
            line = self.by_key.get(view.key)
            if line is None or line.is_heading is not isinstance(view, HeadingView):
                line = Line(view)
            elif line.put(view, in_sight=line.bottom > sight.top() and line.top <= sight.bottom()):
                self.touch(line)
            lines.append(line)
        self.by_key = {line.key: line for line in lines}
        self.choice.only(self.by_key)
        if not same_order(lines, self.lines):
            self._order(lines)
        if self.chosen_key not in self.by_key:
            self.choose(next(iter(self.by_key), ""))

    def _order(self, lines: list[Line]) -> None:
        """Other lines, or the same in another order: advice comes where there is no operation."""
        for old in self.lines:
            if old.widget is not None and old.widget not in (self.notice_line, self.guest):
                old.widget.hide()
                old.widget.deleteLater()
        self.standing.lines = lines
        if lines and not any(line.is_row for line in lines):
            from jobsheet.gui.column.empty_line import EmptyLine

            set_up = lines[-1].key
            empty = EmptyLine(f"empty:{set_up}", self)
            empty.pressed.connect(lambda: self.empty_pressed.emit(set_up))
            empty.recent_pressed.connect(self.recent_pressed)
            empty.show()
            lines.append(Line(None, empty))
        self._place_between()
        self.arrange()
        self.update()

    def notice(self, before: str, text: str, offers: Offers) -> None:
        """Show a line above the line of that key (at the end when there is
        none); an empty text takes it away.
        """
        old = self.notice_line
        if old is not None:
            old.hide()
            old.deleteLater()
            self.standing.lines = [line for line in self.lines if line.widget is not old]
        elif not text:
            return
        self.notice_line = None
        if text:
            from jobsheet.gui.column.notice_line import NoticeLine

            self.notice_line = NoticeLine("notice", text, offers, self)
            self.notice_line.show()
        self._notice_before = before
        self._place_between()
        self.arrange()

    def receive(self, guest: LineWidget | None, before: str = "") -> None:
        """Let something ask above the line of that key (at the end when there
        is none); None sends it away.
        """
        old = self.guest
        if old is not None:
            old.hide()
            old.deleteLater()
            self.standing.lines = [line for line in self.lines if line.widget is not old]
        self.guest, self._guest_before = guest, before
        if guest is not None:
            guest.show()
        self._place_between()
        self.arrange()
        self.update()

    def _place_between(self) -> None:
        """Put what says or asks something into its place among the lines."""
        for widget, before in (
            (self.notice_line, self._notice_before),
            (self.guest, self._guest_before),
        ):
            if widget is None:
                continue
            lines = [line for line in self.lines if line.widget is not widget]
            keys = [line.key for line in lines]
            place = keys.index(before) if before in keys else len(keys)
            lines.insert(place, Line(None, widget))
            self.standing.lines = lines

    def open(self, opened: OpenRow | HeaderForm | None) -> None:
        """Put an open form in the place of its line; None closes."""
        if self.opened is not None:
            self.opened.hide()
            self.opened.deleteLater()
        self.opened = opened
        if opened is not None:
            opened.height_changed.connect(self.arrange_later)
            opened.show()
            self.choose(opened.key)
        self.arrange()
        self.update()
        self._reach()

    # --- which line is meant ---

    @property
    def marked(self) -> tuple[str, ...]:
        """The rows that are chosen, in their order; none on a heading."""
        return tuple(line.key for line in self.lines if line.is_row and line.key in self.choice.keys)

    def choose(self, key: str) -> None:
        """Mark the line under the keyboard, and no other."""
        before = self.choice.keys
        self.choice.alone(key)
        self._chosen_now(key, before)

    def choose_up_to(self, key: str) -> None:
        """The keyboard is on this line; every row from where choosing began is marked with it."""
        before = self.choice.keys
        order = [line.key for line in self.lines if line.is_painted]
        if key in order:
            self.choice.reach(key, order, {line.key for line in self.lines if line.is_row})
            self._chosen_now(key, before)

    def choose_also(self, key: str) -> None:
        """The keyboard is on this line; it is marked beside the others, or no longer."""
        before = self.choice.keys
        self.choice.turn(key, {line.key for line in self.lines if line.is_row})
        self._chosen_now(key, before)

    def choose_these(self, keys: Iterable[str]) -> None:
        """These rows together; the keyboard is on the last of them."""
        before = self.choice.keys
        rows = [line.key for line in self.lines if line.is_row and line.key in set(keys)]
        if rows:
            self.choice.alone(rows[0])
            self.choice.keys = frozenset(rows)
            self._chosen_now(rows[-1], before)

    def _chosen_now(self, key: str, before: frozenset[str]) -> None:
        """Paint what is marked otherwise than before, and tell."""
        for other in before ^ self.choice.keys:
            self.touch(self.by_key.get(other))
        if key == self.chosen_key and key in self.by_key:
            return
        self.touch(self.by_key.get(self.chosen_key))
        self.chosen_key = key
        self.touch(self.by_key.get(key))
        self._reach()
        self.chosen.emit(key)

    def _reach(self) -> None:
        """The chosen line is the column's one tab stop, unless it is open: then its form is."""
        policy = QtCore.Qt.FocusPolicy
        closed = self.chosen_key in self.by_key and self.chosen_key != self.open_key
        self.setFocusPolicy(policy.TabFocus if closed else policy.NoFocus)

    # --- where everything stands ---

    def place_of(self, key: str) -> QRect | None:
        """Where the line of that key stands, or what is open in its place."""
        if self.opened is not None and self.opened.key == key:
            return self.opened.geometry()
        if self.guest is not None and self.guest.key == key:
            return self.guest.geometry()
        line = self.by_key.get(key)
        return QRect(0, line.top, self.width(), line.high) if line is not None else None

    @Slot()
    def arrange_later(self) -> None:
        """Place everything again once the present change is through."""
        self._later.start()

    def _placed(self, change: Callable[[], None]) -> None:
        change()
        self.arrange()

    def arrange(self) -> None:
        """Place every line for the width of the list; a form that belongs to no
        line stands above all of them.
        """
        self._later.stop()
        now, width, opened = look(), self.width(), self.opened
        form = now.form(width + now.px(18))
        open_high = opened.arrange(width) if opened is not None else 0
        key = self.open_key
        above = open_high if key and key not in self.by_key else 0

        def high(line: Line) -> int:
            return open_high if line.key == key else now.px(height_at_100(line, form))

        bottom, moved = self.standing.place(high, above)
        for line in self.lines:
            if line.widget is not None:
                line.widget.setGeometry(0, line.top, width, line.high)
        if opened is not None:
            top = self.by_key[key].top if key in self.by_key else 0
            opened.setGeometry(0, top, width, open_high)
        self.resize(width, max(bottom, 1))
        if moved:
            self.update()
        self.laid_out.emit()

    def set_width(self, width: int) -> None:
        """Take another width."""
        if width != self.width():
            self.resize(width, self.height())
            self.arrange()

    # --- painting ---

    def touch(self, line: Line | None) -> None:
        """Paint a line anew."""
        if line is not None:
            self.update(QRect(0, line.top, self.width(), line.high))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """The closed lines in what is to be seen again."""
        with QPainter(self) as painter:
            paint_lines(
                painter,
                self.standing,
                event.region(),
                self.width(),
                opened=self.open_key,
                chosen=self.choice.keys,
                focused=self.chosen_key if self.hasFocus() else "",
            )
