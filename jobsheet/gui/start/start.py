"""Starts the window: the application, its look, and what to do when something unforeseen happens."""

from __future__ import annotations

import sys

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.keeping_pace import write_all
from jobsheet.gui.desk.opening import Opened
from jobsheet.gui.ink import look
from jobsheet.gui.start.collecting import Collecting
from jobsheet.gui.start.guard import Guard
from jobsheet.gui.window import settings
from jobsheet.gui.window.window import Window

#: What the program returns after something unforeseen: never silently nought.
BROKEN = 70


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
    window.later.painted.connect(Collecting(app).begin)
    _hear_once_painted(window)
    window.show()
    code = app.exec()
    write_all()
    return BROKEN if guard.broken else code


def _hear_once_painted(window: Window) -> None:
    """Once the window is there: what a signal to end the program does. Before, there is nothing to lose."""

    def hear() -> None:
        window.later.painted.disconnect(hear)
        from jobsheet.gui.start.signals import hear_signals

        hear_signals(window)

    window.later.painted.connect(hear)


def make_window(opened: Opened) -> Window:
    """The window with a job on its desk; what was wrong with a file is said once the window is there."""
    desk = Desk(opened.job)
    desk.path, desk.named, desk.digest = opened.path, opened.sample, opened.digest
    if opened.sample:
        desk.history.mark_unsaved()
    window = Window(desk)
    first = next((operation.key for _, operation in desk.job.operations()), "")
    window.bench.column.ruled.choose(first)
    if opened.paper is not None:
        paper = opened.paper
        QTimer.singleShot(0, lambda: window.parts.files.open_path(paper))
    if opened.problem:
        problem = opened.problem
        QTimer.singleShot(0, lambda: ask_tell(window, problem))
    return window


def ask_tell(window: Window, sentence: str) -> None:
    """Say what was wrong with the file that should have been opened."""
    from jobsheet.gui.forms import ask

    ask.tell(window, sentence)
