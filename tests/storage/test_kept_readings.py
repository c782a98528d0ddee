"""Spoilt files of every kind are read as they were when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.storage.kept_readings import files, reading

FILES = files()
#: So many files are read by one test.
TOGETHER = 15


@pytest.mark.parametrize("first", range(0, len(FILES), TOGETHER))
def test_a_spoilt_file_reads_as_it_was_kept(first):
    for asked in FILES[first : first + TOGETHER]:
        assert reading(asked) == (asked["says"] or []), asked["changes"]
