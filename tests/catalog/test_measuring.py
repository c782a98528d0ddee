"""How a size is measured, in its own line: read piece by piece, refused with the piece, kept as typed."""

from __future__ import annotations

from contextlib import suppress

import pytest

from jobsheet.catalog.tools.measuring import read_measure, suggested
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("40 ±0.03", {"said": "40 ±0.03", "nominal": 0.04}),
        ("11,5 ±0,1, micrometer, before unclamping", {"low": 0.0114, "instrument": "micrometer", "when": "before unclamping"}),
        ("16 H7; plug gauge; go and no-go", {"instrument": "plug gauge", "goes": True, "high": 0.016018}),
        ("10 +0.05/0, at both ends, calliper", {"where": "at both ends", "instrument": "calliper"}),
        ("40 ±0.1, caliper", {"instrument": "calliper"}),
        ("30 H7, bore gauge, between cuts", {"between": True, "instrument": "bore gauge"}),
        ("40 ±0.03, square to B 0.03, place 0.1", {"asks": (("square", 3e-5, "B"), ("place", 1e-4, ""))}),
        ("square 0.05, bench square", {"sized": False, "instrument": "square", "asks": (("square", 5e-5, ""),)}),
    ],
)  # fmt: skip
def test_a_line_says_what_and_how(text, facts):
    """16 H7 is 16 to 16.018 (ISO 286-1)."""
    found = read_measure(text)
    assert found.text == text
    for name, value in facts.items():
        got = getattr(found, name)
        assert got == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize(
    "text",
    ["", "micrometer", "40, micrometre gauge thing", "40 ±0.03, micrometer, caliper", "40 ±, micrometer", "before unclamping", "40, 50"],
)  # fmt: skip
def test_what_cannot_be_read_is_a_sentence(text):
    with pytest.raises(QuantityError):
        read_measure(text)


def test_no_start_of_a_line_breaks_while_it_is_typed():
    line = "11.5 ±0.1, micrometer, at both ends, between cuts, square to B 0.03, before unclamping"
    for end in range(len(line) + 1):
        with suppress(QuantityError):
            assert read_measure(line[:end]).text == line[:end]


@pytest.mark.parametrize(
    ("size", "instrument"),
    [
        ("40", ""),
        ("40 ±0.1", "calliper"),
        ("40 ±0.03", "micrometer"),
        ("40 ±0.005", "indicator over gauge blocks"),
    ],
)
def test_an_instrument_is_suggested_by_the_limits(size, instrument):
    """A gauge reads to a quarter of the limits; a calliper reads 0.02, a micrometer 0.01 (common practice)."""
    assert suggested(read_size(size)) == instrument


@pytest.mark.parametrize(
    ("where", "spread"),
    [
        ("at both ends", True), ("at all four corners", True), ("at four places", True), ("over the length", True), ("at 3 places", True),
        ("across the flats", False), ("from the parallels", False), ("over the bar", False), ("at the middle", False),
    ],
)  # fmt: skip
def test_more_places_than_one_are_a_fact(where, spread):
    assert read_measure(f"20 ±0.05, micrometer, {where}").spread is spread
