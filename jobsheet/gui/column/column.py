"""The ruled column: heads of the columns, the sheet that scrolls, and the set-up heading that sticks.

The sheet is scrolled by hand: it is always as wide as what is seen of it, so there is one scroll bar and
nothing to negotiate.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtGui import QPainter, QPaintEvent, QShowEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QScrollBar, QWidget

from jobsheet.gui.column.heads_line import HeadsLine
from jobsheet.gui.column.lines_painted import height_at_100
from jobsheet.gui.column.measures import HEADS
from jobsheet.gui.column.ruled_list import RuledList
from jobsheet.gui.column.sticky_heading import StickyHeading
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

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
        self.sticky: StickyHeading | None = None
        self._top = 0
        self._asking: tuple[QWidget | None, int] = (None, 0)
        self.ruled.laid_out.connect(self._laid_out)
        self.ruled.keeping = self.keep_place
        self.ruled.dragging.connect(self._follow)
        self.ruled.reached.connect(self._reveal_line)

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

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Only now it is known how much of the list is seen, and with it whether
        there is something to scroll.
        """
        super().showEvent(event)
        self._laid_out()

    def _laid_out(self) -> None:
        """The sheet has another height: keep the place, within its ends.

        What asks stands still under the hand when a row above it grows, such as
        by what is offered with a remark.
        """
        guest = self.ruled.guest
        top = guest.y() if guest is not None else 0
        asked, stood = self._asking
        self._asking = guest, top
        grown = top - stood if guest is not None and guest is asked else 0
        beyond = max(0, self.ruled.height() - self.view.height())
        if self.bar is None and beyond and self.isVisible():
            self._make_bar()
        if self.bar is not None:
            self.bar.setVisible(beyond > 0)
            self.bar.setRange(0, beyond)
            self.bar.setPageStep(self.view.height())
            self.bar.setSingleStep(look().px(31))
        self.scroll_to(self._top + grown)

    def _make_bar(self) -> None:
        """The scroll bar, when there is first something to scroll."""
        from jobsheet.gui.ink.style_sheets import scroll_style

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
        ruled = self.ruled
        above, below = ruled.standing.headings_around(self._top)
        view = above.view if above is not None else None
        if above is None or not isinstance(view, HeadingView) or above.key == ruled.open_key:
            if self.sticky is not None:
                self.sticky.hide()
            return
        if self.sticky is None:
            self.sticky = StickyHeading(view, self.view)
            self.sticky.opened.connect(ruled.open_wanted)
        self.sticky.put(view)
        push = min(0, below.top - self._top - above.high) if below is not None else 0
        self.sticky.setGeometry(0, push, ruled.width(), above.high)
        self.sticky.show()
        self.sticky.raise_()

    def _heading_height(self) -> int:
        """The room that a closed heading takes at the top."""
        now = look()
        heading = next((line for line in self.ruled.lines if line.is_heading), None)
        form = now.form(self.ruled.width() + now.px(18))
        return now.px(height_at_100(heading, form)) if heading is not None else 0

    def reveal(self, key: str) -> None:
        """Scroll so that a line, or what is open in its place, is in view under the heading that sticks."""
        place = self.ruled.place_of(key)
        if place is not None:
            line = self.ruled.by_key.get(key)
            heading = line is not None and line.is_heading and key != self.ruled.open_key
            keep = 0 if heading else self._heading_height()
            self._reveal_span(place.top() - keep, place.top() + place.height())

    def _reveal_line(self, key: str) -> None:
        """The keyboard came to a line: it is in view as a control would be."""
        place = self.ruled.place_of(key)
        if place is not None:
            self._reveal_control(place.top(), place.height())

    def keep_place(self, change: Callable[[], None]) -> None:
        """Change what stands in the sheet; the control that has the keyboard
        stays at its height on the screen.
        """
        held = QApplication.focusWidget()
        held = held if held is not None and self.ruled.isAncestorOf(held) else None
        before = held.mapTo(self.ruled, QPoint(0, 0)).y() - self._top if held is not None else 0
        change()
        self.ruled.arrange()
        # What had the keyboard may be gone with the change.
        if held is not None and QApplication.focusWidget() is held:
            self.scroll_to(held.mapTo(self.ruled, QPoint(0, 0)).y() - before)

    def reveal_widget(self, widget: QWidget) -> None:
        """Scroll so that a control inside the sheet is in view, with its label and its line."""
        if not self.ruled.isAncestorOf(widget):
            return
        below = look().px(getattr(widget.parentWidget(), "room_below", 0))
        self._reveal_control(widget.mapTo(self.ruled, QPoint(0, 0)).y(), widget.height() + below)

    def _reveal_control(self, top: int, high: int) -> None:
        """Something that has the keyboard, with a little room above and below it."""
        room = look().px(30)
        self._reveal_span(top - room - self._heading_height(), top + min(high, self.view.height()) + room)

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
