"""When unsaved work is written: once the hand rests, and never later than a
ceiling after the first key of it.

Everything that keeps something waits here, so that a fault or a signal to end
can have all of it written at once.
"""

from __future__ import annotations

import weakref
from collections.abc import Callable
from time import monotonic

from PySide6.QtCore import QObject, QTimer

#: How long after the last edit it is written [ms].
QUIET = 800
#: How old work may become that is not written [s]: what a crash takes is two seconds at the most, less what a
#: slow disk needs (estimate).
CEILING = 1.2

_WAITING: weakref.WeakSet[Pace] = weakref.WeakSet()


class Pace:
    """One thing to be kept, and when."""

    def __init__(self, write: Callable[[], object], parent: QObject) -> None:
        self._write = write
        self._since: float | None = None
        self._timer = QTimer(parent)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.now)

    def edited(self) -> None:
        """There is something new: an edit that comes too late to wait writes what was there before it too."""
        now = monotonic()
        if self._since is None:
            self._since = now
            _WAITING.add(self)
        left = CEILING - (now - self._since)
        if left <= 0:
            self.now()
        else:
            self._timer.start(min(QUIET, round(left * 1000)))

    def done(self) -> None:
        """Nothing waits any more."""
        self._since = None
        self._timer.stop()
        _WAITING.discard(self)

    def now(self) -> None:
        """Write it."""
        self.done()
        self._write()


def write_all() -> None:
    """Write whatever waits; one that cannot be written keeps no other."""
    for pace in list(_WAITING):
        try:
            pace.now()
        except Exception:  # noqa: BLE001, S112  this is the last that the program does
            continue
