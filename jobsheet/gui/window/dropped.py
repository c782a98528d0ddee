"""A file that is let fall on the window: a job, or sheets that carry one, is opened; a picture
is a photograph of the set-up there.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QPoint, QTimer
from PySide6.QtGui import QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QWidget


def dropped_file(event: QDropEvent) -> Path | None:
    """The one file of this computer that is held over the window; None for anything else."""
    urls = event.mimeData().urls()
    if len(urls) != 1 or not urls[0].isLocalFile():
        return None
    return Path(urls[0].toLocalFile())


class DroppedFiles(QObject):
    """Watches a window for files; what it is and whether it can be read is said
    as for any other way of opening.
    """

    def __init__(self, window: QWidget, opened: Callable[[Path, QPoint], object]) -> None:
        super().__init__(window)
        self._opened, self._window = opened, window
        window.setAcceptDrops(True)
        window.installEventFilter(self)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Take what can be opened; the rest goes its way."""
        if isinstance(event, QDropEvent) and (path := dropped_file(event)) is not None:
            event.acceptProposedAction()
            if not isinstance(event, QDragMoveEvent):
                # Only when the hand is free again: a question cannot be answered
                # while the other program holds the file.
                at = self._window.mapToGlobal(event.position().toPoint())
                QTimer.singleShot(0, lambda: self._opened(path, at))
            return True
        return False
