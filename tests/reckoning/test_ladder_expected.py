"""What a ladder costs and teaches is said before its first cut."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.ladder.ladder_expected import words_of
from jobsheet.reckoning.ladder.ladders import plan

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
