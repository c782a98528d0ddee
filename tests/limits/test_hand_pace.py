"""How fast a hand winds evenly, in all that is said of it (holding-and-more-kinds C1)."""

from __future__ import annotations

import math

import pytest

from jobsheet.limits.each import hand_pace
from jobsheet.operations.shared.milling_work import pace_problem

from .hands_by_chance import NORMAL, chance, with_own
from .one_cut import around, figures

TWENTIETH = NORMAL.inv_cdf(0.95)


class TestPace:
    """Every other hand jerks at 80 turns a minute and at 5; spread 0.366."""

    def say(self, turns, **own):
        return hand_pace.limit(figures(handle_pace=turns / 60), with_own(**own))

    @pytest.mark.parametrize(
        ("turns", "verdict", "sentence", "shown", "odds"),
        [
            (36.0, "expected", "", "36.0 of 80 turns a minute", "1 in 69 jerks"),  # Φ(ln 0.45 / 0.366) = Φ(−2.1817) = 0.01457
            (59.0, "tight", "59 turns a minute is hard to keep even: lower the feed or the speed", "59.0 of 80 turns a minute", "1 in 5 jerks"),
            (89.6, "beyond", "90 turns a minute is faster than a hand winds evenly: lower the feed or the speed", "89.6 of 80 turns a minute", "6 in 10 jerk"),
            (20.2, "expected", "", "20.2 of 80 turns a minute", "under 1 in 100"),
            (19.8, "expected", "", "19.8, at least 5 turns a minute", "under 1 in 100"),  # nearer to the slow end: √(80 × 5) = 20
            (6.25, "tight", "one turn takes 9.6 s: hard to keep even; raise the feed or the speed", "6.2, at least 5 turns a minute", "1 in 4 jerks"),
            (2.5, "beyond", "one turn takes 24.0 s: slower than a hand winds evenly; raise the feed or the speed", "2.5, at least 5 turns a minute", "nearly all jerk"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, turns, verdict, sentence, shown, odds):
        """59 turns: 21 % (holding-and-more-kinds C1)."""
        found = self.say(turns)
        assert (found.verdict, found.sentence, found.shown, found.odds) == (verdict, sentence, shown, odds)
        assert (found.name, found.title, found.unit) == ("hand-pace", "Hand pace", "rev/s")
        fast = turns >= 20
        asked, there = (turns, 80.0) if fast else (5.0, turns)
        assert (found.demand, found.capacity) == (pytest.approx(asked / 60), pytest.approx(there / 60))
        assert found.chance == chance(asked / there, 0.366)
        assert (found.low, found.high) == (
            pytest.approx(there / 60 * math.exp(-0.366 * TWENTIETH)), pytest.approx(there / 60 * math.exp(0.366 * TWENTIETH)),
        )  # fmt: skip
        assert found.working.endswith("common practice, no source")

    def test_a_handle_that_stands_is_wound_by_nobody(self):
        found = self.say(0.0)
        assert (found.verdict, found.share, found.chance) == ("beyond", math.inf, 1.0)
        assert found.sentence.startswith("the handle stands: slower than")

    def test_very_slow_is_still_a_pace(self):
        assert self.say(0.6).sentence.startswith("one turn takes 100.0 s")
        assert self.say(0.6).share == pytest.approx(5 / 0.6)

    def test_the_workshop_s_own_numbers(self):
        """30 and 10 turns a minute: every other at 48 and at 6.25."""
        own = {"fastest_pace": 30 / 60, "slowest_pace": 10 / 60}
        assert self.say(30.0, **own).capacity == pytest.approx(48 / 60)
        assert self.say(7.0, **own).demand == pytest.approx(6.25 / 60)
        lively = {"fastest_pace": 90 / 60, "slowest_pace": 64 / 60}
        assert self.say(20.0, **lively).shown == "20.0, at least 40 turns a minute"

    def test_none_where_no_handle_is_wound(self):
        assert hand_pace.limit(figures(), with_own()) is None


@pytest.mark.parametrize(
    ("turns", "verdict"),
    [
        (8.0, "expected"),
        (8.0 * (1 - 1e-12), "expected"),
        (7.9, "tight"),
        (5.01, "tight"),
        (4.99, "beyond"),
        (50.0, "expected"),
        (50.0 * (1 + 1e-12), "expected"),
        (50.1, "tight"),
        (79.9, "tight"),
        (80.1, "beyond"),
        (20, "expected"),
    ],
)
def test_hand_pace_goes_by_its_band(turns, verdict):
    """Median 80 and 5 turns a minute, spread 0.366 (holding-and-more-kinds C1 with its correction)."""
    found = figures(handle_pace=turns / 60)
    assert hand_pace.limit(found, around()).verdict == verdict
    # The dial beside it says the same.
    assert bool(pace_problem(found, around())) == (verdict != "expected")
