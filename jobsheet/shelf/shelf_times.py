"""Planned and real minutes of everything that was made on a shelf, from its index: the
share is not asked, for somebody waits.
"""

from __future__ import annotations

import contextlib
import sqlite3
from pathlib import Path

from jobsheet.reckoning.paces import Timed
from jobsheet.shelf.shelf_index import Index, place_of

_ASKED = "select id, date, set_up, milling, holes, hand, setting_up, cutting from times"


def times_on(index: Index) -> tuple[Timed, ...]:
    """Of an index that is open."""
    return _times(index.database)


def times_kept(shelf: Path) -> tuple[Timed, ...]:
    """As they were when the shelf was read last; nothing where it never was, or the index cannot be asked."""
    place = place_of(shelf)
    if not place.is_file():
        return ()
    try:
        with contextlib.closing(
            sqlite3.connect(f"{place.absolute().as_uri()}?mode=ro", uri=True, timeout=1.0)
        ) as database:
            return _times(database)
    except sqlite3.Error:
        return ()


def _times(database: sqlite3.Connection) -> tuple[Timed, ...]:
    return tuple(
        Timed(id=one, date=date, set_up=set_up, milling=milling, holes=holes, hand=hand, setting_up=setting, cutting=cutting)
        for one, date, set_up, milling, holes, hand, setting, cutting in database.execute(_ASKED)
    )  # fmt: skip
