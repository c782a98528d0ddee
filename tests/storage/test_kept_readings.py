"""Spoilt files of every kind are read as they were when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.storage.kept_readings import files, reading

FILES = files()
#: So many files are read by one test.
TOGETHER = 15
PARTS = [FILES[first : first + TOGETHER] for first in range(0, len(FILES), TOGETHER)]


@pytest.mark.parametrize("part", PARTS, ids=range(len(PARTS)))
def test_a_spoilt_file_reads_as_it_was_kept(part):
    for asked in part:
        assert reading(asked) == (asked["says"] or []), asked["changes"]
