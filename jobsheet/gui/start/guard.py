"""What happens when something unforeseen does: one sentence, a log, and never silently nought."""

from __future__ import annotations

import sys
from types import TracebackType

from PySide6 import QtCore
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from jobsheet.errors import JobsheetError


class Guard:
    """Shows one sentence for what nobody foresaw, keeps it in a log, and remembers that it happened."""

    def __init__(self) -> None:
        self.broken = False
        self._showing = False

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Take an exception that came out of a slot or an event: what is unsaved
        is written before anything is said.
        """
        from jobsheet.gui.desk.keeping_pace import write_all
        from jobsheet.gui.desk.problems_log import keep

        write_all()
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
            return
        sys.__excepthook__(kind, error, trace)
        if not isinstance(error, JobsheetError):
            self.broken = True
        keep(error)
        if self._showing or QApplication.instance() is None:
            return
        self._showing = True
        QTimer.singleShot(0, lambda: self._tell(error))

    def _tell(self, error: BaseException) -> None:
        """Say it, but never with a box over a text that somebody types: then when that is left."""
        from PySide6.QtWidgets import QLineEdit, QPlainTextEdit

        app = QApplication.instance()
        if isinstance(app, QApplication) and isinstance(app.focusWidget(), QLineEdit | QPlainTextEdit):
            once = QtCore.Qt.ConnectionType.SingleShotConnection
            app.focusChanged.connect(lambda *_: QTimer.singleShot(0, lambda: self._show(error)), once)
        else:
            self._show(error)

    def _show(self, error: BaseException) -> None:
        """One sentence, once at a time."""
        from jobsheet.gui.forms import ask

        try:
            if isinstance(error, JobsheetError):
                ask.tell(QApplication.activeWindow(), str(error))
            else:
                ask.tell(
                    QApplication.activeWindow(),
                    QApplication.translate(
                        "App",
                        "Something went wrong in the program ({error}). Your job is kept; save it under a new name.",
                    ).format(error=type(error).__name__),
                )
        finally:
            self._showing = False
