"""How far below the work each tool may go."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.review.rules.holes import no_deeper_than_the_work


@pytest.mark.parametrize(
    ("deed", "below"),
    [
        # A drill of 10: its point is three tenths long; reamer and tap run out a diameter; 2 mm of room for each.
        ("drill", 5.0), ("plunge", 2.0), ("bore", 2.0), ("spot", 2.0), ("ream", 12.0), ("tap", 12.0), ("countersink", None), ("", None),
    ],
)  # fmt: skip
def test_how_far_below_the_work_a_tool_may_go(deed, below):
    fields = SimpleNamespace(cutter=SimpleNamespace(diameter=0.010))
    step = SimpleNamespace(roles=SimpleNamespace(mills="", hole=deed), fields=fields)
    found = no_deeper_than_the_work._needs(step)
    assert found == (None if below is None else pytest.approx(below * 1e-3))
    bare = SimpleNamespace(roles=step.roles, fields=SimpleNamespace(cutter=None))
    assert no_deeper_than_the_work._needs(bare) is None
    no_size = SimpleNamespace(roles=step.roles, fields=SimpleNamespace(cutter=SimpleNamespace(diameter=None)))
    assert no_deeper_than_the_work._needs(no_size) == (None if below is None else pytest.approx(0.002))


@pytest.mark.parametrize(
    ("mills", "below"), [("groove", 0.002), ("recess", 0.002), ("flat", None), ("wall", None)]
)
def test_what_is_milled_goes_two_millimetres_below(mills, below):
    step = SimpleNamespace(roles=SimpleNamespace(mills=mills, hole=""), fields=SimpleNamespace())
    assert no_deeper_than_the_work._needs(step) == below
