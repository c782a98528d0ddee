"""One writer at a time: a lock that somebody died with blocks nobody, one that is held is said, a
share without locks is written to.
"""

from __future__ import annotations

import os
import time

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage import one_writer as writers
from jobsheet.storage.one_writer import lock_of, one_writer


def test_nothing_is_left_behind(tmp_path):
    with one_writer(tmp_path / "part.yaml"):
        assert lock_of(tmp_path / "part.yaml").exists()
    assert list(tmp_path.iterdir()) == []


def test_a_dead_lock_blocks_nobody(tmp_path):
    lock_of(tmp_path / "part.yaml").write_text("", encoding="utf-8")
    began = time.monotonic()
    with one_writer(tmp_path / "part.yaml"):
        pass
    assert time.monotonic() - began < 0.1


def test_one_that_is_held_is_waited_for_and_then_said(tmp_path, monkeypatch):
    monkeypatch.setattr(writers, "PATIENCE", 0.05)
    with (
        one_writer(tmp_path / "part.yaml"),
        pytest.raises(CannotWrite, match=r"Somebody else is writing part\.yaml"),
        one_writer(tmp_path / "part.yaml"),
    ):
        pass


def test_where_there_are_no_locks_the_file_is_written_all_the_same(tmp_path, monkeypatch):
    fcntl = pytest.importorskip("fcntl")

    def none_here(*_):
        raise OSError(os.strerror(95), 95)

    monkeypatch.setattr(fcntl, "flock", none_here)
    with one_writer(tmp_path / "part.yaml"):
        pass


def test_a_folder_that_is_gone_is_said_by_who_writes(tmp_path):
    with one_writer(tmp_path / "gone" / "part.yaml"):
        pass
