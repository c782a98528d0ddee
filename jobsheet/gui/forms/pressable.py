"""What can be pressed, by mouse, Space or Enter: the toolkit's own base leaves
Enter to boxes with a default button.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton


class Pressable(QAbstractButton):
    """A button without a look of its own."""

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter presses like Space."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter) and not event.isAutoRepeat():
            self.click()
            return
        super().keyPressEvent(event)
