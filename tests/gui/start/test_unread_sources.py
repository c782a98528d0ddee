"""What is imported after the toolkit is not read as source, and the toolkit
knows all the same who uses it.
"""

from __future__ import annotations

import subprocess
import sys
from types import ModuleType

from jobsheet.gui.start.unread_sources import uses_the_toolkit

STARTS = """
import linecache, os, sys
import jobsheet.gui.start.app as app
import jobsheet.gui.start.unread_sources as unread
leave = unread.leave_unread

def told():
    import decimal  # of the others, one that nobody has imported yet
    from jobsheet.gui.places.card import card_window  # and one of ours
    known = sys.modules["PySide6.support.feature"].pyside_feature_dict
    read = [one for one in linecache.cache if "jobsheet" in one]
    print(known["jobsheet.gui.window.window"], known["jobsheet.gui.ink.look"], known["decimal"], len(read), flush=True)
    os._exit(0)

def then_watch():
    leave()
    from PySide6.QtCore import QTimer
    from jobsheet.gui.start import start
    class Window(start.Window):
        def paintEvent(self, event):
            super().paintEvent(event)
            QTimer.singleShot(0, told)
    start.Window = Window

unread.leave_unread = then_watch
app.main(None)
"""


def test_a_start_reads_no_source_and_switches_no_spelling():
    done = subprocess.run(
        [sys.executable, "-c", STARTS], capture_output=True, text=True, check=False, timeout=60
    )
    assert done.stdout.split() == ["0", "0", "-1", "0"], done.stderr


def test_ours_are_known_by_their_names():
    assert uses_the_toolkit(ModuleType("jobsheet.gui.ink.look"))
    assert not uses_the_toolkit(ModuleType("jobsheet.units.table"))
    assert not uses_the_toolkit(ModuleType("numpy"))
