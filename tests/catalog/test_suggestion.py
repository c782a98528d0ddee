"""A suggested value keeps its range and its reasons when it is multiplied."""

from __future__ import annotations

import pytest

from jobsheet.catalog.cuts.suggestion import Suggestion

START = Suggestion(0.5, 0.4, 0.6, "mh31", outside=False, why="turned dry")


def test_a_factor_is_on_value_and_range_alike():
    found = START.times(0.7)
    assert (found.value, found.low, found.high) == pytest.approx((0.35, 0.28, 0.42))
    assert (found.source, found.outside) == ("mh31", False)


def test_reasons_stand_in_the_order_in_which_they_came():
    assert START.times(0.7).why == "turned dry"
    assert START.times(0.7, "a brush").times(0.9, "a deep hole").why == "turned dry; a brush; a deep hole"
    assert Suggestion(1.0, 1.0, 1.0, "", outside=True, why="").times(2, "a brush").why == "a brush"
