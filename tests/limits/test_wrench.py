"""What a hand gives at a tap wrench (cutting-data 1.6)."""

from __future__ import annotations

import math

import pytest

from jobsheet.limits.each import wrench

from .hands_by_chance import NORMAL, chance, with_own
from .one_cut import figures


class TestWrench:
    """Two hands at 30 and at 60 N: easy and strong (cutting-data section 1.6)."""

    def say(self, torque=2.0, easy=3.0, strong=6.0):
        return wrench.limit(figures(torque=torque, wrench_easy=easy, wrench_strong=strong), with_own(), None)

    @pytest.mark.parametrize(
        ("torque", "verdict", "sentence"),
        [
            (2.9, "expected", ""), (3.1, "tight", "more than is comfortable: a longer wrench, or a larger hole"),
            (6.1, "beyond", "more than two hands give: a longer wrench, or a larger hole"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, torque, verdict, sentence):
        found = self.say(torque)
        assert (found.verdict, found.sentence) == (verdict, sentence)
        assert (found.name, found.title, found.unit) == ("wrench", "Tap wrench", "N*m")
        assert (found.demand, found.capacity, found.shown) == (torque, 6.0, f"{torque:.2f} of 6.0 N·m")
        assert found.chance == chance(torque / 6, math.log(2) / -NORMAL.inv_cdf(0.1))

    def test_hands_tire(self):
        """4.2 of 6: Φ(ln 0.7 / 0.541) = Φ(−0.659) = 0.255; 6.6: Φ(0.176) = 0.570."""
        assert (self.say(4.2).odds, self.say(6.6).odds) == ("1 in 4 tires", "6 in 10 tire")

    @pytest.mark.parametrize("left_out", ["torque", "easy", "strong"])
    def test_none_where_one_of_the_three_is_not_known(self, left_out):
        assert self.say(**{left_out: None}) is None
