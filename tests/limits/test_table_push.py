"""What is felt at a crank, and what an arm keeps up (cutting-data 1.15)."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.limits.each import table_push
from jobsheet.model.machine import Marked

from .hands_by_chance import NORMAL, chance, with_own
from .one_cut import BELTS, figures


class TestCrank:
    """F s / (2 π η r): stiff from 45 N, stuck over 90; over 15 W for three minutes tiring."""

    def say(self, force, machine=BELTS, along=None, **values):
        fields = None if along is None else SimpleNamespace(along=along)
        return table_push.limit(figures(feed_force=force, **values), with_own(machine), fields)

    def felt(self, force, efficiency=0.3, drag=300.0, lead=2.5e-3, radius=55e-3):
        return (force + drag) * lead / (2 * math.pi * efficiency * radius)

    @pytest.mark.parametrize(
        ("force", "verdict", "sentence"),
        [
            (600.0, "expected", ""),
            (2000.0, "tight", "stiff: a lighter cut winds easier"),
            (
                3600.0,
                "beyond",
                "more than an arm winds: look for a locked slide or a dull cutter, or cut lighter",
            ),
        ],
    )
    def test_what_is_said(self, force, verdict, sentence):
        found, crank = self.say(force), self.felt(force)
        assert (found.verdict, found.sentence) == (verdict, sentence)
        assert (found.name, found.title, found.unit) == ("table-push", "Push at the handle", "N")
        assert (found.demand, found.capacity) == (pytest.approx(crank), 90.0)
        assert found.chance == chance(crank / 90, math.log(2) / -NORMAL.inv_cdf(0.1))
        assert found.shown == f"{crank:.0f} of 90 N"
        assert (
            found.working
            == f"(F + drag) s / (2 π η r) = ({force:.0f} + 300) N × 2.5 mm / (2 π × 0.3 × 55 mm)"
        )

    def test_it_tires_one_and_many(self):
        """2000 N: 55.5 of 90 N, spread 0.541: Φ(−0.894) = 0.186; 3600 N: 94.1 N, Φ(0.0825) = 0.533."""
        assert (self.say(2000.0).odds, self.say(3600.0).odds) == ("1 in 5 tires", "5 in 10 tire")

    def test_the_slide_that_is_wound(self):
        """Another screw along y; along x where nothing else is said."""
        other = replace(BELTS, handles=tuple(replace(one, travel=5e-3) if one.name == "y" else one for one in BELTS.handles))  # fmt: skip
        assert self.say(600.0, other, "y").demand == pytest.approx(self.felt(600.0, lead=5e-3))
        for along in (None, "x", ""):
            assert self.say(600.0, other, along).demand == pytest.approx(self.felt(600.0))

    def test_what_the_card_does_not_say(self):
        """No drag counts as none; an efficiency in the middle of 0.2 to 0.4 (cutting-data section 1.15)."""
        assert self.say(600.0, replace(BELTS, drag=None)).demand == pytest.approx(self.felt(600.0, drag=0.0))
        blank = replace(BELTS, handles=tuple(replace(one, efficiency=None) for one in BELTS.handles))
        better = replace(
            BELTS, handles=tuple(replace(one, efficiency=Marked(0.4, "guessed")) for one in BELTS.handles)
        )
        assert self.say(600.0, blank).demand == pytest.approx(self.felt(600.0))
        assert self.say(600.0, better).demand == pytest.approx(self.felt(600.0, efficiency=0.4))

    def test_none_where_nobody_winds_or_knows_the_crank(self):
        bare = replace(BELTS, handles=tuple(replace(one, crank=None) for one in BELTS.handles))
        assert self.say(None) is None
        assert self.say(600.0, bare) is None
        assert self.say(600.0, replace(BELTS, handles=())) is None

    @pytest.mark.parametrize(
        ("pace", "minutes", "verdict"),
        [
            # 30 N at 55 mm: 10.37 J a turn, 15 W at 86.8 turns a minute. Three minutes are kept up.
            (88.0, 3.1, "tight"), (86.0, 3.1, "expected"), (88.0, 3.0, "expected"), (88.0, 60.0, "tight"), (None, 60.0, "expected"),
            (88.0, None, "expected"), (0.0, 60.0, "expected"),
        ],
    )  # fmt: skip
    def test_power_that_an_arm_does_not_keep_up(self, pace, minutes, verdict):
        force = 30 * 2 * math.pi * 0.3 * 55e-3 / 2.5e-3 - 300
        more = {
            "handle_pace": pace / 60 if pace is not None else None,
            "cutting_time": minutes and minutes * 60,
        }
        found = self.say(force, **more)
        assert (found.demand, found.verdict) == (pytest.approx(30), verdict)
        tires = "15 W for more than three minutes tires an arm: rest between passes, or a lighter cut"
        assert found.sentence == (tires if verdict == "tight" else "")

    def test_where_no_pace_is_known_no_power_is(self):
        """44 N at 55 mm would be 15.2 W at a turn a second."""
        force = 44 * 2 * math.pi * 0.3 * 55e-3 / 2.5e-3 - 300
        assert self.say(force, handle_pace=1.0, cutting_time=600.0).verdict == "tight"
        assert self.say(force, cutting_time=600.0).verdict == "expected"

    def test_what_is_stiff_already_keeps_its_own_words(self):
        assert self.say(2000.0, handle_pace=2.0, cutting_time=600.0).sentence.startswith("stiff")
        assert self.say(3600.0, handle_pace=2.0, cutting_time=600.0).verdict == "beyond"
