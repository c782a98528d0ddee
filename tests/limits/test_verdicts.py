"""Thresholds of design.md at their edges, and each limit's own words."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.limits.each import spindle_torque
from jobsheet.limits.register import governing, limits_of
from jobsheet.limits.verdict import NINE_IN_TEN, chance_over, in_words, spread_of, word
from jobsheet.storage.card_files import find_card

from .one_cut import around, figures


@pytest.mark.parametrize(
    ("chance", "expected"),
    [
        (0.0, "expected"),
        (0.0999, "expected"),
        (0.10, "tight"),
        (0.3, "tight"),
        (0.50, "tight"),
        (0.5001, "beyond"),
        (1.0, "beyond"),
    ],
)
def test_words_of_design(chance, expected):
    assert word(chance) == expected


def test_a_chance_is_a_half_where_demand_is_the_capacity():
    assert chance_over(3.0, 3.0, 0.4) == pytest.approx(0.5)
    assert chance_over(0, 3, 0.4) == 0
    assert chance_over(3, 0, 0.4) == 1
    assert chance_over(3.1, 3.0, 0) == 1


def test_a_band_of_nine_in_ten_gives_its_spread_back():
    assert spread_of((math.exp(-0.2 * NINE_IN_TEN), math.exp(0.2 * NINE_IN_TEN))) == pytest.approx(0.2)


@given(st.floats(0.01, 100), st.floats(0.01, 100), st.floats(0.01, 1))
def test_more_demand_is_never_less_likely_to_give_out(demand, capacity, spread):
    assert chance_over(demand * 1.1, capacity, spread) >= chance_over(demand, capacity, spread)
    assert chance_over(demand, capacity * 1.1, spread) <= chance_over(demand, capacity, spread)


def test_chances_in_words():
    assert in_words(1 / 7) == "1 in 7"
    assert in_words(0.001) == "less than 1 in 100"
    assert in_words(0.7) == "more likely than not"


def test_the_nearest_to_giving_out_governs_and_a_speed_alone_does_not():
    found = limits_of(figures(torque=1.0, spindle_speed=560 / 60, power=58.6, lever_push=150.0), around())
    assert governing(found).name == "quill-push"
    assert [one.name for one in found][-1] == "speed-range"
    assert governing(limits_of(figures(spindle_speed=560 / 60), around())) is None


def test_a_weaker_machine_never_has_more_capacity():
    for rpm in (180, 320, 560, 900):
        b1 = spindle_torque.limit(figures(torque=1.0, spindle_speed=rpm / 60), around())

        card = find_card("bench-mill-b-1")
        weak = replace(card, spindle=replace(card.spindle, power=replace(card.spindle.power, value=300.0)))
        weaker = spindle_torque.limit(
            figures(torque=1.0, spindle_speed=rpm / 60), replace(around(), machine=weak)
        )
        assert weaker.capacity <= b1.capacity
