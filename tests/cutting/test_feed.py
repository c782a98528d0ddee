"""Feeds: they turn each other round."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.feed import axial_feed, feed_from_speed, feed_per_tooth, feed_per_turn, table_feed
from jobsheet.errors import CalcError

positive = st.floats(1e-6, 1e3)


@given(positive, st.integers(1, 20), positive)
def test_a_tooth_gives_the_table_and_back(tooth, teeth, speed):
    assert feed_per_tooth(table_feed(tooth, teeth, speed), teeth, speed) == pytest.approx(tooth)


@given(positive, positive)
def test_a_turn_gives_the_quill_and_back(feed, speed):
    assert feed_from_speed(axial_feed(feed, speed), speed) == pytest.approx(feed)


def test_one_tooth_is_one_turn():
    assert feed_per_turn(0.1e-3, 1) == 0.1e-3


@pytest.mark.parametrize("name", ["feed_per_tooth", "teeth", "spindle_speed"])
def test_refuses_nothing(name):
    with pytest.raises(CalcError) as refusal:
        table_feed(**{"feed_per_tooth": 1e-4, "teeth": 4, "spindle_speed": 5.0, name: 0})
    assert refusal.value.name == name
