"""The bench under a paper, and what scrolls on it."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QScrollArea, QWidget

from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style


class Ground(QWidget):
    """The bench under the sheets."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Bench."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("bench"))


def scrolling(inside: QWidget, parent: QWidget) -> QScrollArea:
    """What scrolls up and down only."""
    area = QScrollArea(parent)
    area.setWidget(inside)
    area.setWidgetResizable(False)
    area.setFrameShape(QScrollArea.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
    area.verticalScrollBar().setStyleSheet(scroll_style(look()))
    area.viewport().setAutoFillBackground(True)
    made = area.viewport().palette()
    made.setColor(made.ColorRole.Window, look().colour("paper"))
    area.viewport().setPalette(made)
    return area
