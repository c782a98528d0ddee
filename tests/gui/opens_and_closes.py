"""Opens and closes each window beside the job many times; prints what is left of them and what they cost.

In a process of its own: the memory of a test run says nothing of one window.
"""

import contextlib
import ctypes
import gc
import json
import sys
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtGui import QPixmapCache
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QMainWindow

from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.ink import look
from jobsheet.gui.start.start import make_window

#: Opened so often; the first ones fill what is kept on purpose (fonts, cards, pages of the catalogue).
TIMES, FIRST = 20, 6


def megabytes():
    """What the process has in memory now, without what it may let go of: the toolkit's pictures, the heap's free pieces."""
    QPixmapCache.clear()  # up to 10 MB of styled widgets by their size, which fills slowly and then stays
    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL("libc.so.6").malloc_trim(0)
    for line in Path("/proc/self/status").read_text(encoding="ascii").splitlines():
        if line.startswith("VmRSS:"):
            return int(line.split()[1]) / 1024
    return 0.0


def settled():
    """Nothing waits to be taken away."""
    QApplication.processEvents()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()


def beside(window):
    """The windows beside the job that are open."""
    made = [*window.findChildren(QDialog), *window.findChildren(QMainWindow)]
    return [one for one in made if one.isVisible()]


def once(window, way):
    """Open it, paint it, and close it as a person does."""
    window.actions_by_id[way].trigger()
    (made,) = beside(window)
    made.grab()
    name = type(made).__name__
    made.close()
    settled()
    return name


def widgets():
    """All there are, by their kind."""
    return len(QApplication.allWidgets())


def kept(name):
    """Python's own objects of that kind that are still there."""
    return sum(1 for one in gc.get_objects() if type(one).__name__ == name)


def main():
    look.load_fonts()
    look.apply("light")
    window = make_window(open_at_start(None))
    window.resize(1024, 700)
    window.show()
    while not window.actions_by_id:
        QTest.qWait(20)
    while window.parts.solids.facts_about(window.desk.reckoned) is None:  # the modeller is loaded for them
        QTest.qWait(20)
    QTest.qWait(500)  # their pictures, and the answers of the start
    found, ways = {}, [*(one.id for one in window.parts.ways), "print"]
    for way in ways:
        for _ in range(FIRST):
            once(window, way)
        before, at = widgets(), megabytes()
        for _ in range(TIMES - FIRST):
            name = once(window, way)
        grown = round(megabytes() - at, 2)
        found[way] = {"widgets": widgets() - before, "kept": kept(name), "megabytes": grown}
    print(json.dumps(found))
    window.desk.history.mark_saved()
    window.close()


if __name__ == "__main__":
    app = QApplication(["opens and closes"])
    main()
    sys.exit(0)
