"""A signal to end the program: what is unsaved is written, then it ends without asking, for nobody may be there.

Python hears a signal only between two of its own steps, and while the window waits for events it makes none. So
the signal writes a byte into a pipe, at which the window looks like at any other event.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
from functools import partial

from PySide6.QtCore import QObject, QSocketNotifier
from PySide6.QtWidgets import QApplication

from jobsheet.gui.desk.keeping_pace import write_all


def hear_signals(parent: QObject) -> None:
    """From now on SIGTERM and SIGHUP end the program with everything written; where they are not, nothing is done."""
    if sys.platform == "win32":
        return
    heard, told = os.pipe()
    os.set_blocking(heard, False)
    os.set_blocking(told, False)
    signal.set_wakeup_fd(told, warn_on_full_buffer=False)
    for number in (signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, _end)
    notifier = QSocketNotifier(heard, QSocketNotifier.Type.Read, parent)
    notifier.activated.connect(partial(_read, heard))


def _read(heard: int, *_args: object) -> None:
    """Take the byte away; Python has called the handler by now."""
    with contextlib.suppress(BlockingIOError):
        os.read(heard, 64)


def _end(number: int, _frame: object) -> None:
    write_all()
    QApplication.exit(128 + number)
