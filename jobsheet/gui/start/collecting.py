"""Circles of values are looked for by the window's own thread alone.

Python looks for them in whatever thread makes the next value, and gives back what it finds there and then. A piece
of the window that is given back by the thread which makes the pages or the solids ends the program: the toolkit
lets its pieces go in their own thread only. So Python looks for none by itself while a window is there, and a timer
of the window does it as often as Python would.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

#: How often is asked whether it is time [ms].
EVERY = 500


class Collecting(QObject):
    """Begins when the window is painted; lives as long as its parent."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._timer = QTimer(self)
        self._timer.setInterval(EVERY)
        self._timer.timeout.connect(look)

    def begin(self) -> None:
        """From now on; asked again it goes on."""
        gc.disable()
        if not self._timer.isActive():
            # What a start makes stays: it is not looked through again.
            gc.freeze()
            self._timer.start()


def look() -> None:
    """Look through the oldest generation whose time has come by Python's own counts."""
    counts, limits = gc.get_count(), gc.get_threshold()
    oldest = next((age for age in (2, 1, 0) if limits[age] and counts[age] > limits[age]), None)
    if oldest is not None:
        gc.collect(oldest)
