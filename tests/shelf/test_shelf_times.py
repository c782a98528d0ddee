"""Planned and real minutes from the index alone."""

from __future__ import annotations

import shutil

from jobsheet.shelf.shelf_times import times_kept, times_on


def test_a_shelf_that_was_never_read_and_one_without_runs_have_none(shelf, index, tmp_path):
    assert times_kept(tmp_path / "never") == ()
    assert times_on(index) == times_kept(shelf) == ()


def test_minutes_are_those_that_stand_in_the_index_also_when_the_shelf_is_away(shelf, index):
    index.database.execute("drop table if exists times_of_a_test")
    columns = [row[1] for row in index.database.execute("pragma table_info(times)")]
    values = {
        "id": "r1",
        "date": "2026-11-02",
        "set_up": 20.0,
        "milling": 30.0,
        "holes": 5.0,
        "hand": 2.0,
        "setting_up": 25.0,
        "cutting": 40.0,
    }
    index.database.execute(
        f"insert into times ({', '.join(columns)}) values ({', '.join('?' * len(columns))})",
        [values.get(name, 1) for name in columns],
    )
    index.database.commit()
    (found,) = times_on(index)
    assert (found.set_up, found.milling, found.cutting) == (20.0, 30.0, 40.0)
    shutil.rmtree(shelf)
    assert times_kept(shelf) == (found,)
