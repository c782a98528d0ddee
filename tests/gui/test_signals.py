"""A signal to end the program: everything is written, then it ends with the number that shells know."""

from __future__ import annotations

import os
import signal
import subprocess
import sys

import pytest

PROGRAM = """
import os, sys
from PySide6.QtCore import QCoreApplication, QTimer
from jobsheet.gui.start import signals
app = QCoreApplication([])
signals.write_all = lambda: print("written", flush=True)
signals.hear_signals(app)
QTimer.singleShot(0, lambda: os.kill(os.getpid(), int(sys.argv[1])))
QTimer.singleShot(20_000, lambda: os._exit(1))
code = app.exec()
print("ended", flush=True)
sys.exit(code)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="there are no such signals")
@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
def test_everything_is_written_and_the_exit_code_is_128_and_the_number(name):
    number = getattr(signal, name)
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, str(int(number))],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ},
        timeout=60,
    )
    assert done.stdout.split() == ["written", "ended"]
    assert done.returncode == 128 + number
