"""How each step of a job went the last time, from the record beside it; asked
when the hand rests, never at an edit.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import JobsheetError

translate = QCoreApplication.translate


class LastRun(Struct, frozen=True):
    """One outcome, and its words: `last: clean 28 Nov`."""

    outcome: str
    words: str


def last_runs(path: Path | None) -> dict[str, LastRun]:
    """By the key of the step; nothing where the record cannot be read, which
    is said where it is written to.
    """
    from jobsheet.reckoning.run_words import day_words
    from jobsheet.storage.records.run_log import read_runs

    if path is None:
        return {}
    try:
        standing = read_runs(path)[0].standing
    except JobsheetError:
        return {}
    words = translate("Rows", "last: {outcome} {day}")
    return {
        entry.key: LastRun(entry.outcome, words.format(outcome=entry.outcome, day=day_words(entry.date)))
        for entry in standing
        if entry.about == "step"
    }
