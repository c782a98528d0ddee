"""The window with the sample loaded and painted, against an empty window shown and painted."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.benchmarks.fresh import in_turn

EMPTY = """
import sys
from PySide6.QtWidgets import QApplication, QMainWindow
class Window(QMainWindow):
    def paintEvent(self, event):
        super().paintEvent(event)
        app.quit()
app = QApplication(sys.argv)
window = Window()
window.resize(1440, 900)
window.show()
app.exec()
"""
#: The program itself as `gui/app.py` starts it, left once its window is painted: all of it is painted in one go.
OURS = """
import gc
gc.disable()
from jobsheet.gui.opening import open_at_start
opened = open_at_start(None)
from PySide6.QtWidgets import QApplication
from jobsheet.gui import start
class Window(start.Window):
    def paintEvent(self, event):
        super().paintEvent(event)
        QApplication.quit()
start.Window = Window
start.run(opened)
"""


@pytest.fixture
def environment(tmp_path):
    return {"QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(tmp_path)}


def test_start_against_an_empty_window(environment, capsys):
    ours, empty, ratio = in_turn(["-c", OURS], ["-c", EMPTY], environment)
    with capsys.disabled():
        print(f"\nstart: {ours * 1e3:.0f} ms, empty window {empty * 1e3:.0f} ms, ratio {ratio:.2f} (at most 1.5)")
        print(where_the_rest_goes(environment))
    assert ratio <= 1.5


def where_the_rest_goes(environment: dict[str, str]) -> str:
    """The costliest imports of the start beyond Qt's own, in ms of their own time."""
    import os

    inherited = {**os.environ, **environment}
    inherited.pop("PYTHONDONTWRITEBYTECODE", None)
    done = subprocess.run(
        [sys.executable, "-X", "importtime", "-c", OURS], check=True, capture_output=True, text=True, env=inherited
    )
    rows = []
    for line in done.stderr.splitlines():
        parts = line.removeprefix("import time:").split("|")
        if len(parts) == 3 and parts[0].strip().isdigit():
            rows.append((int(parts[0]) / 1e3, parts[2].strip()))
    qt = sum(ms for ms, name in rows if name.startswith(("PySide6", "shiboken6")))
    own = sum(ms for ms, name in rows if name.startswith("jobsheet"))
    other = sorted(((ms, name) for ms, name in rows if not name.startswith(("PySide6", "shiboken6", "jobsheet"))), reverse=True)
    table = [f"  imports: Qt {qt:.0f} ms, ours {own:.0f} ms ({sum(name.startswith('jobsheet') for _, name in rows)} modules)"]
    table += [f"    {ms:5.1f} ms  {name}" for ms, name in other[:8]]
    return "\n".join(table)
