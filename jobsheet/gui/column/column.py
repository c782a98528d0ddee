"""The ruled column: heads of the columns, the sheet that scrolls, and the set-up heading that sticks.

The sheet is scrolled by hand: it is always as wide as what is seen of it, so there is one scroll bar and
nothing to negotiate.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtGui import QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QScrollBar, QWidget

from jobsheet.gui.column.measures import HEADS
from jobsheet.gui.column.rows import HeadingLine, HeadsLine
from jobsheet.gui.column.ruled_list import RuledList
from jobsheet.gui.ink import ink, waking
from jobsheet.gui.ink.look import look, scroll_style

translate = QCoreApplication.translate

BAR = 10
#: How far a notch of the wheel goes, in closed rows.
NOTCH = 2


class Column(QWidget):
    """Everything that scrolls, and what stays in place above it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.heads = HeadsLine(self)
        self.view = QWidget(self)
        self.ruled = RuledList(self.view)
        self.ruled.setAccessibleName(translate("Column", "Set-ups and operations"))
        self.bar: QScrollBar | None = None
        self.sticky: HeadingLine | None = None
        self._top = 0
        self.ruled.laid_out.connect(self._laid_out)
        self.ruled.dragging.connect(self._follow)

    # --- scrolling ---

    @property
    def top(self) -> int:
        """How far the sheet is scrolled [px]."""
        return self._top

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Heads above, the sheet below, the bar at the right."""
        now = look()
        heads, bar = now.px(HEADS), now.px(BAR)
        inside = self.width() - 2 - bar
        self.heads.setGeometry(1, 1, inside, heads)
        self.view.setGeometry(1, 1 + heads, inside, self.height() - heads - 2)
        if self.bar is not None:
            self.bar.setGeometry(1 + inside, 1 + heads, bar, self.view.height())
        self.ruled.set_width(inside)
        self._laid_out()

    def _laid_out(self) -> None:
        """The sheet has another height: keep the place, within its ends."""
        beyond = max(0, self.ruled.height() - self.view.height())
        if self.bar is None and beyond and self.view.height() > 0:
            if not waking.awake():
                # Its room is kept free; it comes right after the first figures, if it is still needed then.
                waking.when_awake(self._laid_out)
            else:
                self._make_bar()
        if self.bar is not None:
            self.bar.setVisible(beyond > 0)
            self.bar.setRange(0, beyond)
            self.bar.setPageStep(self.view.height())
            self.bar.setSingleStep(look().px(31))
        self.scroll_to(self._top)

    def _make_bar(self) -> None:
        """The scroll bar, when there is first something to scroll."""
        self.bar = QScrollBar(self)
        self.bar.setStyleSheet(scroll_style(look()))
        self.bar.setAccessibleName(translate("Column", "Scroll the sheet"))
        self.bar.setGeometry(
            self.view.x() + self.view.width(), self.view.y(), look().px(BAR), self.view.height()
        )
        self.bar.valueChanged.connect(self.scroll_to)

    def scroll_to(self, top: int) -> None:
        """Show the sheet from that height on."""
        self._top = max(0, min(top, self.ruled.height() - self.view.height()))
        if self.ruled.y() != -self._top:
            self.ruled.move(QPoint(0, -self._top))
        if self.bar is not None and self.bar.value() != self._top:
            self.bar.setValue(self._top)
        self._stick()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Scroll by rows, or as finely as the hand does."""
        fine = event.pixelDelta().y()
        by = fine or round(event.angleDelta().y() / 120 * NOTCH * look().px(31))
        self.scroll_to(self._top - by)
        event.accept()

    def _follow(self, y: int) -> None:
        """Scroll along when a row is dragged to the edge of what is seen."""
        edge = look().px(24)
        if y - self._top < edge + self._heading_height():
            self.scroll_to(self._top - edge)
        elif self._top + self.view.height() - y < edge:
            self.scroll_to(self._top + edge)

    # --- what is kept in view ---

    def _stick(self) -> None:
        """Keep the heading of the set-up in view while its rows scroll."""
        above: HeadingLine | None = None
        below: HeadingLine | None = None
        for line in self.ruled.lines:
            if isinstance(line, HeadingLine):
                if line.y() < self._top and not line.isHidden():
                    above = line
                elif line.y() >= self._top:
                    below = line
                    break
        if above is None or above.view is None:
            if self.sticky is not None:
                self.sticky.hide()
            return
        if self.sticky is None:
            self.sticky = HeadingLine(above.view, self.view)
            self.sticky.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
            self.sticky.opened.connect(self.ruled.open_wanted)
        self.sticky.key = above.key
        self.sticky.put(above.view)
        high = above.height()
        push = min(0, below.y() - self._top - high) if below is not None else 0
        self.sticky.setGeometry(0, push, self.ruled.width(), high)
        self.sticky.show()
        self.sticky.raise_()

    def _heading_height(self) -> int:
        """The room that the heading takes at the top."""
        heading = next((line for line in self.ruled.lines if isinstance(line, HeadingLine)), None)
        return heading.height() if heading is not None else 0

    def reveal(self, key: str) -> None:
        """Scroll so that a line, or what is open in its place, is in view under the heading that sticks."""
        opened = self.ruled.opened
        shown: QWidget | None = self.ruled.by_key.get(key)
        if opened is not None and opened.key == key:
            shown = opened
        if shown is not None:
            keep = 0 if isinstance(shown, HeadingLine) else self._heading_height()
            self._reveal_span(shown.y() - keep, shown.y() + shown.height())

    def reveal_widget(self, widget: QWidget) -> None:
        """Scroll so that a control inside the sheet is in view, with its label and its line."""
        if not self.ruled.isAncestorOf(widget):
            return
        now = look()
        top = widget.mapTo(self.ruled, QPoint(0, 0)).y()
        self._reveal_span(
            top - now.px(30) - self._heading_height(),
            top + min(widget.height(), self.view.height()) + now.px(30),
        )

    def _reveal_span(self, top: int, bottom: int) -> None:
        """The least scrolling that shows all of it, or at least its top."""
        place = self._top
        if bottom - place > self.view.height():
            place = bottom - self.view.height()
        self.scroll_to(min(place, top) if top < place else place)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper with a hairline round it."""
        now = look()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
