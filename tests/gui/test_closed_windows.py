"""A window that was closed is gone: its widgets, its pages, its memory."""

import json
import os
import subprocess
import sys

import pytest

#: What twenty visits may leave [MB]: pieces of the heap that are used again, not a window each time.
MOST = 2.0


@pytest.fixture(scope="module")
def left(tmp_path_factory):
    """What is left of each kind of window, after it was opened and closed twenty times."""
    home = tmp_path_factory.mktemp("home")
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.opens_and_closes"],
        env=os.environ | {"JOBSHEET_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def test_every_place_and_the_print_window_were_visited(left):
    assert {"fits", "prove", "capability", "card", "new-card", "cabinet", "print"} <= set(left)


def test_no_widget_and_no_window_is_left(left):
    assert {way: found["widgets"] for way, found in left.items()} == dict.fromkeys(left, 0)
    assert not {way: found["kept"] for way, found in left.items() if found["kept"] > 1}


def test_their_memory_is_used_again(left):
    assert not {way: found["megabytes"] for way, found in left.items() if found["megabytes"] >= MOST}
