"""Ladders with their finer ones and a year of ordinary jobs, on machines drawn outside
the model. Bounds are the issue's.

Nine in ten hold 87 to 93 % where machines are as assumed and 80 % elsewhere; a plan is over the
truth on at most one machine in twenty; at most 6 % of cuts are over 8 % past it; the middle
machine's nine in ten lie within a factor of 1.6. Short rounds have fewer machines and bounds wider
by three standard errors of that many.
"""

from __future__ import annotations

import math

import pytest

from tests.proving.stories import Cell, ladder_and_finer, wrong_entries_named, year_of_jobs

LIMITS = ("spindle-torque", "chatter")
MANY, FEW, SEED = 2000, 60, 20261129
OTHERWISE = {
    "card says 1.6 of it": Cell(off=1.6), "repeats within 3 %": Cell(noise=0.03), "repeats within 15 %": Cell(noise=0.15),
    "no wrong entries": Cell(wrong=0.0), "one entry in twenty wrong": Cell(wrong=0.05),
}  # fmt: skip


def slack(of: float, machines: int) -> float:
    return 3 * math.sqrt(of * (1 - of) / machines)


@pytest.mark.parametrize("limit", LIMITS)
def test_short_round_of_a_ladder_and_its_finer_one(limit):
    found = ladder_and_finer(limit, Cell(), FEW, SEED)
    assert found.held >= 0.87 - slack(0.87, FEW)
    assert found.planned_over <= 0.05 + slack(0.05, FEW)
    assert found.hard <= 0.06
    assert found.ratio <= 1.7  # 1.45 and 1.56 by the long round
    assert sorted(found.cuts)[FEW // 2] <= 7
    assert sorted(found.cuts)[int(FEW * 0.9)] <= 22 + 4


@pytest.mark.parametrize("limit", LIMITS)
def test_one_wrong_entry_is_named_by_three_heavier_cuts(limit):
    assert wrong_entries_named(limit, 40, SEED) >= 0.80


@pytest.mark.parametrize("limit", LIMITS)
def test_short_round_of_a_year_of_jobs(limit):
    held, above = year_of_jobs(limit, 20, SEED, days=20)
    assert held >= 0.85 - slack(0.85, 20)
    assert above <= 0.10 + slack(0.10, 20)


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_long_round_where_machines_are_as_assumed(limit):
    found = ladder_and_finer(limit, Cell(), MANY, SEED)
    assert 0.87 <= found.held <= 0.93
    assert found.planned_over <= 0.05
    assert found.hard <= 0.06
    assert found.ratio <= 1.6
    assert sorted(found.cuts)[MANY // 2] <= 7
    assert sorted(found.cuts)[int(MANY * 0.9)] <= 22


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
@pytest.mark.parametrize("cell", OTHERWISE)
def test_long_round_where_they_are_otherwise(limit, cell):
    found = ladder_and_finer(limit, OTHERWISE[cell], MANY, SEED)
    assert found.held >= 0.80 - slack(0.80, MANY)
    assert found.planned_over <= 0.05
    assert found.hard <= 0.06


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_long_round_of_the_weak_case(limit):
    """A card or class that says 1.7 times what there is."""
    found = ladder_and_finer(limit, Cell(off=0.6), MANY, SEED)
    assert found.held >= 0.80
    assert found.planned_over <= 0.05


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_long_round_of_a_year_of_jobs(limit):
    held, above = year_of_jobs(limit, 500, SEED)
    assert held >= 0.85
    assert above <= 0.10
