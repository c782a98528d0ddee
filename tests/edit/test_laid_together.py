"""Two orders laid together: the first stands, and what only the second has
comes behind its neighbour there.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.edit.laid_together import laid_together


def one(*steps):
    return (("s", steps),)


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        ("abc", "abXc", "abXc"),
        ("acb", "abXc", "acbX"),
        ("abc", "Xabc", "Xabc"),
        ("abc", "abcX", "abcX"),
        ("", "ab", "ab"),
        ("abc", "aXYbc", "aXYbc"),
    ],
)
def test_what_is_added_stands_behind_what_it_stood_behind(first, second, expected):
    found = laid_together(one(*first), one(*second), set(first + second), {"s"})
    assert "".join(found[0][1]) == expected


def test_what_is_not_kept_is_in_neither():
    assert laid_together(one(*"abc"), one(*"abXc"), set("acX"), {"s"}) == one(*"aXc")


def test_a_set_up_in_which_a_step_is_kept_stays():
    first = (("s", ("a",)),)
    second = (("s", ("a",)), ("t", ("x",)))
    assert laid_together(first, second, {"a", "x"}, {"s"}) == (("s", ("a",)), ("t", ("x",)))
    assert laid_together(first, second, {"a"}, {"s"}) == (("s", ("a",)),)


@given(st.permutations("abcdef"), st.permutations("defghi"), st.sets(st.sampled_from("abcdefghi")))
def test_each_kept_step_stands_once_and_the_first_order_is_as_it_was(first, second, kept):
    ((_, found),) = laid_together(one(*first), one(*second), kept, {"s"})
    assert sorted(found) == sorted(kept & (set(first) | set(second)))
    assert [step for step in found if step in first] == [step for step in first if step in kept]
