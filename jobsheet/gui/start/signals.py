"""A signal to end the program: what is unsaved is written, then it ends without
asking, for nobody may be there.

Python hears a signal only between two of its own steps, and while the window waits for events it makes none.
So the signal's number goes into a pipe, at which the window looks like at any other event.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
from functools import partial

from PySide6.QtCore import QCoreApplication, QObject, QSocketNotifier

from jobsheet.gui.desk.keeping_pace import write_all


def hear_signals(parent: QObject) -> None:
    """From now on SIGTERM and SIGHUP end the program with everything written;
    where they are not, nothing is done.
    """
    if sys.platform == "win32":
        return
    heard, told = os.pipe()
    os.set_blocking(heard, False)
    os.set_blocking(told, False)
    signal.set_wakeup_fd(told, warn_on_full_buffer=False)
    for number in (signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, _heard)
    notifier = QSocketNotifier(heard, QSocketNotifier.Type.Read, parent)
    notifier.activated.connect(partial(_end, heard))


def _heard(_number: int, _frame: object) -> None:
    """Nothing yet: an edit may be half made at this moment. The number stands in the pipe."""


def _end(heard: int, *_args: object) -> None:
    """Between two events: write everything. A key that comes before the last
    event is over is written by `run`.
    """
    with contextlib.suppress(BlockingIOError):
        for number in os.read(heard, 64):
            if number in (signal.SIGTERM, signal.SIGHUP):
                write_all()
                QCoreApplication.exit(128 + number)
                return
