"""A workshop's own numbers: the pace of a hand at its bounds, and the pages that are always wanted."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.model.shop import Shop

SHOP = Shop(slowest_pace=8 / 60, fastest_pace=50 / 60)


@pytest.mark.parametrize(
    ("turns", "side"),
    [(8, 0), (50, 0), (7.99, -1), (50.01, 1), (20, 0), (0, -1), (50 * 25.4 / 25.4 * (1 + 1e-12), 0)],
)
def test_a_bound_itself_is_within_reach_of_a_hand(turns, side):
    assert SHOP.out_of_hand(turns / 60) == side


@given(st.floats(0, 100), st.floats(0, 100))
def test_a_quicker_pace_is_never_the_slower_side(one, other):
    slow, fast = sorted((one, other))
    assert SHOP.out_of_hand(slow) <= SHOP.out_of_hand(fast)


def test_only_pages_that_are_wanted_are_printed():
    plain, all_of_them = (
        Shop(),
        Shop(print_route="yes", print_positions="yes", print_step="yes", print_blank="yes"),
    )
    assert plain.prints != all_of_them.prints
    assert (
        Shop(print_whole="no", print_route="yes").prints != Shop(print_whole="yes", print_route="yes").prints
    )
