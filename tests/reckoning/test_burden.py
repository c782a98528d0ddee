"""What is wrong with a cut, counted."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.adviser.burden import HOPELESS, burden_of, not_tried
from jobsheet.reckoning.what_if import Tried
from tests.reckoning.adviser.made_up import limit, outcome
from tests.reckoning.steps import around


class TestBurden:
    def test_it_counts_by_words(self):
        words = ("beyond", "tight", "not tried", "expected", "cut before", "beyond", "beyond")
        assert burden_of(outcome(*(limit(one) for one in words)), 4) == (3, 4, 2)

    @pytest.mark.parametrize(("chance", "at_edge"), [(0.09, 0), (0.1, 1), (0.4, 1), (None, 0)])
    def test_a_lucky_cut_is_at_its_edge(self, chance, at_edge):
        """Cut before, but one in ten gives out (design, Verdicts)."""
        assert burden_of(outcome(limit("cut before", chance=chance)), 0) == (0, 0, at_edge)

    def test_what_cannot_be_reckoned_is_the_worst_of_all(self):
        nothing = Tried(fields=None, setting=around("bench-mill-b-1"), problem="No.")
        assert burden_of(nothing, 0) == HOPELESS
        assert burden_of(outcome(*(limit("beyond") for _ in range(20))), 9) < HOPELESS

    @pytest.mark.parametrize("word", ["cut before", "expected", "not tried", "tight", "beyond"])
    def test_not_tried_is_one_word(self, word):
        assert not_tried(limit(word)) == (word == "not tried")
