"""Numbers, look-ups and words of answers read as they did when their answers were looked through."""

from __future__ import annotations

import pytest

from tests.kept_sections import kept, reading
from tests.reckoning.kept_typed import FILE, sections

KEPT, SECTIONS = kept(FILE), sections()


@pytest.mark.parametrize(("heading", "says"), KEPT.items(), ids=KEPT)
def test_it_reads_as_it_was_kept(heading, says):
    assert reading(SECTIONS[heading]) == says


def test_everything_is_kept():
    assert set(KEPT) == set(SECTIONS)
