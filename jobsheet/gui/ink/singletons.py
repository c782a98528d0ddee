"""Keeps one toolkit release from ending the program in the middle of a job.

PySide6 6.12.0 was built so that calls that give `None`, `True` or `False` forget to count what they give, on
Python before 3.12 (where these are counted like any object): 500 calls of `QPainter.setPen` leave the count of
`None` 500 lower, and at nought the interpreter aborts with `none_dealloc`. 6.11.3 does not. A count that
cannot run out is the cure; from Python 3.12 on these objects last by themselves.
"""

from __future__ import annotations

import sys

#: Far more calls than any session makes, and far from the end of the counter.
PLENTY = 1 << 40
#: Enough for the first painting, which takes some hundred, and quicker than the real cure.
FIRST = 10_000
_ONLY_ONES: tuple[object, ...] = (None, True, False, NotImplemented, ...)
_held: list[object] = []


def _counted() -> bool:
    """Whether this Python counts them and has not been cured."""
    return sys.version_info < (3, 12) and sys.getrefcount(None) < PLENTY


def keep_for_now() -> None:
    """Make them last until the first painting is over."""
    if _counted() and not _held:
        for one in (None, True, False):
            _held.extend([one] * FIRST)


def keep() -> None:
    """Make them last as long as the program does."""
    if _counted():
        import ctypes

        for one in _ONLY_ONES:
            ctypes.c_ssize_t.from_address(id(one)).value += PLENTY
