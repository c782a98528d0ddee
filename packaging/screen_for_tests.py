"""A screen for the tests that need a real window: Xvfb with a window manager, on Linux."""

import contextlib
import os
import shutil
import subprocess
import time
from collections.abc import Iterator

from setup_environment import SetupError

SIZE = "1600x1200x24"
PATIENCE = 20.0  # seconds, for a machine that is busy


@contextlib.contextmanager
def screen() -> Iterator[str]:
    """Provide a display's name, for as long as the tests run.

    The server chooses a free number itself. The window manager matters: without one no window is the active
    one, and shortcuts go nowhere.
    """
    reading, writing = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(writing), "-screen", "0", SIZE, "-nolisten", "tcp"],
        pass_fds=(writing,),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    os.close(writing)
    manager = None
    try:
        with os.fdopen(reading) as answer:
            number = answer.readline().strip()  # empty when the server ended without one
        if not number:
            raise SetupError("Xvfb did not start, so the tests have no screen: run it by hand to see why.")
        display = f":{number}"
        manager = subprocess.Popen(
            ["openbox", "--sm-disable"],
            env={**os.environ, "DISPLAY": display},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        _wait_for_manager(display)
        yield display
    finally:
        for process in (manager, server):
            if process is not None:
                _end(process)


def _wait_for_manager(display: str) -> None:
    """Wait until a window manager answers for the display: desktops are counted by nobody else."""
    xdotool = shutil.which("xdotool") or "xdotool"
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        asked = subprocess.run(
            [xdotool, "get_num_desktops"],
            env={**os.environ, "DISPLAY": display},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            check=False,
        )
        if asked.returncode == 0:
            return
        time.sleep(0.05)
    raise SetupError("openbox did not start, so the tests have no window manager: run it by hand to see why.")


def _end(process: subprocess.Popen[bytes]) -> None:
    process.terminate()
    try:
        process.wait(timeout=5)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()
