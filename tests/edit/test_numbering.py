"""Keys and numbers of new steps."""

from __future__ import annotations

import pytest

from jobsheet.edit.numbering import in_words, numbers_between


@pytest.mark.parametrize(
    ("before", "everything", "count", "expected"),
    [
        ([10, 20], [10, 20, 30], 1, (25,)),
        ([10, 20], [10, 20, 30], 2, (23, 26)),
        ([10], [10, 60], 4, (20, 25, 35, 45)),
        ([], [], 2, (10, 20)),
        ([20], [20, 21], 2, (22, 23)),
        ([40], [40], 3, (50, 60, 70)),
    ],
)
def test_numbers_lie_between_the_neighbours(before, everything, count, expected):
    found = numbers_between(before, everything, count)
    assert len(set(found)) == count
    assert not set(found) & set(everything)
    assert list(found) == sorted(found)
    if count > 2:
        assert found[0] > before[-1]
    else:
        assert found == expected


def test_steps_are_named_or_counted():
    assert in_words([30]) == "step 30"
    assert in_words([30, 40]) == "steps 30 and 40"
    assert in_words([10, 20, 30]) == "steps 10, 20 and 30"
    assert in_words(range(10, 60, 10)) == "5 steps"
