"""The way in: reads the job first and only then wakes the toolkit, which makes the start quicker."""

from __future__ import annotations

import gc


def main(path: str | None) -> int:
    """Open the window with a job, or with a copy of the sample; the exit code."""
    from jobsheet.gui.start import compiled

    # What a start makes stays: looking through it again and again for what could go
    # takes 9 ms. The first rest does it.
    gc.disable()
    with compiled.used():
        from jobsheet.gui.desk.opening import open_at_start
        from jobsheet.gui.start import last_read

        with last_read.used():
            opened = open_at_start(path)
        from jobsheet.gui.start.unread_sources import leave_unread

        leave_unread()
        from jobsheet.gui.start.start import run
    return run(opened)
