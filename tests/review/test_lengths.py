"""Lengths in remarks and mends: as they would be typed, and as a sentence says them."""

from __future__ import annotations

import pytest

from jobsheet.operations.entry import Entry
from jobsheet.review.plan.lengths import fine, finest, length, millimetres, rounded, typed

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


def test_a_round_figure_is_round_in_inches_too():
    """An inch is 25.4 mm (BIPM): two are 0.0787 in, and nobody means that."""
    assert [rounded(one * 1e-3, "in") for one in (3, 2, 0.5, 0.3, 0.04)] == [
        "0.12 in", "0.08 in", "0.02 in", "0.012 in", "0.0016 in",
    ]  # fmt: skip
    assert [rounded(one * 1e-3, "mm") for one in (3, 0.04)] == ["3 mm", "0.04 mm"]


def test_a_feed_of_finest_keeps_what_is_small():
    assert finest(0.0123e-3, "mm") == "0.0123 mm"
    assert finest(0.0127e-3, "in") == "0.0005 in"


def test_what_is_typed_in_an_inch_job_is_in_inches():
    assert typed(12.7e-3, "in") == "0.5 in"
    assert typed(12.7e-3, "mm") == "12.7"
