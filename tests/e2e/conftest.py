"""A real window on a real display, with real keys; skipped where there is no display for it.

`JOBSHEET_TEST_DISPLAY` names an X display with a window manager, such as `:99` of Xvfb with openbox.
"""

import contextlib
import json
import os
import shutil
import subprocess
import sys
import time

import pytest

from tests.e2e import program_that_tells
from tests.e2e.program_that_tells import READY, REMARKS, WHERE, WHERE_ASKED

DISPLAY = os.environ.get("JOBSHEET_TEST_DISPLAY", "")


#: How long a state is waited for [s]: for a machine that does much else at the same time. Waiting
#: costs nothing where the state is there.
PATIENCE = float(os.environ.get("JOBSHEET_TEST_PATIENCE", "90"))
#: What the foot of a window takes [px]: nothing else is pressed there.
FOOT = 30
#: How often it is looked for [s].
LOOK = 0.05


def named(name, wanted):
    """Whether a name is the one that is wanted: the whole of it, or its beginning where that ends in dots."""
    return name.startswith(wanted[:-3]) if wanted.endswith("...") else name == wanted


class Program:
    """The program in a process of its own, driven as a person drives it: look what there is, then press."""

    def __init__(self, home, *args, **env):
        self.home = home
        self.env = {
            **os.environ,
            "DISPLAY": DISPLAY,
            "QT_QPA_PLATFORM": "xcb",
            "JOBSHEET_HOME": str(home),
            "HOME": str(home),
            **env,
        }
        ready = home / READY
        ready.unlink(missing_ok=True)
        self.process = subprocess.Popen(
            [sys.executable, "-m", program_that_tells.__name__, *map(str, args)],
            env=self.env,
            stderr=subprocess.PIPE,
            text=True,
        )
        self.until(ready.exists)
        self.take_keys("job sheet")

    def xdotool(self, *args):
        done = subprocess.run(["xdotool", *args], env=self.env, capture_output=True, text=True, check=False)
        return done.stdout.strip()

    def until(self, ask):
        """Wait until the answer is something; what it is."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            answer = ask()
            if answer:
                return answer
            if self.process.poll() is not None:
                raise AssertionError(f"ended with {self.process.returncode}: {self.process.stderr.read()}")
            time.sleep(LOOK)
        raise AssertionError("it did not happen in time")

    def windows(self, name):
        """The windows of this program whose title has these words; without
        `--all` one of the two would do.
        """
        mine = ("--pid", str(self.process.pid), "--name", name)
        return self.xdotool("search", "--all", "--onlyvisible", *mine).split()

    def take_keys(self, name):
        """Wait until a window with these words in its title is there and has the keyboard."""

        def has_keyboard():
            there = self.windows(name)
            if there and self.xdotool("getwindowfocus") in there:
                return True
            if there:
                self.xdotool("windowactivate", there[-1])
            return False

        self.until(has_keyboard)

    def keys(self, *names):
        """Press keys; the display keeps their order, whatever the program does meanwhile."""
        self.xdotool("key", "--clearmodifiers", *names)

    def type(self, text):
        self.xdotool("type", "--delay", "25", text)

    def journal(self):
        """What the program would bring back if it ended now."""
        texts = []
        for path in (self.home / "journal").glob("*.json"):
            with contextlib.suppress(FileNotFoundError):  # saved meanwhile
                texts.append(path.read_text(encoding="utf-8"))
        return texts

    def keeps(self, text):
        """Wait until what was typed is in the job, which is seen by what the journal holds."""
        self.until(lambda: any(text in kept for kept in self.journal()))

    def remarks(self, rule):
        """Wait until the review says that of the plan."""
        told = self.home / REMARKS
        self.until(lambda: told.exists() and rule in told.read_text(encoding="utf-8").split())

    def seen(self):
        """Name, role, x, y, width and height of all that can be seen now."""
        answer = self.home / WHERE
        answer.unlink(missing_ok=True)
        (self.home / WHERE_ASKED).touch()
        self.until(answer.exists)
        return json.loads(answer.read_text(encoding="utf-8"))

    def place_of(self, name, role="", nth=0):
        """The middle of what is called so; waits until it is there, and turns the
        wheel while it lies below the window.
        """

        def there():
            seen = self.seen()
            found = [one for one in seen if named(one[0], name) and role in one[1]]
            if len(found) <= nth:
                return None
            _, _, x, y, wide, high = found[nth]
            _, _, left, top, across, down = seen[0]  # the window in front, or what has popped up
            if y + high // 2 > top + down - FOOT and role not in ("MenuItem", "Button"):
                self.xdotool("mousemove", str(left + across // 4), str(top + down * 2 // 3), "click", "5")
                return None
            return x + wide // 2, y + high // 2

        return self.until(there)

    def click(self, name, role="", nth=0, button=1, times=1):
        """Press what is called so with the mouse."""
        x, y = self.place_of(name, role, nth)
        self.xdotool(
            "mousemove", str(x), str(y), "click", "--repeat", str(times), "--delay", "60", str(button)
        )

    def kill(self):
        self.process.kill()
        self.process.wait(timeout=PATIENCE)

    def wait(self):
        return self.process.wait(timeout=PATIENCE)


@pytest.fixture
def program(tmp_path):
    if not DISPLAY or not shutil.which("xdotool"):
        pytest.skip("JOBSHEET_TEST_DISPLAY and xdotool are needed")
    started = []

    def start(*args, **env):
        started.append(Program(tmp_path / "home", *args, **env))
        return started[-1]

    (tmp_path / "home").mkdir()
    yield start
    for one in started:
        if one.process.poll() is None:
            one.kill()
        one.process.stderr.close()
