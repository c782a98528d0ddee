"""Slips: letters that nobody takes for another, words that tell nothing of the order."""

from __future__ import annotations

from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.lessons.slips import LETTERS


def test_letters_are_none_that_is_taken_for_another():
    assert not set(LETTERS) & set("ijlo")
    assert len(LETTERS) == len(set(LETTERS)) == 22


def test_no_slip_says_where_it_stands(pivot):
    numbers = {str(operation.number) for _, operation in pivot.job.operations()}
    for block in order_exercise(pivot, 3, 1, 1).blocks:
        for slip in block.slips:
            assert not [one for one in numbers if f"step {one}" in slip.words.casefold()]
    # Of two cuts of one face only the one with the size says it: two sizes
    # beside each other would be the order.
    words = [slip.words for block in order_exercise(pivot, 3, 1, 1).blocks for slip in block.slips]
    assert "Rear to 50.0, 0.4 off" in words
    assert "Face 3 off" in words
