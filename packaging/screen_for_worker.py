"""A pytest plugin: gives each test process a screen of its own.

Two windows on one screen would take the keyboard from each other. The choice is made on import, which is
before any conftest is read.
"""

import os

ALL = "JOBSHEET_TEST_DISPLAYS"
MINE = "JOBSHEET_TEST_DISPLAY"


def choose(displays: list[str], worker: str) -> str:
    """Choose the screen of a worker: `gw0`, `gw1`, and `gw2` when one of them died and was replaced."""
    number = int(worker.removeprefix("gw")) if worker.startswith("gw") else 0
    return displays[number % len(displays)]


if os.environ.get(ALL):
    os.environ[MINE] = choose(os.environ[ALL].split(), os.environ.get("PYTEST_XDIST_WORKER", ""))
