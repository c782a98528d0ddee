"""Rungs climb from what the chance allows, each as if all below it had been clean."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.reckoning.ladder.ladder_climb import climbed
from jobsheet.reckoning.ladder.ladders import plan

from .ladder_begun import B1


def test_a_sheet_takes_so_many_rungs_and_says_that_more_follow():
    whole = plan("bench-mill-b-1", **B1)
    two = climbed(replace(whole, rungs=(), ends=""), 2)
    assert len(two.rungs) <= 2
    assert [one.size for one in two.rungs] == [one.size for one in whole.rungs[:2]]
    if len(whole.rungs) > 2:
        assert two.ends.startswith("2 rungs fill a sheet")


def test_each_rung_keeps_the_chance_and_the_growth_of_the_ladder():
    """Design, Proving: a tenth may end badly, and each asks at most a quarter more than the last."""
    ladder = plan("bench-mill-b-1", **B1)
    assert all(one.chance <= ladder.chance * (1 + 1e-6) for one in ladder.rungs)
    assert all(one.growth <= ladder.growth * (1 + 1e-6) for one in ladder.rungs)
    assert ladder.rungs[0].growth == 0
