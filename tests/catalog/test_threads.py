"""Threads of the tables, and the drill for the height of thread that a workshop wants."""

from __future__ import annotations

from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import read_thread, tap_drill, thread_table


def test_a_workshop_that_wants_lower_threads_drills_larger():
    """The tables' second drill: M6 in 5.2 instead of 5.0, (6 - 5.2) / 1.299 = 62 %."""
    thread = read_thread("M6")
    assert tap_drill(thread) == tap_drill(thread, "75 %") == tap_drill(thread, "60 to 75 %")
    lower = tap_drill(thread, "50 to 65 %")
    assert 0.5 <= (6e-3 - read_drill_size(lower)) / 1.299e-3 <= 0.65
    for row in thread_table().values():
        drill = tap_drill(read_thread(row.name), "50 to 65 %")
        assert 0.48 <= (row.major - read_drill_size(drill)) / (1.299 * row.pitch) <= 0.85, row.name
