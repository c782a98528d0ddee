"""What is read of trials: a chance out of a whole distribution, which record counts, and how it is
told (design, Verdicts and Proving).
"""

from __future__ import annotations

import math
from statistics import NormalDist
from types import SimpleNamespace

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits import evidence
from jobsheet.model.capacity import Capacity, Good, Snapshot
from jobsheet.model.setting import Setting
from jobsheet.storage.card_files import find_card

#: One cut's own noise (design, Proving): standard deviation of the logarithm.
NOISE = 0.12
#: A wide and crooked distribution of ln capacity, cells in their order.
CELLS = (
    (-2.0, 0.05),
    (-0.9, 0.1),
    (-0.3, 0.2),
    (-0.1, 0.15),
    (0.0, 0.1),
    (0.2, 0.25),
    (0.6, 0.1),
    (1.9, 0.05),
)


def capacity(**more):
    asked = {"limit": "chatter", "process": "side", "cutter_kind": "end mill", "low": 0.8, "median": 1.0, "high": 1.25, "cells": CELLS, "spoke": 3}  # fmt: skip
    return Capacity(**{**asked, **more})


def good(**more):
    asked = {"share": 1.0, "date": "2026-11-12", "cutter": "end mill 12 mm, 4 teeth", "stick_out": 0.030, "holding": "vice"}  # fmt: skip
    return Good(**{**asked, **more})


def step(text="end mill 12 mm, 4 teeth, 30 mm out"):
    return SimpleNamespace(cutter=read_cutter(text, "mm"))


@pytest.mark.parametrize("extra", [0.0, 0.35])
@pytest.mark.parametrize("share", [0.05, 0.3, 0.5, 0.75, 0.9, 1.0, 1.2, 1.8, 5.0, 20.0])
def test_a_chance_is_that_of_every_cell_by_its_weight(share, extra):
    """Summed over all cells, with the noise of a cut and the band of the demand as squares; the
    program leaves out what is certain.
    """
    spread = math.sqrt(NOISE**2 + extra**2)
    whole = sum(weight * NormalDist(place, spread).cdf(math.log(share)) for place, weight in CELLS)
    assert evidence.chance_over(capacity(), share, extra) == pytest.approx(whole, abs=5e-5)


@pytest.mark.parametrize(
    ("share", "chance"), [(0.0, 0.0), (-1.0, 0.0), (math.nan, 0.0), (math.inf, 1.0), (1e9, 1.0), (1e-9, 0.0)]
)
def test_a_chance_where_nothing_or_anything_is_asked(share, chance):
    assert evidence.chance_over(capacity(), share) == pytest.approx(chance)


def test_a_chance_is_never_over_one_though_weights_add_up_to_a_little_more():
    assert evidence.chance_over(capacity(cells=((-3.0, 0.6), (-2.0, 0.4001))), 5.0) == 1.0


class TestLearned:
    """Only what a trial said something of."""

    def ask(self, *known, process="side", fields=None, limit="chatter"):
        proof = Snapshot(machine="m", made="2026-11-25", capacities=known, trials=3)
        setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"), proof=proof)
        return evidence.learned(setting, limit, process, fields or step())

    def test_of_this_process_and_kind_before_what_the_machine_alone_gives(self):
        own, alone = capacity(), capacity(process="", cutter_kind="")
        assert self.ask(alone, own) == own
        assert self.ask(alone, own, process="face") == alone
        assert self.ask(alone, own, fields=step("slot drill 12 mm")) == alone
        assert self.ask(alone, own, fields=SimpleNamespace()) == alone
        assert self.ask(own, process="face") is None
        assert self.ask(own, limit="spindle-torque") is None

    def test_not_where_nobody_spoke_or_no_distribution_stands(self):
        assert self.ask(capacity(spoke=0)) is None
        assert self.ask(capacity(spoke=1)) is not None
        assert self.ask(capacity(cells=())) is None

    def test_not_where_nothing_was_asked_yet(self):
        setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"))
        assert evidence.learned(setting, "chatter", "side", step()) is None


def test_the_kind_of_cutter_or_none():
    assert evidence.cutter_kind(step()) == "end mill"
    for fields in (None, SimpleNamespace(), SimpleNamespace(cutter=None), SimpleNamespace(cutter=SimpleNamespace(kind=None))):  # fmt: skip
        assert evidence.cutter_kind(fields) == ""


@pytest.mark.parametrize(
    ("record", "fields", "counts"),
    [
        (good(share=1.0), step(), True),
        (good(share=1.2), step(), True),
        (good(share=0.99991), step(), True),  # as much, but for a rounding
        (good(share=0.999895), step(), False),
        (good(holding=""), step(), False),
        (good(overtaken=True), step(), False),
        (good(), step("end mill 12 mm, 4 teeth, 20 mm out"), True),
        (good(), step("end mill 12 mm, 4 teeth, 33 mm out"), True),  # a tenth more
        (good(), step("end mill 12 mm, 4 teeth, 33.001 mm out"), False),
        (good(), step("end mill 12 mm, 4 teeth"), False),  # nobody knows how far this one is out
        (good(stick_out=None), step(), False),  # nobody wrote how far that one was
        (good(stick_out=None), step("end mill 12 mm, 4 teeth"), True),
        (good(stick_out=None), SimpleNamespace(cutter=None), True),
        (good(stick_out=None), None, True),
    ],
)
def test_which_record_makes_cut_before(record, fields, counts):
    found = evidence.cut_before(capacity(good=(record,)), 1.0, fields)
    assert found == (record if counts else None)


def test_the_newest_record_that_counts_is_named():
    old, new, light = good(date="2026-10-01"), good(date="2026-11-01"), good(date="2026-11-20", share=0.5)
    assert evidence.cut_before(capacity(good=(old, new, light)), 1.0, step()) == new
    assert evidence.cut_before(capacity(good=(old, new, light)), 0.5, step()) == light
    assert evidence.cut_before(capacity(good=()), 0.5, step()) is None


def test_what_the_machine_alone_gives_has_no_record_and_no_dots():
    alone = capacity(process="", good=(good(),), bad=(1.5,))
    assert evidence.cut_before(alone, 0.5, step()) is None
    assert evidence.dots(alone, 2.0) == ()


def test_dots_stand_at_what_each_asked_clean_ones_first():
    known = capacity(good=(good(share=0.5), good(share=0.8)), bad=(1.5,))
    assert evidence.dots(known, 2.0) == ((1.0, True), (1.6, True), (3.0, False))


@pytest.mark.parametrize(
    ("cutter", "said"),
    [
        ("end mill 12 mm, 4 teeth, drawer 1 no. 4", "2026-11-12, end mill 12 mm, drawer 1 no. 4"),
        ("end mill 12 mm, 4 teeth, HSS", "2026-11-12, end mill 12 mm"),
        ("end mill 12 mm, drawer 1 no. 4", "2026-11-12, end mill 12 mm, drawer 1 no. 4"),
        ("drawer 3", "2026-11-12, drawer 3"),
    ],
)
def test_a_trial_is_told_by_date_cutter_and_drawer(cutter, said):
    assert evidence.told(good(cutter=cutter)) == said


def test_the_lightest_cut_that_gave_out_so():
    ends = (good(share=1.6, outcome="chatter"), good(share=1.2, outcome="noisy"), good(share=1.4, outcome="chatter"), good(share=0.4, outcome="slowed"))  # fmt: skip
    assert evidence.first_end(capacity(ends=ends), ("chatter", "noisy")).share == 1.2
    assert evidence.first_end(capacity(ends=ends), ("chatter",)).share == 1.4
    assert evidence.first_end(capacity(ends=ends), ("stalled",)) is None
