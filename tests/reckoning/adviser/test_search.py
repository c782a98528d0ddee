"""The search for the best milling cut against its brute-force twin: every speed, feed, width and
count of layers of a made-up world.

In that world a cut has three limits, each a plain product; of all ways there are, the order of preference
(issue "Advice that can be acted on", 1) is taken by plain sorting.
"""

from __future__ import annotations

import math
import random

import pytest

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figure, Figures
from jobsheet.reckoning.adviser import milling_cut
from jobsheet.reckoning.adviser.best_cut import EQUAL, WORTH, chosen, worst_of
from jobsheet.reckoning.adviser.milling_cut import (
    CLEAN,
    _speeds_and_feeds,
    _widths,
    cutting_of,
    ways,
)
from jobsheet.reckoning.what_if import Tried, with_texts
from tests.reckoning.steps import around, step

MM = 1e-3
WORLDS = 24


#: What a line of the depth dial is on each of the machines [mm]: their cards.
LINES = {"bench-mill-b-1": 0.05, "knee-mill-k-2": 0.0254, "bench-mill-b-2": 0.0254}


class World:
    """Force goes with depth × width × feed, bending with depth, chatter with depth × width;
    each is tight from 0.6 of what holds.
    """

    def __init__(self, *holds):
        self.holds = holds
        self.asked = 0

    def shares(self, deep, wide, tooth):
        force, bend, chatter = self.holds
        return deep * wide * tooth / force, deep / bend, deep * wide / chatter

    def tried(self, kind, fields, setting):
        """As the reckoning answers."""
        self.asked += 1
        depth = fields.depth.value
        layers = max(1, -(-depth // (fields.layer.value * (1 + 1e-9)))) if fields.layer is not None else 1
        total = fields.width.value if kind == "side-mill" else setting.extent[1]
        typed = fields.cut if kind == "side-mill" else fields.width
        cuts = max(1, -(-total // (typed.value * (1 + 1e-9)))) if typed is not None else 1
        if total / cuts > fields.cutter.diameter * (1 + 1e-9):
            return Tried(fields=fields, setting=setting, problem="Wider than the cutter.")
        deep, wide, tooth = depth / layers, total / cuts, fields.feed_per_tooth.value
        limits = tuple(
            by_factor(name, name, demand=share, capacity=1.0, unit="", shown="", tight=0.6)
            for name, share in zip(
                ("force", "bending", "chatter"), self.shares(deep, wide, tooth), strict=True
            )
        )
        passes = cuts * layers
        values = {
            "passes": passes, "layers": layers, "width_of_cut": wide, "feed_per_tooth": tooth,
            "cutting_time": passes * 0.06 / (tooth * fields.cutter.teeth * fields.spindle.value),
        }  # fmt: skip
        figures = Figures(tuple(Figure(name, value, "", "") for name, value in values.items()))
        return Tried(fields=fields, setting=setting, figures=figures, limits=limits)


def drawn(seed):
    """A step and a world by seed: some carry all, most something, some nothing."""
    dice = random.Random(seed)
    size = dice.choice((8, 10, 16, 20))
    depth = round(dice.uniform(0.5, 6), 1)
    sort = dice.choice(("side-mill", "side-mill", "face"))
    texts = {
        "cutter": f"end mill {size} mm, {dice.choice((2, 4))} teeth",
        "depth": f"{depth}",
        "feed_per_tooth": "0.05",
    }
    if sort == "side-mill":
        texts["width"] = f"{round(dice.uniform(0.3, 1.6 * size), 1)}"
    setting = around(dice.choice(tuple(LINES)), dice.choice(("S235", "304", "6082-T6")))
    skin = dice.choice((0.0, 0.0, 0.5 * MM))
    cutting = cutting_of(sort, step(sort, **texts).fields, setting, skin)
    deep, wide = dice.uniform(0.3, 8) * MM, dice.uniform(0.1, 1) * size * MM
    world = World(
        deep * wide * dice.uniform(0.02, 0.12) * MM,
        deep * dice.uniform(0.5, 4),
        deep * wide * dice.uniform(0.5, 4),
    )
    if seed % 3 == 0:
        world.holds = tuple(one / (300 if seed % 2 else 40) for one in world.holds)
    return cutting, world


def counted(shares, cutting, deep, wide, tooth):
    """What is wrong with it: over what holds; chips under 0.012 mm and first cuts
    within the skin; at the edge (0.6 to 1).
    """
    first = wide if cutting.kind == "side-mill" else deep
    remarks = (tooth < 0.012e-3 * (1 - 1e-6)) + bool(cutting.skin and first < cutting.skin * (1 - 1e-6))
    beyond = sum(one > 1 + 1e-9 for one in shares)
    return beyond, remarks, sum(0.6 + 1e-9 < one <= 1 + 1e-9 for one in shares)


def every(cutting, world):
    """Every way there is, layers as the lines of the dial allow: burden, passes, seconds, speed, feed."""
    depth, teeth = cutting.depth, cutting.fields.cutter.teeth
    line = LINES[cutting.setting.machine.name] * MM
    thinnest = max(0.1 * MM, cutting.skin if cutting.kind == "face" else 0.0)
    on_lines = {math.ceil(depth / (count * line) - 1e-9) for count in range(1, math.ceil(depth / line) + 1)}
    layers = [one for one in sorted(on_lines) if one == 1 or depth / one >= thinnest * (1 - 1e-9)]
    total = cutting.fields.width.value if cutting.kind == "side-mill" else 0.05
    found = []
    widths = [count for _, count in _widths(cutting)]
    for speed, _, tooth, _ in _speeds_and_feeds(cutting):
        for cuts in widths:
            for each in layers:
                deep, wide = depth / each, total / cuts
                burden = counted(world.shares(deep, wide, tooth), cutting, deep, wide, tooth)
                found.append(
                    (burden, cuts * each, cuts * each * 0.06 / (tooth * teeth * speed), speed, tooth)
                )
    return found


@pytest.fixture(scope="module")
def searched():
    """Every world with what the search offers, what it chooses, and every way."""
    found = []
    with pytest.MonkeyPatch.context() as patch:
        for seed in range(WORLDS):
            cutting, world = drawn(seed)
            patch.setattr(milling_cut, "tried", world.tried)
            offered = list(ways(cutting))
            found.append((cutting, offered, chosen(offered), world.asked, every(cutting, world)))
    return found


def test_the_worlds_are_of_all_sorts(searched):
    burdens = {best.burden for _, _, best, *_ in searched}
    assert CLEAN in burdens
    assert any(one[0] for one in burdens)
    assert any(not one[0] and one[2] for one in burdens)
    assert {best.passes for _, _, best, *_ in searched} > {1, 2, 3}


def test_nothing_that_there_is_is_less_wrong(searched):
    for _, _, best, _, known in searched:
        assert best.burden <= min(one[0] for one in known)


def test_where_something_stays_wrong_it_is_over_by_least(searched):
    for _, offered, best, *_ in searched:
        if best.burden[0]:
            assert worst_of(best.found) <= 1.05 * min(
                worst_of(one.found) for one in offered if one.burden == best.burden
            )


def test_the_fewest_passes_or_such_as_save_a_third_of_the_time(searched):
    for cutting, _, best, _, known in searched:
        if best.burden[0]:
            continue
        same = [one for one in known if one[0] == best.burden]
        fewest = min(one[1] for one in same)
        quickest = min(one[2] for one in same if one[1] == fewest)
        assert best.passes <= fewest + 1 or best.seconds * WORTH < quickest, cutting.fields


def test_of_as_many_passes_the_quickest_and_of_equal_times_the_fastest_speed(searched):
    for _, _, best, _, known in searched:
        if best.burden[0]:
            continue
        same = [one for one in known if one[0] == best.burden and one[1] == best.passes]
        quickest = min(one[2] for one in same)
        assert best.seconds <= quickest * EQUAL * (1 + 1e-6)
        for _, _, seconds, speed, tooth in same:
            if seconds <= quickest * EQUAL * (1 - 1e-6) and seconds >= quickest:
                assert (speed, tooth) <= (best.speed, best.feed) or best.seconds < quickest


def test_each_candidate_is_what_it_says(searched):
    """Its texts are in its fields, its numbers are its figures'."""
    for cutting, offered, *_ in searched:
        for one in offered:
            assert with_texts(cutting.kind, cutting.fields, one.texts, "mm") == one.fields
            deep, wide = cutting.depth / one.found.value("layers"), one.found.value("width_of_cut")
            shares = [each.share for each in one.found.limits]
            assert one.burden == counted(shares, cutting, deep, wide, one.feed)
            assert (one.passes, one.seconds) == (one.found.value("passes"), one.found.value("cutting_time"))
            assert one.speed == pytest.approx(one.fields.spindle.value, rel=0.002)
            assert one.feed == pytest.approx(one.fields.feed_per_tooth.value)


def test_the_best_at_each_speed_is_offered_as_a_rival(searched):
    """Where it goes as well as the best, in no more than a pass more."""
    for _, offered, best, _, known in searched:
        if best.burden != CLEAN:
            continue
        fewest = min((one[1] for one in known if one[0] == CLEAN), default=0)
        for speed in {one[3] for one in known}:
            there = [one for one in known if one[3] == speed and one[0] == CLEAN]
            if there and min(one[1] for one in there) <= fewest + 1:
                assert any(one.speed == speed and one.burden == CLEAN for one in offered)


def test_it_asks_a_small_part_of_them(searched):
    """Halving asks few of all counts of layers; most ways are given up after one or two questions."""
    assert sum(one[3] for one in searched) * 8 < sum(len(one[4]) for one in searched)
