"""The thresholds of design.md "Verdicts" at their edges: 10 %, 50 %, continuous
and peak, and where a factor says it.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.metals.materials import find
from jobsheet.limits.each import (
    cutter_bending,
    holding,
    quill_push,
    spindle_power,
    spindle_torque,
    table_push,
    torsion,
    wall_error,
    wrench,
)
from jobsheet.limits.verdict import BEYOND, DOUBTFUL, TIGHT, by_factor, chance_over, word
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.quantity import Size
from jobsheet.model.setting import Grip, Setting
from jobsheet.storage.card_files import find_card

A_HAIR = 1e-6
#: A chance of 10 % lies so many standard deviations below a half (tables of the normal distribution).
TENTH = 1.2815515655446004


def around(machine="bench-mill-b-1", **more):
    return Setting(machine=find_card(machine), material=find("S235"), **more)


def figures(**values):
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items()))


@given(st.floats(0.1, 1000), st.floats(0.01, 1))
def test_a_tenth_and_a_half_lie_where_the_normal_distribution_has_them(capacity, spread):
    tenth = capacity * math.exp(-TENTH * spread)
    assert chance_over(tenth, capacity, spread) == pytest.approx(TIGHT)
    assert chance_over(capacity, capacity, spread) == pytest.approx(BEYOND)
    assert word(chance_over(tenth * (1 - A_HAIR), capacity, spread)) == "expected"
    assert word(chance_over(tenth * (1 + A_HAIR), capacity, spread)) == "tight"
    assert word(chance_over(capacity * (1 - A_HAIR), capacity, spread)) == "tight"
    assert word(chance_over(capacity * (1 + A_HAIR), capacity, spread)) == "beyond"


class TestSpindle:
    """B-1: at 180 rpm the belt caps both at 15 N·m; at 560 rpm it holds 7.60 and
    reaches 13.7 (scenario section 2).
    """

    def say(self, torque, rpm):
        speed = rpm / 60
        found = figures(torque=torque, power=torque * 2 * math.pi * speed, spindle_speed=speed)
        one, other = spindle_torque.limit(found, around()), spindle_power.limit(found, around())
        assert (one.verdict, one.chance) == (other.verdict, pytest.approx(other.chance))
        return one

    def test_where_the_belt_slips_the_chance_alone_says_it(self):
        """sd 0.35 of the card (scenario section 3a): a tenth at 15 e^(−1.2816 × 0.35) = 9.58 N·m."""
        at = at_speed(find_card("bench-mill-b-1"), 3.0)
        assert at.continuous == at.peak == pytest.approx(15.0)
        tenth = 15.0 * math.exp(-TENTH * 0.35)
        assert tenth == pytest.approx(9.58, abs=0.005)
        assert self.say(tenth * (1 - A_HAIR), 180).verdict == "expected"
        assert self.say(tenth * (1 + A_HAIR), 180).verdict == "tight"
        assert self.say(15.0 * (1 - A_HAIR), 180).verdict == "tight"
        assert self.say(15.0 * (1 + A_HAIR), 180).verdict == "beyond"

    def test_above_continuous_it_is_at_best_tight(self):
        """A tenth of 13.7 is 8.73 N·m, above the 7.60 that it holds: there it is the
        time, not the chance, that says tight.
        """
        at = at_speed(find_card("bench-mill-b-1"), 560 / 60)
        assert at.continuous < at.peak * math.exp(-TENTH * 0.35)
        assert self.say(at.continuous * (1 - A_HAIR), 560).verdict == "expected"
        over = self.say(at.continuous * (1 + A_HAIR), 560)
        assert (over.verdict, over.sentence) == ("tight", "more than it holds for long: short cuts only")
        assert over.chance < TIGHT

    def test_at_the_peak_it_is_tight_and_above_it_beyond(self):
        peak = at_speed(find_card("bench-mill-b-1"), 560 / 60).peak
        assert self.say(peak * (1 - A_HAIR), 560).verdict == "tight"
        assert self.say(peak * (1 + A_HAIR), 560).verdict == "beyond"

    def test_a_wide_band_of_the_calculation_widens_the_chance(self):
        """−25 %/+35 % (design): the same median is less sure, so a tenth comes sooner."""
        sharp, wide = (
            Figures((Figure("torque", 9.5, "", "", low=low, high=high), Figure("spindle_speed", 3.0, "", "")))
            for low, high in ((None, None), (9.5 * 0.75, 9.5 * 1.35))
        )
        assert spindle_torque.limit(sharp, around()).verdict == "expected"
        assert spindle_torque.limit(wide, around()).verdict == "tight"


@pytest.mark.parametrize(
    ("share", "tight", "verdict"),
    [
        (0.5, 0.5, "expected"), (0.5 + A_HAIR, 0.5, "tight"), (1.0, 0.5, "tight"), (1 + A_HAIR, 0.5, "beyond"),
        (1.0, 1.0, "expected"), (1 + A_HAIR, 1.0, "beyond"), (0.0, 0.5, "expected"),
    ],
)  # fmt: skip
def test_a_factor_s_own_thresholds_belong_to_the_better_word(share, tight, verdict):
    """Up to a workshop's number is within it; a chance of 10 % is not under 10 %,
    so there the edge is the worse word.
    """
    found = by_factor("x", "X", demand=share * 7, capacity=7.0, unit="N", shown="", tight=tight)
    assert found.verdict == verdict


def edges(limit, low, high, verdicts=("expected", "tight", "beyond")):
    """The word just below and just above the two values where it changes."""
    for value, below, above in ((low, *verdicts[:2]), (high, *verdicts[1:])):
        assert limit(value * (1 - A_HAIR)).verdict == below, value
        assert limit(value * (1 + A_HAIR)).verdict == above, value


def test_quill_push_at_its_tenth_and_its_middle():
    """200 N for seconds, spread 0.30 (holding-and-more-kinds C1): a tenth at 136 N."""
    tenth = 200 * math.exp(-TENTH * 0.30)
    assert tenth == pytest.approx(136, abs=0.2)
    edges(lambda push: quill_push.limit(figures(lever_push=push), around()), tenth, 200)


def test_crank_at_45_and_90_newtons():
    """Cutting-data 1.15, backwards: F = P 2 π η r / s less the drag of the slides."""
    card = find_card("bench-mill-b-1")
    handle, drag = card.handle("x"), card.drag.value if card.drag else 0.0
    efficiency = handle.efficiency.value if handle.efficiency else table_push.USUAL_EFFICIENCY

    def limit(crank):
        force = crank * 2 * math.pi * efficiency * handle.crank / handle.travel - drag
        return table_push.limit(figures(feed_force=force), around(), None)

    edges(limit, 45, 90)


def test_grip_at_six_tenths_of_what_holds_and_at_all_of_it():
    """2.5 × the pull against 2 μ F, by a factor (design, Verdicts): enough to 0.6,
    doubtful to 1, not enough over it.
    """
    grip = Grip(kind="vice", force=1000 / 0.24, low=1.0, high=1.0, friction=0.12)
    setting = around(grip=grip)

    def limit(wanted):
        return holding.limit(figures(in_plane_peak=wanted / 2.5, lift=0.0), setting, None)

    edges(limit, 600, 1000)
    assert limit(590).sentence == "grip enough"
    assert limit(900).sentence.startswith("grip doubtful")
    assert limit(900).chance is None


def test_hands_at_a_wrench():
    def limit(torque):
        return wrench.limit(figures(torque=torque, wrench_easy=5.4, wrench_strong=10.8), around(), None)

    edges(limit, 5.4, 10.8)


def test_a_drill_from_six_tenths_of_its_strength_on():
    def limit(torque):
        return torsion.limit(figures(torque=torque, drill_strength=4.0), around(), None)

    assert DOUBTFUL == 0.6  # estimate, cutting-data section 1.6
    edges(limit, 4.0 * 0.6, 4.0)


def test_a_wall_at_half_of_its_tolerance():
    """±0.1 allows 0.1 either way: tight from a half of that."""
    from types import SimpleNamespace

    fields = SimpleNamespace(measure=Size(10e-3, 9.9e-3, 10.1e-3, "10 ±0.1"))
    edges(lambda error: wall_error.limit(figures(wall_error=error), around(), fields), 0.05e-3, 0.1e-3)
    edges(lambda error: wall_error.limit(figures(wall_error=-error), around(), fields), 0.05e-3, 0.1e-3)


def test_a_cutter_at_six_tenths_and_all_of_a_third_of_its_rupture():
    """3000 MPa of HSS with a factor of 3 (cutting-data section 1.7); the figure
    beside it says the same share.
    """
    from types import SimpleNamespace

    from jobsheet.catalog.tools.cutters import read_cutter
    from jobsheet.cutting.strength import HSS_RUPTURE

    fields = SimpleNamespace(cutter=read_cutter("end mill 12 mm, 4 teeth, 30 mm out", "mm"))
    edges(
        lambda stress: cutter_bending.limit(figures(bending_stress=stress), around(), fields),
        HSS_RUPTURE / 3 * 0.6,
        HSS_RUPTURE / 3,
    )
