"""A step is reckoned when somebody asks for it, and of what it was only that
stands which reads nothing that changed.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.when_asked import Ground, changed
from tests.reckoning.steps import around


def test_nothing_is_reckoned_before_it_is_asked_for(hm100):
    found = Reckoner().reckon(hm100)
    total = len(hm100.operations())
    assert len(found.operations) == total
    waiting = found.operations.open
    assert waiting > 0
    outcome = found.operations["drill"]
    assert found.operations.open == waiting - 1
    assert found.operations["drill"] is outcome
    assert "drill" in found.operations
    assert "no-such" not in found.operations


def test_what_does_not_read_the_change_keeps_its_outcome(hm100):
    reckoner = Reckoner()
    before = reckoner.reckon(hm100)
    was = {key: before.operations[key].figures for key in before.operations}
    after = reckoner.reckon(SetField("drill", "note", "gently").apply(hm100))
    assert all(after.operations[key].figures is was[key] for key in was if key != "drill")


def test_settings_are_told_apart_by_what_is_not_the_same():
    one = around("bench-mill-b-1")
    assert changed(one, one) == frozenset()
    assert changed(one, replace(one, fluid="flood")) == {"fluid"}
    assert changed(one, replace(one, extent=(0.08, 0.04, 0.02))) == {"extent.y"}
    assert changed(one, replace(one, thickness=0.01)) == {"thickness"}


def test_steps_that_find_the_same_share_one_setting():
    ground = Ground(around("bench-mill-b-1"))
    one, other = ground.around((None, 0.0, 0.0, 0.0)), ground.around((None, 0.0, 0.0, 0.0))
    assert one is other
    lower = ground.around((5e-3, 1e-3, 0.0, 0.0))
    assert (lower.pilot, round(lower.thickness, 6)) == (5e-3, 0.019)
