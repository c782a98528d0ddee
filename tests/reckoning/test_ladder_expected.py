"""What a ladder costs and teaches is said before its first cut."""

from __future__ import annotations

import pytest

from jobsheet.model.trials import Asked
from jobsheet.reckoning.ladder.ladder_expected import takes_words, words_of
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.reckoning.ladder.rung import Expected

from .ladder_begun import B1


def test_what_a_ladder_costs_and_teaches_is_said_before_its_first_cut():
    known = plan("bench-mill-b-1", **B1)
    assert known.expected.limit == "chatter"
    # Section 3a: before any trial nine in ten lie between 1.79 and 20.6 about 6.07
    assert known.expected.before == pytest.approx(20.6 / 1.79, rel=0.02)
    assert known.expected.after < known.expected.before / 3
    assert 3 <= known.expected.cuts <= 12
    assert known.expected.minutes > 2 * known.expected.cuts
    assert words_of(known.expected).startswith(f"About {known.expected.cuts} cuts and ")


def said(**more):
    return words_of(
        Expected(**{"limit": "chatter", "cuts": 5, "minutes": 14.0, "before": 12.0, "after": 2.6} | more)
    )


@pytest.mark.parametrize(
    ("minutes", "shown"), [(0.5, 5), (5, 5), (7.4, 5), (7.6, 10), (12.4, 10), (12.6, 15), (58, 60)]
)
def test_minutes_go_by_fives_and_none_is_under_five(minutes, shown):
    assert said(minutes=minutes).startswith(f"About 5 cuts and {shown} minutes.")


def test_what_is_known_now_and_after_it():
    now = "What such cuts may ask is known within a factor of 12 now, nine times in ten"
    assert said() == f"About 5 cuts and 15 minutes. {now}; after them within a factor of 2.6."
    assert said(cuts=1).startswith("One cut and ")
    # Nine tenths of 12 are 10.8: wider it is hardly better.
    assert said(after=10.8).endswith("after them within a factor of 11.")
    assert said(after=10.9).endswith("after them hardly better.")


@pytest.mark.parametrize(("ratio", "shown"), [(9.4, "9.4"), (9.5, "10"), (12.4, "12")])
def test_a_factor_has_a_decimal_until_it_is_ten(ratio, shown):
    """9.5 is 10 in whole numbers (rounded to the even one)."""
    assert f"within a factor of {shown} now" in said(before=ratio, after=1.0)


def test_what_a_cut_takes_of_the_motor():
    asked = (Asked("chatter", 4e6, 0.4), Asked("spindle-torque", 3.0, 0.356))
    assert takes_words("side", asked, "mm") == ("motor 36 %",)
    assert takes_words("drill", asked, "mm") == ("3.00 N·m, motor 36 %",)
    assert takes_words("side", (Asked("spindle-torque", 0.01, 0.001),), "mm") == ("motor 1 %",)
    assert takes_words("side", asked[:1], "mm") == ()
