"""A window that was closed is gone: its widgets, its pages, its memory."""

import contextlib
import ctypes
import gc
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtGui import QPixmapCache
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.reckoning.answers import capability_answer

#: What one kind may keep after the first five [MB]; remembered glyphs and
#: pictures of the toolkit come with these.
MOST = 2.0
TIMES = 20
KINDS = ("cabinet", "card", "new-card", "capability", "fits", "prove", "print")


def memory():
    """What is held [MB], without the free pieces of the heap that are given back when they are asked for."""
    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL("libc.so.6").malloc_trim(0)
    for line in Path("/proc/self/status").read_text(encoding="ascii").splitlines():
        if line.startswith("VmRSS:"):
            return int(line.split()[1]) / 1024
    pytest.skip("no such account of the memory on this system")


@pytest.fixture
def only_what_is_new():
    """What was there before is not looked through again each time: in a long run
    of tests that is nearly everything.
    """
    gc.collect()
    gc.freeze()
    yield
    gc.unfreeze()


def settle():
    for _ in range(3):
        QApplication.processEvents()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()


def counted():
    # The style keeps drawn lists of choices, a new one for each palette, up to a bound
    # of its own: no window stays by that.
    QPixmapCache.clear()
    settle()
    return len(QApplication.allWidgets()), len(QApplication.topLevelWidgets())


def remembered(reckon):
    found = []

    def again(*args, **kwargs):
        if not found:
            found.append(reckon(*args, **kwargs))
        return found[0]

    return again


@pytest.mark.parametrize("kind", KINDS)
def test_what_was_closed_is_gone(only_what_is_new, window, qtbot, kind, monkeypatch):
    # Reckoned once: the seconds that a capability card takes are none of this test's.
    monkeypatch.setattr(capability_answer, "capability", remembered(capability_answer.capability))
    qtbot.waitUntil(lambda: not window.parts.solids.waiting)
    early = widgets = windows = 0
    for time in range(TIMES):
        window.actions_by_id[kind].trigger()
        made = [one for one in window.findChildren(QWidget) if one.isWindow() and one.isVisible()]
        assert len(made) == 1
        if kind == "print" and not 6 <= time <= 16:  # its pages are there too, before it is closed
            qtbot.waitUntil(lambda made=made[0]: made.view.count > 0)
        QApplication.processEvents()
        made[0].close()
        del made
        settle()
        if time == 0:
            widgets, windows = counted()
        if time == 4:
            counted()
            early = memory()
    widgets_left, windows_left = counted()
    assert windows_left == windows
    assert widgets_left <= widgets
    assert memory() - early < MOST
