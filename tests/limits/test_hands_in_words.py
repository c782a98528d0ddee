"""What a hand gives, in all that is said of it: pace, lever, crank and wrench (holding-and-more-kinds C1; cutting-data 1.15 and 1.6).

Chances are those of the standard library's normal distribution, which the program does not use.
"""

from __future__ import annotations

import math
from statistics import NormalDist
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.limits.each import hand_pace, quill_push, table_push, wrench
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.machine import Marked
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

NORMAL = NormalDist()
CARD = find_card("bench-mill-b-1")
TWENTIETH = NORMAL.inv_cdf(0.95)


def figures(**values):
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items() if value is not None))


def around(machine=CARD, **own):
    return Setting(machine=machine, material=find("S235"), shop=Shop(**own))


def chance(share, spread):
    return pytest.approx(NORMAL.cdf(math.log(share) / spread), abs=1e-9)


class TestPace:
    """Every other hand jerks at 80 turns a minute and at 5; spread 0.366."""

    def say(self, turns, **own):
        return hand_pace.limit(figures(handle_pace=turns / 60), around(**own))

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
        assert hand_pace.limit(figures(), around()) is None


class TestLever:
    """200 N for seconds, spread 0.30; share(t) = 0.5 (t / 63.3 s)^−0.433, at most 1."""

    @pytest.mark.parametrize(
        ("push", "verdict", "sentence", "odds"),
        [
            (100.0, "expected", "", "1 in 96 tires"),
            (178.0, "tight", "only for seconds: pecks rest the arm, and a pilot hole makes it easy", "1 in 3 tires"),
            (217.0, "beyond", "more than an arm gives: drill a pilot hole first, or feed less a turn", "6 in 10 tire"),
        ],
    )  # fmt: skip
    def test_what_is_said_of_seconds(self, push, verdict, sentence, odds):
        found = quill_push.limit(figures(lever_push=push), around())
        assert (found.verdict, found.sentence, found.odds) == (verdict, sentence, odds)
        assert (found.name, found.title, found.unit, found.shown) == ("quill-push", "Quill push", "N", f"{push:.0f} of 200 N")  # fmt: skip
        assert (found.demand, found.capacity, found.chance) == (push, 200.0, chance(push / 200, 0.3))
        assert found.working == "one stroke lasts 0 s"

    @pytest.mark.parametrize(
        ("seconds", "strokes", "lasts"),
        [
            (10.0, None, 10.0), (10.0, 1.0, 10.0), (10.0, 0.0, 10.0), (60.0, None, 60.0),
            # Between two strokes it clears the chips: 3 s each, which rest the arm.
            (63.0, 2.0, 30.0), (66.0, 3.0, 20.0),
            (3.0, 2.0, 0.0), (2.0, 2.0, 0.0),  # all of it clearing
            (None, None, 0.0), (None, 3.0, 0.0),
        ],
    )  # fmt: skip
    def test_how_long_one_stroke_lasts(self, seconds, strokes, lasts):
        made = figures(lever_push=50.0, time_each=seconds, strokes=strokes)
        assert quill_push.longest_peck(made) == pytest.approx(lasts)
        part = min(1.0, 0.5 * (lasts / 63.3) ** -0.433) if lasts else 1.0
        found = quill_push.limit(made, around())
        assert found.capacity == pytest.approx(200 * part)
        assert found.shown == f"50 of {200 * part:.0f} N"
        assert found.working.startswith(f"one stroke lasts {lasts:.0f} s")
        assert (
            f": {part * 100:.0f} % of a strong push is what an arm keeps up so long" in found.working
        ) is (part < 1)

    @pytest.mark.parametrize("seconds", [0.0, 0.01, 0.5, 5.0, 12.7])
    def test_a_strong_push_counts_whole_to_13_seconds(self, seconds):
        assert quill_push.share_of_strength(seconds) == 1.0
        assert quill_push.limit(figures(lever_push=10.0, time_each=seconds), around()).capacity == 200.0

    @pytest.mark.parametrize(("seconds", "part"), [(21.0, 0.8), (63.3, 0.5), (3600.0, 0.087)])
    def test_the_part_that_is_kept_up(self, seconds, part):
        """Half for 63 s, eight tenths for 21, 8.7 % for an hour (holding-and-more-kinds C1)."""
        assert quill_push.share_of_strength(seconds) == pytest.approx(part, rel=0.01)

    def test_the_workshop_s_own_push(self):
        assert quill_push.limit(figures(lever_push=50.0), around(strong_push=160.0)).capacity == 160.0

    def test_none_where_nothing_is_fed_by_the_lever(self):
        assert quill_push.limit(figures(time_each=5.0), around()) is None


class TestCrank:
    """F s / (2 π η r): stiff from 45 N, stuck over 90; over 15 W for three minutes tiring."""

    def say(self, force, machine=CARD, along=None, **values):
        fields = None if along is None else SimpleNamespace(along=along)
        return table_push.limit(figures(feed_force=force, **values), around(machine), fields)

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
        other = replace(CARD, handles=tuple(replace(one, travel=5e-3) if one.name == "y" else one for one in CARD.handles))  # fmt: skip
        assert self.say(600.0, other, "y").demand == pytest.approx(self.felt(600.0, lead=5e-3))
        for along in (None, "x", ""):
            assert self.say(600.0, other, along).demand == pytest.approx(self.felt(600.0))

    def test_what_the_card_does_not_say(self):
        """No drag counts as none; an efficiency in the middle of 0.2 to 0.4 (cutting-data section 1.15)."""
        assert self.say(600.0, replace(CARD, drag=None)).demand == pytest.approx(self.felt(600.0, drag=0.0))
        blank = replace(CARD, handles=tuple(replace(one, efficiency=None) for one in CARD.handles))
        better = replace(CARD, handles=tuple(replace(one, efficiency=Marked(0.4, "guessed")) for one in CARD.handles))  # fmt: skip
        assert self.say(600.0, blank).demand == pytest.approx(self.felt(600.0))
        assert self.say(600.0, better).demand == pytest.approx(self.felt(600.0, efficiency=0.4))

    def test_none_where_nobody_winds_or_knows_the_crank(self):
        bare = replace(CARD, handles=tuple(replace(one, crank=None) for one in CARD.handles))
        assert self.say(None) is None
        assert self.say(600.0, bare) is None
        assert self.say(600.0, replace(CARD, handles=())) is None

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


class TestWrench:
    """Two hands at 30 and at 60 N: easy and strong (cutting-data section 1.6)."""

    def say(self, torque=2.0, easy=3.0, strong=6.0):
        return wrench.limit(figures(torque=torque, wrench_easy=easy, wrench_strong=strong), around(), None)

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
