"""The ruled column: heads of the columns, the sheet that scrolls, and the set-up heading that sticks."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from jobsheet.gui.look import look, scroll_style
from jobsheet.gui.measures import HEADING, HEADS
from jobsheet.gui.rows import HeadingLine, HeadsLine
from jobsheet.gui.sheet import Sheet

translate = QCoreApplication.translate


class Column(QWidget):
    """Everything that scrolls, and what stays in place above it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.heads = HeadsLine(self)
        self.area = QScrollArea(self)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.viewport().setAutoFillBackground(False)
        self.area.verticalScrollBar().setStyleSheet(scroll_style(look()))
        self.sheet = Sheet()
        self.sheet.setAccessibleName(translate("Column", "Set-ups and operations"))
        self.area.setWidget(self.sheet)
        self.sheet.setAutoFillBackground(False)
        self.sticky: HeadingLine | None = None
        self.area.viewport().installEventFilter(self)
        self.area.verticalScrollBar().valueChanged.connect(self._stick)
        self.sheet.laid_out.connect(self._stick)

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Heads above, the sheet below."""
        now = look()
        high = now.px(HEADS)
        self.area.setGeometry(1, 1 + high, self.width() - 2, self.height() - high - 2)
        self.heads.setGeometry(1, 1, self.area.viewport().width(), high)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """The sheet is as wide as what can be seen of it: never a scroll sideways."""
        if event.type() == QEvent.Type.Resize and watched is self.area.viewport():
            width = self.area.viewport().width()
            self.sheet.set_width(width)
            self.heads.setGeometry(1, 1, width, look().px(HEADS))
            self._stick()
        return super().eventFilter(watched, event)

    def _stick(self) -> None:
        """Keep the heading of the set-up in view while its rows scroll."""
        top = self.area.verticalScrollBar().value()
        above: HeadingLine | None = None
        below: HeadingLine | None = None
        for line in self.sheet.lines:
            if isinstance(line, HeadingLine):
                if line.y() < top and not line.isHidden():
                    above = line
                elif line.y() >= top:
                    below = line
                    break
        if above is None or above.view is None:
            if self.sticky is not None:
                self.sticky.hide()
            return
        if self.sticky is None:
            self.sticky = HeadingLine(above.view, self.area.viewport())
            self.sticky.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            self.sticky.opened.connect(self.sheet.open_wanted)
        self.sticky.key = above.key
        self.sticky.put(above.view)
        high = look().px(HEADING)
        push = min(0, below.y() - top - high) if below is not None else 0
        self.sticky.setGeometry(0, push, self.sheet.width(), high)
        self.sticky.show()
        self.sticky.raise_()

    def reveal(self, key: str) -> None:
        """Scroll so that a line, or what is open in its place, is in view under the heading that sticks."""
        opened = self.sheet.opened
        shown: QWidget | None = self.sheet.by_key.get(key)
        if opened is not None and opened.key == key:
            shown = opened
        if shown is None:
            return
        bar = self.area.verticalScrollBar()
        room = self.area.viewport().height()
        keep = 0 if isinstance(shown, HeadingLine) or shown is self.sheet.lines[:1] else look().px(HEADING)
        top, bottom = shown.y() - keep, shown.y() + shown.height()
        if bottom - bar.value() > room:
            bar.setValue(min(top, bottom - room))
        if top < bar.value():
            bar.setValue(max(0, top))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper with a hairline round it."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            painter.setPen(now.colour("rule"))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
