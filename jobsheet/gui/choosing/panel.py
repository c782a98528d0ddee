"""A panel that hangs under a cell of the title block, over the strip: ink round
it, blue along its top, no shadow.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QObject, QRect, QRectF, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

HEAD, FOOT = 44, 44


class Panel(QWidget):
    """What all panels do: hang where they belong, go by Esc or when something else
    is pressed, give the keyboard back.
    """

    closed = Signal()

    def __init__(self, ground: QWidget, hang: Callable[[], tuple[int, int]], name: str) -> None:
        super().__init__(ground)
        self._ground = ground
        self._hang = hang
        self._back: QWidget | None = QApplication.focusWidget()
        self._open = True
        self.title = name
        self.setAccessibleName(name)
        ground.installEventFilter(self)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)

    # --- where it hangs ---

    def size_wanted(self) -> tuple[int, int]:
        """Width and height [px] if there were room enough."""
        raise NotImplementedError

    def arrange(self) -> None:
        """Place what is in it, for its size."""
        raise NotImplementedError

    def hang(self) -> None:
        """Under its cell, and within the ground."""
        now, ground = look(), self._ground
        left, top = self._hang()
        gap = now.px(8)
        wide, high = self.size_wanted()
        wide, high = min(wide, ground.width() - 2 * gap), min(high, ground.height() - top - gap)
        self.setGeometry(max(gap, min(left, ground.width() - wide - gap)), top, wide, high)
        self.arrange()
        self.show()
        self.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  named by the toolkit
        """The ground has another size."""
        if self._open and watched is self._ground and event.type() == QEvent.Type.Resize:
            self.hang()
        return super().eventFilter(watched, event)

    # --- going ---

    def leave(self, *, back: bool) -> None:
        """Go; `back` gives the keyboard to whoever had it."""
        if not self._open:
            return
        self._open = False
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.disconnect(self._focus_moved)
        self._ground.removeEventFilter(self)
        self.hide()
        self.closed.emit()
        if back:
            from shiboken6 import isValid

            if self._back is not None and isValid(self._back) and self._back.isVisible():
                self._back.setFocus()
        self.deleteLater()

    def _focus_moved(self, _old: QWidget | None, new: QWidget | None) -> None:
        """Whoever works elsewhere is done here; another window, a menu or a list
        of words only borrows the keyboard.
        """
        if new is None or new is self or self.isAncestorOf(new) or new.window() is not self.window():
            return
        if QGuiApplication.mouseButtons() != QtCore.Qt.MouseButton.NoButton:
            QtCore.QTimer.singleShot(30, self, lambda: self._focus_moved(None, QApplication.focusWidget()))
        else:
            self.leave(back=False)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Esc goes."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.leave(back=True)
        else:
            event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A press beside everything is no press on what lies behind."""
        event.accept()

    # --- painting ---

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, edge, blue top; then what the panel itself writes."""
        now = look()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            thick = 1.5 * now.scale
            painter.setPen(QPen(now.colour("ink"), thick))
            half = thick / 2
            painter.drawRect(QRectF(self.rect()).adjusted(half, half, -half, -half))
            ink.fill(painter, QRect(0, 0, self.width(), now.px(4)), now.colour("bluemark"))
            self.paint(painter)

    def paint(self, painter: QPainter) -> None:
        """Its own words; the base writes none."""
