"""A job on another card (scenario section 8, stories 4 and 8), and one whose own card was changed."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.errors import NoSuchEntry
from jobsheet.reckoning.answers.fits_answer import card_changed, fits
from jobsheet.storage.job_file import read_job


def steps(found):
    return {one.number: one for one in found.steps}


def test_story_4_the_slide_plate_on_b1(samples):
    """Travel fits, the step for the 9 mm cutter becomes 2300, every dial is redone; the slot
    was not tried, but 12 deep × 0.5 is.

    By the direction of the force a cut so thin asks a quarter of what depth times
    teeth says, under the record of B-1.
    """
    found = fits(read_job(samples / "hm-102-slide-plate.yaml"), "bench-mill-b-1")
    by_number = steps(found)
    assert by_number[90].retyped == "2300 rpm"
    assert by_number[90].after.spindle == "2300 rpm"
    assert found.dials_change
    assert not any(limit.name == "travel" for _, limit in found.beyond)
    assert any(
        limit.name == "chatter" and "begin at" in limit.sentence for limit in by_number[90].after.untried
    )
    assert not by_number[100].after.untried
    # 250 mm/min are 100 turns a minute of 2.5 mm: more than a hand winds.
    assert [limit.name for limit in by_number[10].no_longer] == ["hand-pace"]
    assert not found.fits


def test_story_8_the_drilled_plate_on_b2(hm100):
    """Facing takes 31 % of 3.82 N·m at 560 rpm instead of 16 % of 7.60."""
    found = fits(hm100, "bench-mill-b-2")
    face = steps(found)[20]
    assert face.before.torque_share == pytest.approx(0.16, abs=0.005)
    assert face.after.torque_share == pytest.approx(0.31, abs=0.005)
    assert face.retyped == ""
    assert face.changed
    assert not steps(found)[10].changed
    assert found.fits


def test_on_its_own_card_nothing_changes(hm100):
    found = fits(hm100, hm100.machine)
    assert not any(one.changed for one in found.steps)
    assert not found.dials_change
    assert not found.card_changed
    assert found.fits


def test_a_card_that_was_changed_since_is_said(hm100):
    old = replace(hm100, card_hash="0000000000000000")
    assert card_changed(old)
    assert fits(old, old.machine).card_changed
    assert not card_changed(replace(hm100, card_hash=""))
    # Tried on another machine, the job is planned for that card as it is today.
    assert not card_changed(fits(old, "knee-mill-k-2").other)


def test_a_job_for_a_card_that_is_not_here_can_still_be_tried(hm100):
    found = fits(replace(hm100, machine="gone"), "bench-mill-b-1")
    assert all(one.before is None and one.changed for one in found.steps)
    assert found.fits
    assert not card_changed(replace(hm100, machine="gone"))


def test_a_card_that_is_not_there(hm100):
    with pytest.raises(NoSuchEntry):
        fits(hm100, "no-such")


def test_power_tapping_planned_for_b2_does_not_fit_b1(samples):
    found = fits(read_job(samples / "hm-100-drilled-plate-b2.yaml"), "bench-mill-b-1")
    assert "reverse" in {limit.name for _, limit in found.beyond}
    assert not found.fits
