"""What threads have to tell the window: called in the window's own thread, where it still is there.

A thread that told a part of the window itself could do so while that part is being
taken away, which ends the program.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from functools import cache

from PySide6 import QtCore
from PySide6.QtCore import QObject, Signal


class Voice(QObject):
    """It lives as long as the program. What is told it calls in the thread in which it was made."""

    told = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.told.connect(self._call, QtCore.Qt.ConnectionType.QueuedConnection)

    def _call(self, what: Callable[[], object]) -> None:
        with contextlib.suppress(RuntimeError):  # whom it is for is gone
            what()


@cache
def voice() -> Voice:
    """The one of the program; asked for first in the window's thread."""
    return Voice()
