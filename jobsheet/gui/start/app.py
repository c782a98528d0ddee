"""The way in: reads the job first and only then wakes the toolkit, which makes the start quicker."""

from __future__ import annotations


def main(path: str | None) -> int:
    """Open the window with a job, or with a copy of the sample; the exit code."""
    from jobsheet.gui.start import compiled

    with compiled.used():
        from jobsheet.gui.desk.opening import open_at_start

        opened = open_at_start(path)
        from jobsheet.gui.start.start import run
    return run(opened)
