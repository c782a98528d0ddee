"""What people type, and what it must mean; factors are the definitions of the units."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.errors import QuantityError
from jobsheet.units.grammar import read
from jobsheet.units.show import plain, shown, significant


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("25 thou", 25 * 25.4e-6),
        ("1/4 in", 6.35e-3),
        ("1-1/4 in", 31.75e-3),
        ("1 1/4 in", 31.75e-3),
        ("1¼ in", 31.75e-3),
        ("½ in", 12.7e-3),
        ("6,35 mm", 6.35e-3),
        ("6.35mm", 6.35e-3),
        ('0.25"', 6.35e-3),
        ("12", 12e-3),
        (".5 in", 12.7e-3),
        ("3 cm", 30e-3),
        ("-2 mm", -2e-3),
        ("−2 mm", -2e-3),
        ("5 µm", 5e-6),
        ("5 um", 5e-6),
    ],
)
def test_a_length_is_read_as_it_is_written(text, metres):
    assert read(text, "length") == pytest.approx(metres, rel=1e-12)


def test_a_bare_number_takes_the_units_of_the_job():
    assert read("0.5", "length", "in") == pytest.approx(12.7e-3)
    assert read("100", "cutting speed", "in") == pytest.approx(100 * 0.3048 / 60)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "Nothing is written"),
        ("wide", "is not a length; write 12 mm or 0.5 in"),
        ("1-1/4 im", "Did you mean 1-1/4 in?"),
        ("1,000 mm", "two ways"),
        ("1.2.3 mm", "more than one decimal mark"),
        ("1/0 in", "divides by zero"),
        ("3 mm mm", "no unit"),
        ("9**9**9 mm", "no unit"),
        ("nan", "not a length"),
        ("inf mm", "not a length"),
        ("1e308 mm", "too large"),
        ("1e400 mm", "too large"),
        ("12 kg", "is a mass, but a length is asked for"),
        ("0.05 mm/tooth", "a feed per tooth, but a length"),
        ("9" * 300, "too long"),
        ("1 5/4 in", "not a mixed number"),
    ],
)
def test_what_cannot_be_read_says_what_to_write(text, says):
    with pytest.raises(QuantityError, match=says.replace("?", r"\?").replace("*", r"\*")):
        read(text, "length")


def test_the_wrong_part_is_known():
    with pytest.raises(QuantityError) as caught:
        read("1-1/4 im", "length")
    assert "1-1/4 im"[caught.value.start : caught.value.end] == "im"


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused_with_a_sentence(text):
    try:
        assert math.isfinite(read(text, "length"))
    except QuantityError:
        return


def test_numbers_are_shown_with_a_real_minus_and_no_negative_zero():
    assert plain(-0.0001, 2) == "0.00"
    assert plain(-1.5, 1) == "−1.5"
    assert significant(0.033861) == "0.0339"
    assert significant(1234.5) == "1234"  # a half goes to the even digit, as Python rounds
    assert shown(0.0016, "length", "mm", 2) == "1.60 mm"
