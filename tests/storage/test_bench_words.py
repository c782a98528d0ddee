"""What the words of an old bench step do, and measure with."""

from __future__ import annotations

import pytest

from jobsheet.storage.words.bench_words import deeds, holding_changed, instrument


@pytest.mark.parametrize(
    ("words", "facts"),
    [
        ("Screw through the four holes, one at a time; then take the straps off", {"removes": "straps", "stays": "screws", "one at a time": "yes"}),
        ("Take the straps off, then screw through the holes", {"removes": "straps", "stays": "screws", "one at a time": "no"}),
        ("Take all the straps off", {"removes": "straps"}),
        ("Move the clamps out of the path, one at a time", {"removes": "straps", "stays": "straps", "one at a time": "yes"}),
        ("Wipe the table", {}),
    ],
)  # fmt: skip
def test_what_comes_off_and_what_goes_on_holding(words, facts):
    assert holding_changed(words) == facts


@pytest.mark.parametrize(
    ("words", "deed"),
    [
        ("Stamp the number on the top", "mark"),
        ("Mark out the holes", "mark out"),
        ("Tilt the head to 45°", "tilt head"),
        ("Raise the head for the drill", "move head"),
        ("Let it rest overnight", "cool"),
        ("Saw off 26 mm at the rear", "saw"),
        ("Check the vice with an indicator", "check vice"),
        ("Break all edges 0.3", "deburr"),
    ],
)
def test_a_deed_is_known_by_its_words(words, deed):
    assert deed in deeds(words)


def test_a_face_with_sawn_ends_is_not_sawn():
    assert "saw" not in deeds("Deburr the sawn ends")


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Measure the slot, gauge 10.00/10.05", "gap gauge"),
        ("Go and no-go gauge", "plug gauge"),
        ("micrometer 25-50", "micrometer"),
        ("callipers, file", "calliper"),
        ("file", ""),
    ],
)
def test_an_instrument_is_known_by_its_words(words, name):
    assert instrument(words) == name
