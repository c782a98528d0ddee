"""A pair says why: in the words of its rule, or of a reason that no rule gives."""

from __future__ import annotations

import pytest

from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.reasons import REASONS
from jobsheet.review.engine import rules, title_of


def test_a_rule_s_own_words():
    pair = Pair("drill", "spot", "spot-before-drilling")
    assert pair.title == title_of("spot-before-drilling")
    assert pair.because
    assert not pair.because.startswith("Because")
    assert "\n" not in pair.because
    assert pair.severity in ("hazard", "scrap", "rework", "habit")


@pytest.mark.parametrize("name", REASONS)
def test_a_reason_of_its_own(name):
    pair, reason = Pair("a", "b", name), REASONS[name]
    assert (pair.title, pair.because, pair.source, pair.severity) == (
        reason.title,
        reason.because,
        reason.source,
        reason.severity,
    )
    assert name not in {one.id for one in rules()}, "a reason is for what no rule says"
