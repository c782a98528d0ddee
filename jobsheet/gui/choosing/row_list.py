"""A ruled list to take one thing from: as many rows as there is room for, however many things there are.

It never takes the keyboard: whatever is typed into says where the blue row goes.
The wheel scrolls, a press takes.
"""

from __future__ import annotations

from PySide6.QtCore import QRect, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.list_row import ListRow
from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

TALL, SHORT = 47, 30
BAR = 4


class RowList(QWidget):
    """The rows in sight, and which thing is blue."""

    taken = Signal(object)
    #: Another one is blue.
    looked = Signal(object)

    def __init__(self, parent: QWidget, name: str, *, split: float = 0.0) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.things: tuple[Listed, ...] = ()
        self.place = -1
        self.rows: list[ListRow] = []
        self._top = 0
        self._split = split

    @property
    def chosen(self) -> Listed | None:
        """The blue one."""
        return self.things[self.place] if 0 <= self.place < len(self.things) else None

    @property
    def row_high(self) -> int:
        """The height of a row [px]: two lines where anything has two."""
        return look().px(TALL if any(listed.under for listed in self.things) else SHORT)

    def needs(self, most: int) -> int:
        """The height for all of them, at most so many [px]."""
        return self.row_high * min(max(len(self.things), 1), most)

    def put(self, things: tuple[Listed, ...], place: int = 0) -> None:
        """List these; that one is blue, none where it is below nought."""
        self.things = things
        self._top = 0
        self._go(min(place, len(things) - 1))

    def change(self, key: str, listed: Listed) -> None:
        """More is known of one of them."""
        self.things = tuple(listed if thing.key == key else thing for thing in self.things)
        self._show()

    def step(self, by: int) -> None:
        """The blue one goes down or up, over what cannot be taken, within the ends."""
        free = [place for place, listed in enumerate(self.things) if not listed.away]
        if not free:
            return
        if self.place not in free:
            self._go(free[0] if by > 0 else free[-1])
            return
        self._go(free[min(max(free.index(self.place) + by, 0), len(free) - 1)])

    def jump(self, letter: str) -> None:
        """The next one whose title, or a word of it, begins with a letter."""
        count = len(self.things)
        for step in range(1, count + 1):
            place = (self.place + step) % count
            if any(
                word.startswith(letter.casefold()) for word in self.things[place].title.casefold().split()
            ):
                self._go(place)
                return

    def choose(self, key: str) -> None:
        """Make that one blue."""
        self._go(next((place for place, listed in enumerate(self.things) if listed.key == key), self.place))

    def _go(self, place: int) -> None:
        self.place = place
        fit = self._fit()
        if place >= 0:
            self._top = min(self._top, place)
            self._top = max(self._top, place - fit + 1)
        self._top = max(0, min(self._top, len(self.things) - fit))
        self._show()
        self.looked.emit(self.chosen)
        row = next((row for row in self.rows if row.isVisible() and row.isChecked()), None)
        if row is not None and QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleEvent(row, QAccessible.Event.Focus))

    def take(self) -> bool:
        """Take the blue one; whether there was one that can be taken."""
        if self.chosen is None or self.chosen.away:
            return False
        self.taken.emit(self.chosen)
        return True

    # --- rows in sight ---

    def _fit(self) -> int:
        return max(1, self.height() // max(1, self.row_high))

    def _show(self) -> None:
        """Give every row what stands there."""
        fit, high = self._fit(), self.row_high
        while len(self.rows) < min(fit, len(self.things)):
            self.rows.append(self._row())
        seen = self.things[self._top : self._top + fit]
        bar = look().px(BAR + 4) if len(self.things) > fit else 0
        for index, row in enumerate(self.rows):
            row.setVisible(index < len(seen))
            if index < len(seen):
                row.setGeometry(0, index * high, self.width() - bar, high)
                row.put(seen[index], chosen=self._top + index == self.place, split=self._split)
        self.update()

    def _row(self) -> ListRow:
        made = ListRow(self)
        made.clicked.connect(lambda: self._pressed(made))
        return made

    def _pressed(self, row: ListRow) -> None:
        if row.listed is not None and not row.listed.away:
            self.taken.emit(row.listed)

    def resizeEvent(self, _event: QResizeEvent) -> None:  # noqa: N802  named by the toolkit
        """Another number of rows fits."""
        self._top = max(0, min(self._top, len(self.things) - self._fit()))
        self._show()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Scroll by rows; the blue one stays what it is."""
        by = -1 if event.angleDelta().y() > 0 else 1
        self._top = max(0, min(self._top + by, len(self.things) - self._fit()))
        self._show()
        event.accept()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """At the right, which part of the list is in sight."""
        now, fit, count = look(), self._fit(), len(self.things)
        if count <= fit:
            return
        with QPainter(self) as painter:
            top = round(self.height() * self._top / count)
            high = max(now.px(16), round(self.height() * fit / count))
            bar = QRect(self.width() - now.px(BAR + 2), top, now.px(BAR), high)
            ink.fill(painter, bar, now.colour("edge"))
