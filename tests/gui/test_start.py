"""The start: what is not loaded before the first figures."""

from __future__ import annotations

import os
import subprocess
import sys

from PySide6.QtCore import QPoint

FIRST_PAINTING = """
import os, sys
from PySide6.QtCore import QTimer
import jobsheet.gui.desk.opening, jobsheet.gui.start.start as start
class Window(start.Window):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, done)
def done():
    print(*sorted(name for name in sys.modules if name.startswith("jobsheet.gui.") and name.split(".")[2] in {"places", "edits", "pages", "papers", "margin", "strip"}))
    sys.stdout.flush()
    os._exit(0)
start.Window = Window
start.run(jobsheet.gui.desk.opening.open_at_start(None))
"""


def first_painting(home):
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    done = subprocess.run(
        [sys.executable, "-c", FIRST_PAINTING], check=True, capture_output=True, text=True, env=environment
    )
    return done.stdout.strip()


def test_no_place_and_no_open_row_is_loaded_before_the_first_figures(home):
    assert first_painting(home) == ""


def test_what_goes_is_looked_for_by_the_window_alone_once_it_is_there(home):
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    code = FIRST_PAINTING.replace("QTimer.singleShot(0, done)", "QTimer.singleShot(500, done)").replace(
        "    sys.stdout.flush()",
        "    import gc\n    from PySide6.QtWidgets import QApplication\n"
        "    from jobsheet.gui.start.collecting import Collecting\n"
        "    (found,) = QApplication.instance().findChildren(Collecting)\n"
        "    print(gc.isenabled(), found._timer.isActive()); sys.stdout.flush()",
    )
    done = subprocess.run(
        [sys.executable, "-c", code], check=True, capture_output=True, text=True, env=environment
    )
    assert done.stdout.split()[-2:] == ["False", "True"]


def test_a_long_sheet_has_its_scroll_bar(show):
    window = show(size=(1440, 420))
    bar = window.bench.column.bar
    assert bar is not None
    assert bar.isVisible()
    assert bar.geometry().topLeft() != QPoint(0, 0)
    assert bar.maximum() == window.bench.column.ruled.height() - window.bench.column.view.height()
