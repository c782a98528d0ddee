"""A list of choices under its cell: pressed to open, and a letter of what is looked for to what it leaves."""

from __future__ import annotations

import os
import subprocess
import sys

#: To open, and a key, the best of some [ms].
OPEN, KEY = 50, 16

LISTS = """
import time
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from jobsheet.gui.ink import look
from jobsheet.gui.start import start
from jobsheet.gui.desk.opening import open_at_start
application = QApplication([])
application.setStyle("Fusion")
look.load_fonts()
look.apply("light", bench=False)
window = start.make_window(open_at_start(None))
window.resize(1440, 900)
window.show()
window.activateWindow()
for _ in range(50):
    application.processEvents()
opened, keyed = [], []
for time_ in range(6):
    began = time.perf_counter()
    QTest.mouseClick(window.bench.title.cells["material"], Qt.MouseButton.LeftButton)
    opened.append(time.perf_counter() - began)
    panel = window.parts.panels.open
    for letter in "mild":
        began = time.perf_counter()
        QTest.keyClicks(panel.line, letter)
        keyed.append(time.perf_counter() - began)
    QTest.keyClick(panel.line, Qt.Key.Key_Escape)
    for _ in range(20):
        application.processEvents()
        time.sleep(0.01)
print(f"{min(opened[1:]) * 1e3:.2f},{min(keyed) * 1e3:.2f}")
"""


def test_a_list_opens_and_follows_a_key(tmp_path, capsys):
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(tmp_path)}
    done = subprocess.run([sys.executable, "-c", LISTS], env=env, capture_output=True, text=True, check=True)
    opened, key = (float(value) for value in done.stdout.split()[-1].split(","))
    with capsys.disabled():
        print(
            f"\nlist of metals: opened in {opened:.1f} ms (at most {OPEN}), a key {key:.1f} ms (at most {KEY})"
        )
    assert opened <= OPEN
    assert key <= KEY
