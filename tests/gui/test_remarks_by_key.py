"""Remarks by what they are about: each is found by its step and by its set-up, the worst first."""

from __future__ import annotations

from jobsheet.gui.desk.remarks_by_key import by_key
from jobsheet.model.remark import SEVERITIES, Remark


def _remark(severity, *operations, set_up=""):
    return Remark(
        rule=severity, severity=severity, message="m", why="w", operations=operations, set_up=set_up
    )


def test_the_worst_comes_first_and_a_remark_on_two_steps_is_found_at_both():
    habit, hazard = _remark("habit", "a", "b"), _remark("hazard", "b", set_up="s")
    found = by_key((habit, hazard))
    assert found["a"] == (habit,)
    assert found["b"] == (hazard, habit)
    assert found["s"] == (hazard,)


def test_a_step_that_is_named_twice_has_its_remark_once():
    one = _remark("scrap", "a", "a")
    assert by_key((one,))["a"] == (one,)


def test_no_remarks_are_no_keys_and_every_severity_has_its_place():
    assert by_key(()) == {}
    every = tuple(_remark(one, "a") for one in reversed(SEVERITIES))
    assert [one.severity for one in by_key(every)["a"]] == list(SEVERITIES)
