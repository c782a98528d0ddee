"""Solids and pictures of forty operations from nothing, an edit of the last one, and
how long the window stops meanwhile.
"""

import json
import os
import subprocess
import sys
import time

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.pictures import picture
from jobsheet.stages.solids import Modeller
from tests.benchmarks.test_edit import job_of, mixed_job


def test_forty_stages_and_their_pictures(capsys):
    for name, job in (("holes", job_of(40)), ("mixed", mixed_job(40))):
        reckoner = Reckoner()
        settings = reckoner.reckon(job).settings
        modeller = Modeller()
        began = time.perf_counter()
        for stage in modeller.stages(course_of(job, settings)):
            picture(stage, "iso", 200, 90)
        whole = time.perf_counter() - began
        key = [one.key for _, one in job.operations() if one.kind in ("drill", "slot")][-1]
        began = time.perf_counter()
        edited = SetField(key, "depth", "3 mm").apply(job)
        stages = modeller.stages(course_of(edited, reckoner.reckon(edited).settings))
        picture(stages[-1], "iso", 200, 90)
        edit = time.perf_counter() - began
        with capsys.disabled():
            print(
                f"\nforty stages with pictures, {name}: {whole:.2f} s (at most 1); edit of a late one {edit * 1e3:.0f} ms (at most 60)"
            )
        assert whole <= 1.0
        assert edit <= 0.06


STOPS = """
import json, sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from jobsheet.gui.ink import look
from jobsheet.gui.window import settings
from jobsheet.gui.start import start
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.edit.commands import SetField
from tests.benchmarks.test_edit import mixed_job
from jobsheet.storage.job_writing import save_job
application = QApplication([])
application.setStyle("Fusion")
look.load_fonts()
look.apply(settings.read().scheme, bench=False)
save_job(mixed_job(40), sys.argv[1])
window = start.make_window(open_at_start(sys.argv[1]))
window.resize(1440, 900)
window.show()
began = time.perf_counter()
while time.perf_counter() - began < 3:
    application.processEvents()
# From here on the program is warm: edits, and the longest time that nothing was painted while solids are made.
last, longest = [time.perf_counter()], [0.0]
def tick():
    now = time.perf_counter()
    longest[0] = max(longest[0], now - last[0])
    last[0] = now
timer = QTimer()
timer.setInterval(0)
timer.timeout.connect(tick)
timer.start()
found = []
for index in range(12):
    window.desk.history.type(SetField("edge-a", "depth", f"1.{index + 1:02d}"))
    while not window.parts.solids.waiting:
        application.processEvents()
    longest[0], last[0] = 0.0, time.perf_counter()
    while window.parts.solids.waiting:
        application.processEvents()
    found.append(longest[0] * 1e3)
print(json.dumps(sorted(found)))
"""


def test_the_window_never_stops_for_long_while_solids_are_made(tmp_path, capsys):
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(tmp_path / "home")}
    done = subprocess.run(
        [sys.executable, "-c", STOPS, str(tmp_path / "forty.yaml")],
        check=True, capture_output=True, text=True, env=environment,
    )  # fmt: skip
    found = json.loads(done.stdout.splitlines()[-1])
    with capsys.disabled():
        print(
            f"\nlongest stop of the window while forty solids are made: {found[len(found) // 2]:.0f} ms median, {found[-1]:.0f} ms most (at most 50)"
        )
    assert found[len(found) // 2] <= 50
