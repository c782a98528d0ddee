"""A real window on a real display, with real keys; skipped where there is no display for it.

`JOBSHEET_TEST_DISPLAY` names an X display with a window manager, such as `:99` of Xvfb with openbox.
"""

import os
import shutil
import subprocess
import sys
import time

import pytest

DISPLAY = os.environ.get("JOBSHEET_TEST_DISPLAY", "")


class Program:
    """The program in a process of its own, driven as a person drives it."""

    def __init__(self, home, *args):
        self.env = {
            **os.environ,
            "DISPLAY": DISPLAY,
            "QT_QPA_PLATFORM": "xcb",
            "JOBSHEET_HOME": str(home),
            "HOME": str(home),
        }
        code = "import sys; from jobsheet.gui.start.app import main; sys.exit(main(sys.argv[1] if len(sys.argv) > 1 else None))"
        self.process = subprocess.Popen(
            [sys.executable, "-c", code, *map(str, args)], env=self.env, stderr=subprocess.PIPE, text=True
        )
        self.window = self.until(
            lambda: self.xdotool("search", "--pid", str(self.process.pid), "--name", "job sheet")
        )
        self.xdotool("windowactivate", "--sync", self.window.splitlines()[-1])

    def xdotool(self, *args):
        done = subprocess.run(["xdotool", *args], env=self.env, capture_output=True, text=True, check=False)
        return done.stdout.strip()

    def until(self, ask, seconds=20):
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            answer = ask()
            if answer:
                return answer
            if self.process.poll() is not None:
                raise AssertionError(f"ended with {self.process.returncode}: {self.process.stderr.read()}")
            time.sleep(0.1)
        raise AssertionError("it did not happen in time")

    def keys(self, *names):
        for name in names:
            self.xdotool("key", "--clearmodifiers", name)
            time.sleep(0.06)

    def type(self, text):
        self.xdotool("type", "--delay", "25", text)
        time.sleep(0.2)

    def windows(self, name):
        return self.xdotool("search", "--pid", str(self.process.pid), "--name", name)

    def kill(self):
        self.process.kill()
        self.process.wait(timeout=10)

    def wait(self):
        return self.process.wait(timeout=15)


@pytest.fixture
def program(tmp_path):
    if not DISPLAY or not shutil.which("xdotool"):
        pytest.skip("JOBSHEET_TEST_DISPLAY and xdotool are needed")
    started = []

    def start(*args):
        started.append(Program(tmp_path / "home", *args))
        return started[-1]

    (tmp_path / "home").mkdir()
    yield start
    for one in started:
        if one.process.poll() is None:
            one.kill()
        one.process.stderr.close()
