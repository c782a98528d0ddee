"""What stands where a new step will be: the step before and what is cut at its places."""

from __future__ import annotations

import pytest

from jobsheet.operations.choosing.standing_here import Here


def test_at_the_front_nothing_stands_before(hm100):
    first = Here(set_up=hm100.set_ups[0], index=0, units="mm")
    assert (first.before, first.role, first.places, first.hole, first.thread) == (None, "", None, None, None)


def test_behind_each_step_stands_that_step(hm100):
    set_up = hm100.set_ups[0]
    for index, operation in enumerate(set_up.operations, 1):
        assert Here(set_up=set_up, index=index, units="mm").before is operation


def test_after_the_drill_its_hole_stands_there_and_the_thread_comes_later(hm100):
    """HM-100 has four holes for M6: drilled 5 before they are tapped."""
    set_up = hm100.set_ups[0]
    at = next(
        index for index, one in enumerate(set_up.operations, 1) if one.kind == "drill" and one.key != "spot"
    )
    here = Here(set_up=set_up, index=at, units="mm")
    assert here.role == "drill"
    assert here.hole == pytest.approx(set_up.operations[at - 1].fields.cutter.diameter)
    assert here.thread.text.strip() == "M6"
    assert here.has("tap")
    assert not here.done("tap")
    assert here.done("drill")
    assert here.holes_in_words == "these 4 holes"


def test_once_all_is_done_the_tap_has_worked_there(hm100):
    set_up = hm100.set_ups[0]
    at = next(index for index, one in enumerate(set_up.operations, 1) if "tap" in one.kind)
    assert Here(set_up=set_up, index=at, units="mm").done("tap")
