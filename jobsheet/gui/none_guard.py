"""Keeps one toolkit release from ending the program in the middle of a job.

PySide6 6.12.0 was built so that calls without a result forget to count their `None` on Python before 3.12
(where `None` is counted like any object): 500 calls of `QPainter.setPen` leave its count 500 lower, and at
nought the interpreter aborts with `none_dealloc`. 6.11.3 does not. A count that cannot run out is the cure.
"""

from __future__ import annotations

import sys

#: Far more calls than any session makes, and far from the end of the counter.
PLENTY = 1 << 40
#: Enough for the first painting, and quicker than the real cure.
FIRST = 200_000
_held: list[None] = []


def _counted() -> bool:
    """Whether this Python counts `None` and has not been cured."""
    return sys.version_info < (3, 12) and sys.getrefcount(None) < PLENTY


def keep_none_for_now() -> None:
    """Make `None` last until the first painting is over."""
    if _counted() and not _held:
        _held.extend([None] * FIRST)


def keep_none() -> None:
    """Make `None` last, as it does by itself from Python 3.12 on."""
    if _counted():
        import ctypes

        ctypes.c_ssize_t.from_address(id(None)).value += PLENTY
