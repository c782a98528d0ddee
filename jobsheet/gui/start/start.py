"""Starts the window: the application, its look, and what to do when something unforeseen happens."""

from __future__ import annotations

import sys
from types import TracebackType

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.opening import Opened
from jobsheet.gui.ink import look
from jobsheet.gui.window import settings
from jobsheet.gui.window.window import Window

#: What the program returns after something unforeseen: never silently nought.
BROKEN = 70


class Guard:
    """Shows one sentence for what nobody foresaw, keeps it in a log, and remembers that it happened."""

    def __init__(self) -> None:
        self.broken = False
        self._showing = False

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Take an exception that came out of a slot or an event."""
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
            return
        sys.__excepthook__(kind, error, trace)
        if not isinstance(error, JobsheetError):
            self.broken = True
        self._log(kind, error, trace)
        if self._showing or QApplication.instance() is None:
            return
        self._showing = True
        QTimer.singleShot(0, lambda: self._show(error))

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

    @staticmethod
    def _log(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Keep the whole story in the person's own folder."""
        import traceback

        try:
            folder = paths.own_folder()
            folder.mkdir(parents=True, exist_ok=True)
            with (folder / "problems.log").open("a", encoding="utf-8") as log:
                log.writelines(traceback.format_exception(kind, error, trace))
        except OSError:
            return


def run(opened: Opened) -> int:
    """Show the window with what was read; the exit code."""
    guard = Guard()
    sys.excepthook = guard
    # Asking for the style, or for its name, makes its several hundred constants first (4 ms).
    app = QApplication([*sys.argv[:1], "-style", "Fusion"])
    app.setApplicationName("jobsheet")
    look.load_fonts()
    chosen = settings.read()
    look.apply(chosen.scheme, bench=chosen.bench)
    window = make_window(opened)
    window.show()
    code = app.exec()
    return BROKEN if guard.broken else code


def make_window(opened: Opened) -> Window:
    """The window with a job on its desk; what was wrong with a file is said once the window is there."""
    desk = Desk(opened.job)
    desk.path, desk.named, desk.digest = opened.path, opened.sample, opened.digest
    if opened.sample:
        desk.history.mark_unsaved()
    window = Window(desk)
    first = next((operation.key for _, operation in desk.job.operations()), "")
    window.bench.column.ruled.choose(first)
    if opened.problem:
        problem = opened.problem
        QTimer.singleShot(0, lambda: ask_tell(window, problem))
    return window


def ask_tell(window: Window, sentence: str) -> None:
    """Say what was wrong with the file that should have been opened."""
    from jobsheet.gui.forms import ask

    ask.tell(window, sentence)
