"""Thresholds of design.md at their edges, and each limit's own words."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import (
    cutting_speed,
    hand_pace,
    quill_push,
    speed_range,
    spindle_power,
    spindle_torque,
)
from jobsheet.limits.register import governing, limits_of
from jobsheet.limits.verdict import NINE_IN_TEN, chance_over, in_words, spread_of, word
from jobsheet.model.figure import EdgeSpeed, Figure, Figures
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.milling_work import pace_problem
from jobsheet.storage.card_files import find_card


class Fields(Struct, frozen=True):
    """A step with nothing but its cutter."""

    cutter: Cutter


def setting(machine: str = "bench-mill-b-1") -> Setting:
    return Setting(machine=find_card(machine), material=find("S235"))


def figures(missing: float | None = None, **values: float) -> Figures:
    return Figures(
        tuple(Figure(name, value, "", "") for name, value in values.items()), missing_speed=missing
    )


@pytest.mark.parametrize(
    ("chance", "expected"),
    [
        (0.0, "expected"),
        (0.0999, "expected"),
        (0.10, "tight"),
        (0.3, "tight"),
        (0.50, "tight"),
        (0.5001, "beyond"),
        (1.0, "beyond"),
    ],
)
def test_words_of_design(chance, expected):
    assert word(chance) == expected


def test_a_chance_is_a_half_where_demand_is_the_capacity():
    assert chance_over(3.0, 3.0, 0.4) == pytest.approx(0.5)
    assert chance_over(0, 3, 0.4) == 0
    assert chance_over(3, 0, 0.4) == 1
    assert chance_over(3.1, 3.0, 0) == 1


def test_a_band_of_nine_in_ten_gives_its_spread_back():
    assert spread_of((math.exp(-0.2 * NINE_IN_TEN), math.exp(0.2 * NINE_IN_TEN))) == pytest.approx(0.2)


@given(st.floats(0.01, 100), st.floats(0.01, 100), st.floats(0.01, 1))
def test_more_demand_is_never_less_likely_to_give_out(demand, capacity, spread):
    assert chance_over(demand * 1.1, capacity, spread) >= chance_over(demand, capacity, spread)
    assert chance_over(demand, capacity * 1.1, spread) <= chance_over(demand, capacity, spread)


def test_chances_in_words():
    assert in_words(1 / 7) == "1 in 7"
    assert in_words(0.001) == "less than 1 in 100"
    assert in_words(0.7) == "more likely than not"


class TestSpindle:
    """B-1 at 560 rpm: continuous 7.60, peak 13.7 N·m (demo scenario section 2)."""

    def limit(self, torque: float):
        return spindle_torque.limit(figures(torque=torque, spindle_speed=560 / 60), setting())

    def test_share_is_of_the_continuous_torque(self):
        assert self.limit(3.8).share == pytest.approx(0.5, abs=0.001)

    def test_above_continuous_and_below_peak_is_at_best_tight(self):
        """With the spread of the card alone 8 of 13.7 N·m would be a chance of 6 %: expected."""
        assert self.limit(7.5).verdict == "expected"
        over = self.limit(8.0)
        assert over.chance < 0.10
        assert over.verdict == "tight"
        assert "short cuts only" in over.sentence

    def test_at_the_peak_it_is_tight_and_above_beyond(self):
        at = setting()
        peak = 7.596 * 1.8
        assert self.limit(peak * 0.99).verdict == "tight"
        assert self.limit(peak * 1.01).verdict == "beyond"
        assert at.machine.spindle.short_peak == 1.8

    def test_power_is_the_same_evidence(self):
        both = figures(torque=8.0, power=8.0 * 2 * math.pi * 560 / 60, spindle_speed=560 / 60)
        power, torque = spindle_power.limit(both, setting()), spindle_torque.limit(both, setting())
        assert power.share == pytest.approx(torque.share)
        assert power.verdict == torque.verdict

    def test_nothing_turns_nothing_is_asked(self):
        assert spindle_torque.limit(figures(torque=2.0), setting()) is None
        assert spindle_power.limit(figures(), setting()) is None


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
    assert hand_pace.limit(found, setting()).verdict == verdict
    # The dial beside it says the same.
    assert bool(pace_problem(found, setting())) == (verdict != "expected")


@pytest.mark.parametrize(
    ("seconds", "median"), [(5, 200), (20, 165), (40, 122), (63.3, 100), (120, 76), (240, 56), (600, 38)]
)
def test_an_arm_keeps_up_less_the_longer_it_pushes(seconds, median):
    """The table of holding-and-more-kinds C1; pecks rest the arm, and their own seconds do not count."""
    one = quill_push.limit(figures(lever_push=10.0, time_each=seconds), setting())
    assert one.capacity == pytest.approx(median, abs=0.6)
    pecked = figures(lever_push=10.0, time_each=3 * seconds + 2 * 3.0, strokes=3.0)
    assert quill_push.limit(pecked, setting()).capacity == pytest.approx(one.capacity)


@pytest.mark.parametrize(("push", "chance"), [(217, 0.61), (178, 0.35), (100, 0.01)])
def test_pushes_of_the_demonstration(push, chance):
    """The same place: 217 N `beyond` 61 %, 178 `tight` 35 %, 100 `expected` 1 %."""
    assert quill_push.limit(figures(lever_push=push), setting()).chance == pytest.approx(chance, abs=0.006)


@pytest.mark.parametrize(
    ("push", "verdict"), [(136.0, "expected"), (136.5, "tight"), (200.0, "tight"), (200.1, "beyond")]
)
def test_quill_push_goes_by_its_band(push, verdict):
    """Median 200 N for seconds, spread 0.30: tight from 136 N (the same place)."""
    assert quill_push.limit(figures(lever_push=push), setting()).verdict == verdict


def test_a_speed_the_machine_has_not_names_those_it_has():
    one = speed_range.limit(figures(missing=700 / 60, spindle_speed=560 / 60), setting())
    assert one.verdict == "beyond"
    assert "560 and 900" in one.sentence


def test_a_cutter_that_needs_less_than_the_slowest_speed():
    """Said once, by the cutting speed: 63 mm at 180 rpm is 35.6 m/min."""
    assert (
        speed_range.limit(figures(wanted_speed=100 / 60, spindle_speed=3.0), setting()).verdict == "expected"
    )
    made = replace(
        figures(spindle_speed=3.0, cutting_speed=35.6 / 60),
        edge=EdgeSpeed(start=21 / 60, top=27.3 / 60, source="", work="mill"),
    )
    one = cutting_speed.limit(made, setting(), Fields(read_cutter("face mill 63 mm, 4 teeth, HSS", "mm")))
    assert one.verdict == "tight"
    assert "the slowest speed of this machine is too fast" in one.sentence


def test_the_nearest_to_giving_out_governs_and_a_speed_alone_does_not():
    found = limits_of(figures(torque=1.0, spindle_speed=560 / 60, power=58.6, lever_push=150.0), setting())
    assert governing(found).name == "quill-push"
    assert [one.name for one in found][-1] == "speed-range"
    assert governing(limits_of(figures(spindle_speed=560 / 60), setting())) is None


def test_a_weaker_machine_never_has_more_capacity():
    for rpm in (180, 320, 560, 900):
        b1 = spindle_torque.limit(figures(torque=1.0, spindle_speed=rpm / 60), setting())
        from msgspec.structs import replace

        card = find_card("bench-mill-b-1")
        weak = replace(card, spindle=replace(card.spindle, power=replace(card.spindle.power, value=300.0)))
        weaker = spindle_torque.limit(
            figures(torque=1.0, spindle_speed=rpm / 60), replace(setting(), machine=weak)
        )
        assert weaker.capacity <= b1.capacity
