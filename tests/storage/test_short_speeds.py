"""A chart of speeds as one line of numbers, and speeds that are only estimated."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.storage.short_speeds import MOST, numbers, spelt


@pytest.mark.parametrize(
    "text",
    ["200, 350, 600", "600 350 200", "200;350/600", "200rpm 350rpm, 600 rpm"],
)
def test_numbers_rise_however_they_are_written(text):
    assert numbers(text) == ("200", "350", "600")


@pytest.mark.parametrize(("text", "start"), [("200, x", 5), ("200, 0", 5), ("200, 60001", 5), ("-5", 0)])
def test_what_is_no_speed_is_pointed_at(text, start):
    with pytest.raises(QuantityError, match="is no speed") as caught:
        numbers(text)
    assert caught.value.start == start


def test_a_chart_has_some_numbers_and_an_end():
    with pytest.raises(QuantityError, match="Write the numbers"):
        numbers(" , ")
    with pytest.raises(QuantityError, match=f"More than {MOST}"):
        numbers(" ".join(str(number) for number in range(1, MOST + 2)))


@pytest.mark.parametrize(("rpm", "text"), [(1234.0, "1200"), (96.0, "96"), (18.49, "18")])
def test_two_figures_of_an_estimate_count(rpm, text):
    assert spelt(rpm) == text


def test_the_quickest_and_the_most_are_still_taken_and_fractions_sorted_by_size():
    assert numbers("60000, 9.5, 100") == ("9.5", "100", "60000")
    assert len(numbers(" ".join(str(number) for number in range(1, MOST + 1)))) == MOST


def test_what_is_no_speed_is_pointed_at_from_its_first_sign_to_its_last():
    """Also where the same signs stand in a number before it."""
    with pytest.raises(QuantityError) as caught:
        numbers("100, 00")
    assert (caught.value.start, caught.value.end) == (5, 7)
    with pytest.raises(QuantityError) as caught:
        numbers("350 rpm 3x0")
    assert (caught.value.start, caught.value.end) == (8, 11)
