"""Numbers as people read them; inches by the definition of 25.4 mm."""

from __future__ import annotations

import pytest

from jobsheet.units.show import both_lengths, plain, shown, significant, trimmed


@pytest.mark.parametrize(
    ("number", "decimals", "text"), [(1.25, 1, "1.2"), (-3.5, 1, "−3.5"), (-0.001, 2, "0.00"), (12, 0, "12")]
)
def test_a_minus_is_a_minus_and_nought_has_none(number, decimals, text):
    assert plain(number, decimals) == text


@pytest.mark.parametrize(
    ("number", "text"), [(12.0, "12"), (12.5, "12.5"), (0.0, "0"), (100.0, "100"), (-0.0001, "0")]
)
def test_noughts_at_the_end_go_and_no_others(number, text):
    assert trimmed(number, 3) == text


@pytest.mark.parametrize(
    ("number", "text"), [(0.03391, "0.0339"), (3.14159, "3.14"), (146.2, "146"), (0, "0"), (98765.4, "98765")]
)
def test_three_digits_that_count(number, text):
    assert significant(number) == text


def test_values_in_their_unit():
    assert shown(0.0127, "length", "in", 3) == "0.500 in"
    assert shown(0.0127, "length", "mm", 1) == "12.7 mm"
    assert shown(3.141592653589793 / 6, "angle", "°", 0) == "30°"
    assert both_lengths(0.0254) == "25.4 mm = 1.0000 in"
