"""Sheets that ask given set-ups, and answers to them by letters."""

from __future__ import annotations

from jobsheet.lessons.order_exercise import order_exercise


def sheet_with(reckoned, level, *set_ups):
    """The first sheet of seed 37 that asks these set-ups: which one it is hangs on every word of the job."""
    for sheet in range(1, 60):
        found = order_exercise(reckoned, level, 37, sheet)
        if set(set_ups) <= set(found.asked.steps):
            return found
    raise AssertionError(set_ups)


def letters(exercise, *keys):
    known = {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}
    return "".join(known[key] for key in keys)
