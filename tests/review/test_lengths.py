"""Lengths in remarks and mends: as they would be typed, and as a sentence says them."""

from __future__ import annotations

import pytest

from jobsheet.operations.entry import Entry
from jobsheet.review.plan.lengths import (
    apart,
    edge_speeds,
    fine,
    finest,
    for_tool,
    length,
    place_text,
    rounded,
    typed,
)

DEPTH = Entry(name="depth", title="Depth", asks="length", low="0 mm", high="1 m")


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("value", [0.5e-3, 12.34e-3, 25.4e-3])
def test_what_a_mend_types_is_read_as_that_length(units, value):
    assert DEPTH.read(typed(value, units), units).value == pytest.approx(value, abs=0.006e-3)


def test_in_a_sentence_they_have_the_job_s_unit():
    assert length(25.4e-3, "mm") == "25.4 mm"
    assert length(25.4e-3, "in") == "1 in"
    assert fine(0.0127e-3, "mm") == "0.013 mm"


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


def test_a_tool_s_size_is_a_fraction_in_an_inch_job():
    """As it is sold: by sixteenths, no smaller; an inch is 25.4 mm (BIPM)."""
    assert [for_tool(one, "mm") for one in (6.8e-3, 10e-3)] == ["6.8 mm", "10 mm"]
    found = [for_tool(one * 25.4e-3, "in") for one in (0.375, 0.376, 1.0, 1.25, 0.99999)]
    assert found == ["3/8 in", "7/16 in", "1 in", "1-1/4 in", "1 in"]
    assert [for_tool(25.4e-3 * 5 / 32, "in", part) for part in (32, 16, 8)] == [
        "5/32 in",
        "3/16 in",
        "1/4 in",
    ]


def test_a_place_is_typed_as_the_job_counts():
    assert place_text((0.0404, -0.012), "mm") == "40.4 mm, -12 mm"
    assert place_text((0.0254, -0.0127), "in") == "1 in, -0.5 in"
    # Taken back into metres it is the same place to less than a micrometre.
    assert float(place_text((0.0404, 0), "in").split(" ")[0]) * 0.0254 == pytest.approx(0.0404, abs=0.2e-6)


def test_two_speeds_of_an_edge_share_their_unit():
    """A foot is 0.3048 m: 30.48 m/min are 100 ft/min."""
    assert edge_speeds(0.508, 0.254, "mm") == ("30 m/min", "15")
    assert edge_speeds(0.508, 0.254, "in") == ("100 ft/min", "50")


def test_two_lengths_of_which_one_is_more_never_read_the_same():
    assert apart(37e-6, 15e-6, "mm") == ("0.037 mm", "0.015 mm")
    assert apart(2.81e-6, 2.76e-6, "mm") == ("0.00281 mm", "0.00276 mm")
    # 2.54 µm are a ten-thousandth of an inch.
    assert apart(5.08e-6, 2.54e-6, "in") == ("0.0002 in", "0.0001 in")
    assert apart(2.794e-6, 2.54e-6, "in") == ("0.00011 in", "0.0001 in")
