"""Between centres: one at each end of the work, on its middle, with dog and jack where they are said."""

from __future__ import annotations

import pytest

from jobsheet.holdings.kinds.centres import KIND, rests
from jobsheet.model.held_work import Around

from .bodies_placed import only
from .said_holdings import said

AROUND = Around(size=(0.12, 0.04, 0.04))


def test_both_centres_meet_the_middle_of_the_ends():
    left, right = only(KIND.bodies(said("centres"), AROUND), "tail")
    assert left.high[0] == pytest.approx(0.0)
    assert right.low[0] == pytest.approx(0.12)
    for one in (left, right):
        assert [(one.low[at] + one.high[at]) / 2 for at in (1, 2)] == pytest.approx([0.02, 0.02])


def test_a_jack_stands_under_the_middle():
    assert not only(KIND.bodies(said("centres"), AROUND), "jack")
    (jack,) = only(KIND.bodies(said("centres", jack="yes"), AROUND), "jack")
    assert (jack.low[0] + jack.high[0]) / 2 == pytest.approx(0.06)
    assert jack.high[2] <= 1e-9


def test_what_is_there_is_said_and_no_is_not():
    assert rests(said("centres", dog="yes", jack="yes")) == "dog, jack under the middle"
    assert rests(said("centres", dog="no")) == ""
    assert KIND.plays(said("centres")).turns
