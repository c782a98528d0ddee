"""The text of a trigger, and slips by their place."""

from __future__ import annotations

import pytest

from jobsheet.review.notes.notes import rows
from jobsheet.review.notes.trigger_text import parsed


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.id)
def test_every_note_of_the_data_can_be_read(row):
    parsed(row.trigger)
    assert row.level in ("stop", "warn", "note")
    assert row.text
    assert row.source
    assert not any(word in row.text.lower().split() for word in ("safe", "approved", "guaranteed"))
    if row.level == "stop":
        assert row.initials
