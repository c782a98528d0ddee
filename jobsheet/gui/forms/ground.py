"""The bench under the sheets of a place: painted, and told of another size, by
which everything on it is placed anew.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look


class Ground(QWidget):
    """The ground of a window; `place` lays out what lies on it."""

    def __init__(self, window: QWidget, place: Callable[[], None]) -> None:
        super().__init__(window)
        self._place = place

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Everything is placed on it anew."""
        super().resizeEvent(event)
        self._place()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Bench."""
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), look().colour("bench"))
