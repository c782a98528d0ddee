"""A window that was closed is gone: its widgets, its pages, its memory."""

import json
import os
import subprocess
import sys

#: What twenty visits may leave [MB]: pieces of the heap that are used again, not a window each time.
MOST = 2.0


def visited(home):
    """What is left of each kind of window, after it was opened and closed twenty times."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.opens_and_closes"],
        env=os.environ | {"JOBSHEET_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def test_no_widget_no_window_and_no_memory_is_left_of_any(tmp_path):
    left = visited(tmp_path)
    assert {"fits", "prove", "capability", "card", "new-card", "cabinet", "print"} <= set(left)
    assert {way: found["widgets"] for way, found in left.items()} == dict.fromkeys(left, 0)
    # The last one may still be held by whoever handed it over; twenty never are.
    assert not {way: found["kept"] for way, found in left.items() if found["kept"] > 1}
    assert not {way: found["megabytes"] for way, found in left.items() if found["megabytes"] >= MOST}
