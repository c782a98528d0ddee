"""Lengths in remarks and mends: as they would be typed, and as a sentence says them."""

from __future__ import annotations

import pytest

from jobsheet.operations.entry import Entry
from jobsheet.review.plan.lengths import fine, length, millimetres, typed

DEPTH = Entry(name="depth", title="Depth", asks="length", low="0 mm", high="1 m")


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("value", [0.5e-3, 12.34e-3, 25.4e-3])
def test_what_a_mend_types_is_read_as_that_length(units, value):
    assert DEPTH.read(typed(value, units), units).value == pytest.approx(value, abs=0.006e-3)


def test_in_a_sentence_they_have_the_job_s_unit():
    assert length(25.4e-3, "mm") == "25.4 mm"
    assert length(25.4e-3, "in") == "1 in"
    assert fine(0.0127e-3, "mm") == "0.013 mm"
    assert millimetres(6.8e-3) == "6.8"
