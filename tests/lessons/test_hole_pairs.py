"""Pairs of one hole: marked before it is drilled, drilled before it is tapped or
reamed, smaller drills first.
"""

from __future__ import annotations

from jobsheet.edit.several_steps import MoveSteps
from jobsheet.lessons.hole_pairs import hole_pairs
from jobsheet.storage.job_file import read_job

from .pairs_of import looked_at


def keys(job):
    return {(one.first, one.then) for one in hole_pairs(*looked_at(job))}


def test_spot_drill_and_tap_of_the_plate(hm100):
    """Sequencing rules, section 6."""
    found = keys(hm100)
    assert {("spot", "drill"), ("drill", "tap")} <= found
    assert not {(then, first) for first, then in found} & found, "no pair both ways round"


def test_whatever_order_the_steps_stand_in(hm100):
    set_up = hm100.set_ups[0]
    turned = MoveSteps(("tap",), set_up.key, 0).apply(hm100)
    assert ("spot", "drill") in keys(turned)
    assert keys(turned) == keys(hm100)


def test_drills_rise_to_the_reamer(samples):
    """HM-103: 6, 12 and 15.7 before the reamer of 16 H7."""
    found = keys(read_job(samples / "hm-103-pivot-block.yaml"))
    assert ("bore-15-7", "ream") in found
    assert all(then != "bore-15-7" or first != "ream" for first, then in found)


def test_a_plan_without_holes_has_none(samples):
    job = read_job(samples / "hm-100-drilled-plate-b1.yaml")
    from jobsheet.edit.several_steps import DeleteSteps

    assert keys(DeleteSteps(("spot", "drill", "tap")).apply(job)) == set()
