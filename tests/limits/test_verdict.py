"""What `limits/verdict` makes of demand and capacity: share, chance, band, word, odds, and the
order of what is near to giving out.

The normal distribution beside it is that of the standard library
(`statistics.NormalDist`), which the program does not use.
"""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from jobsheet.limits.verdict import (
    by_chance,
    by_factor,
    chance_over,
    in_words,
    is_tight,
    nearness,
    odds,
    spread_between,
    spread_of,
    word,
)
from jobsheet.model.figure import Limit

NORMAL = NormalDist()


def made(verdict="expected", share=0.3, chance=None):
    return Limit(
        name="x", title="X", demand=1.0, capacity=1.0, unit="N", share=share, verdict=verdict, low=1.0, high=1.0, chance=chance
    )  # fmt: skip


@pytest.mark.parametrize("spread", [0.1, 0.3, 0.743])
@pytest.mark.parametrize(("demand", "capacity"), [(1.0, 3.0), (2.0, 3.0), (3.0, 3.0), (7.0, 3.0)])
def test_the_chance_is_that_of_a_normal_distribution_about_the_middle(demand, capacity, spread):
    outside = NORMAL.cdf(math.log(demand / capacity) / spread)
    assert chance_over(demand, capacity, spread) == pytest.approx(outside, rel=1e-9)


@pytest.mark.parametrize(
    ("demand", "capacity", "spread", "chance"),
    [
        (0.0, 3.0, 0.3, 0.0), (-1.0, 3.0, 0.3, 0.0), (0.0, 0.0, 0.3, 0.0),  # nothing is asked
        (0.5, 3.0, 0.3, NORMAL.cdf(math.log(0.5 / 3) / 0.3)),  # little is asked, not nothing
        (1e-3, 0.0, 0.3, 1.0), (1e-3, -1.0, 0.3, 1.0),  # nothing is there
        (3.0, 0.5, 0.3, NORMAL.cdf(math.log(6) / 0.3)),  # a little is there
        (3.0, 3.0, 0.0, 0.0), (3.0001, 3.0, 0.0, 1.0), (2.9999, 3.0, -1.0, 0.0), (3.0001, 3.0, -1.0, 1.0),  # no band
    ],
)  # fmt: skip
def test_a_chance_where_nothing_is_asked_or_there_or_where_there_is_no_band(demand, capacity, spread, chance):
    assert chance_over(demand, capacity, spread) == pytest.approx(chance, rel=1e-9)


@pytest.mark.parametrize(
    ("band", "spread"),
    [
        ((0.7, 1.3), math.log(1.3 / 0.7) / (2 * NORMAL.inv_cdf(0.95))),
        ((2.0, 2.0), 0.0), ((3.0, 2.0), 0.0), ((0.0, 2.0), 0.0), ((-1.0, 2.0), 0.0),
        ((0.5, 1.5), math.log(3) / (2 * NORMAL.inv_cdf(0.95))),
    ],
)  # fmt: skip
def test_nine_in_ten_lie_within_1_645_spreads_of_the_middle(band, spread):
    assert spread_of(band) == pytest.approx(spread, rel=1e-9)


@pytest.mark.parametrize(
    ("tenth", "middle", "spread"),
    [
        (45.0, 90.0, math.log(2) / -NORMAL.inv_cdf(0.1)),
        (0.5, 0.9, math.log(1.8) / -NORMAL.inv_cdf(0.1)),
        (90.0, 90.0, 0.0), (91.0, 90.0, 0.0), (0.0, 90.0, 0.0), (-1.0, 90.0, 0.0),
    ],
)  # fmt: skip
def test_one_in_ten_at_the_tenth_and_every_other_at_the_middle(tenth, middle, spread):
    found = spread_between(tenth, middle)
    assert found == pytest.approx(spread, rel=1e-9)
    if spread:
        assert chance_over(tenth, middle, found) == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("chance", "share", "expected"),
    [
        (0.0999, 0.0, "expected"), (0.1, 0.0, "tight"), (0.5, 0.0, "tight"), (0.5001, 0.0, "beyond"),
        (0.05, 0.99, "expected"), (0.05, 1.0, "expected"),
        # A share over the whole of the middle is never tight, and never expected
        # (issue of the verdicts): beyond.
        (0.05, 1.001, "beyond"), (0.3, 1.001, "beyond"), (0.3, 1.0, "tight"), (0.6, 0.5, "beyond"),
        # What is over by a rounding of units is not over.
        (0.05, 1 + 1e-12, "expected"), (0.3, 1 + 1e-12, "tight"),
    ],
)  # fmt: skip
def test_what_asks_more_than_the_middle_is_beyond_whatever_the_chance(chance, share, expected):
    assert word(chance, share) == expected


def test_over_the_whole_by_a_rounding_is_the_whole():
    """A part in a thousand million: an inch on one side and a millimetre on
    the other do not part the words.
    """
    assert word(0.3, 1 + 1e-9) == "tight"
    assert (
        by_factor("x", "X", demand=1 + 1e-9, capacity=1.0, unit="N", shown="", tight=0.6).verdict == "tight"
    )
    assert (
        by_factor("x", "X", demand=0.6 + 1e-9, capacity=1.0, unit="N", shown="", tight=0.6).verdict
        == "expected"
    )


def chanced(demand, capacity=200.0, **more):
    return by_chance(
        "quill-push", "Quill push", demand=demand, capacity=capacity, unit="N", spread=0.3, happens=("tires", "tire"),
        shown="words", when_tight="pecks rest it", when_beyond="pilot first", working="one stroke", **more,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("demand", "verdict", "odds_", "sentence"),
    [
        (50.0, "expected", "under 1 in 100", ""),
        (120.0, "expected", "1 in 23 tires", ""),  # Φ(ln 0.6 / 0.3) = Φ(−1.703) = 0.0443
        (180.0, "tight", "1 in 3 tires", "pecks rest it"),  # Φ(−0.351) = 0.363
        (240.0, "beyond", "7 in 10 tire", "pilot first"),  # Φ(0.608) = 0.728
        (400.0, "beyond", "nearly all tire", "pilot first"),  # Φ(2.31) = 0.990
    ],
)
def test_a_limit_with_a_chance_says_all_of_it(demand, verdict, odds_, sentence):
    found = chanced(demand)
    assert (found.verdict, found.odds, found.sentence) == (verdict, odds_, sentence)
    assert (found.name, found.title, found.unit, found.shown, found.working) == ("quill-push", "Quill push", "N", "words", "one stroke")  # fmt: skip
    assert (found.demand, found.capacity, found.share) == (demand, 200.0, pytest.approx(demand / 200))
    assert found.chance == pytest.approx(NORMAL.cdf(math.log(demand / 200) / 0.3))
    # Nine in ten: from the twentieth to the nineteenth twentieth.
    ends = [200 * math.exp(0.3 * NORMAL.inv_cdf(part)) for part in (0.05, 0.95)]
    assert (found.low, found.high) == (pytest.approx(ends[0]), pytest.approx(ends[1]))


def test_a_band_of_the_demand_widens_the_chance_and_not_the_band_of_the_capacity():
    """Spreads that have nothing to do with each other add as squares: 0.3 and 0.4 make 0.5."""
    wide, sharp = chanced(100.0, demand_spread=0.4), chanced(100.0)
    assert wide.chance == pytest.approx(NORMAL.cdf(math.log(0.5) / 0.5))
    assert (wide.low, wide.high) == (sharp.low, sharp.high)


@pytest.mark.parametrize("capacity", [0.0, -1.0])
def test_where_there_is_nothing_any_demand_is_beyond(capacity):
    found = chanced(1.0, capacity)
    assert (found.share, found.verdict, found.chance) == (math.inf, "beyond", 1.0)
    fitted = by_factor("x", "X", demand=1.0, capacity=capacity, unit="N", shown="")
    assert (fitted.share, fitted.verdict) == (math.inf, "beyond")


def test_a_capacity_under_one_is_a_capacity():
    assert chanced(0.25, 0.5).share == pytest.approx(0.5)
    assert by_factor("x", "X", demand=0.25, capacity=0.5, unit="m", shown="").share == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("demand", "tight", "verdict", "sentence"),
    [
        (5.9, 0.6, "expected", ""), (6.0, 0.6, "expected", ""), (6.0 + 1e-9, 0.6, "expected", ""), (6.01, 0.6, "tight", "near"),
        (10.0, 0.6, "tight", "near"), (10 + 1e-9, 0.6, "tight", "near"), (10.01, 0.6, "beyond", "over"),
        (9.99, 1.0, "expected", ""), (10.0, 1.0, "expected", ""), (10.01, 1.0, "beyond", "over"),
    ],
)  # fmt: skip
def test_a_factor_says_all_of_it(demand, tight, verdict, sentence):
    found = by_factor(
        "drill-torsion", "Drill torsion", demand=demand, capacity=10.0, unit="N*m", shown="words", tight=tight,
        when_tight="near", when_beyond="over", working="how",
    )  # fmt: skip
    assert (found.verdict, found.sentence, found.share) == (verdict, sentence, pytest.approx(demand / 10))
    assert (found.name, found.title, found.unit, found.shown, found.working) == ("drill-torsion", "Drill torsion", "N*m", "words", "how")  # fmt: skip
    assert (found.chance, found.odds) == (None, "")
    assert (found.low, found.high) == (pytest.approx(10 * tight), 10.0)


def test_what_only_has_to_fit_is_tight_nowhere_and_a_band_of_its_own_stands():
    fits = by_factor("x", "X", demand=9.9, capacity=10.0, unit="m", shown="", when_tight="near")
    assert (fits.verdict, fits.low, fits.high) == ("expected", 10.0, 10.0)
    own = by_factor("x", "X", demand=1.0, capacity=10.0, unit="m", shown="", band=(3.0, 12.0))
    assert (own.low, own.high) == (3.0, 12.0)


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.0, "under 1 in 100"), (0.0099, "under 1 in 100"), (0.01, "1 in 100 stalls"), (1 / 12, "1 in 12 stalls"),
        (0.5, "1 in 2 stalls"), (0.501, "5 in 10 stall"), (0.7, "7 in 10 stall"), (0.94, "9 in 10 stall"),
        (0.9499, "9 in 10 stall"), (0.95, "nearly all stall"), (1.0, "nearly all stall"),
    ],
)  # fmt: skip
def test_odds_in_words(chance, said):
    assert odds(chance, "stalls", "stall") == said


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.0099, "less than 1 in 100"), (0.01, "1 in 100"), (0.04, "1 in 25"), (0.3, "1 in 3"), (0.5, "1 in 2"),
        (0.5001, "more likely than not"),
    ],
)  # fmt: skip
def test_a_chance_in_words(chance, said):
    assert in_words(chance) == said


def test_the_worse_word_comes_first_and_of_one_word_the_larger_share():
    rising = [
        made("expected", 0.1), made("cut before", 0.9), made("expected", 0.95), made("not tried", 0.05), made("not tried", 2.0),
        made("tight", 0.2), made("tight", 0.4), made("beyond", 0.1), made("beyond", 3.0),
    ]  # fmt: skip
    assert sorted(rising, key=nearness) == rising[::-1]


def test_shares_that_differ_by_a_rounding_of_units_are_one_share():
    assert nearness(made(share=0.3)) == nearness(made(share=0.3 + 2e-7))
    assert nearness(made(share=0.3)) > nearness(made(share=0.3 + 2e-6))


@pytest.mark.parametrize(
    ("verdict", "chance", "tight"),
    [
        ("tight", 0.2, True), ("tight", None, True), ("not tried", 0.2, True), ("expected", 0.05, False), ("expected", None, False),
        ("beyond", 0.9, False),
        # A lucky cut is not planned with; a good one whose chance is small is, and
        # one of which nobody knows the chance.
        ("cut before", 0.0999, False), ("cut before", 0.1, True), ("cut before", 0.3, True), ("cut before", None, False),
    ],
)  # fmt: skip
def test_what_was_lucky_once_is_planned_as_tight(verdict, chance, tight):
    assert is_tight(made(verdict, 0.5, chance)) is tight
