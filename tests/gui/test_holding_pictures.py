"""How the work of a set-up is held, as two pictures; none for a set-up that is gone."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.holding_pictures import HOLD, ZERO, holding_pictures
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


def _desk(name="hm-101-setting-block", **more):
    return Desk(replace(read_job(sample_jobs() / f"{name}.yaml"), **more))


def test_every_set_up_has_one_from_the_side_and_one_from_above(qapp):
    desk = _desk()
    for set_up in desk.job.set_ups:
        side, above = holding_pictures(desk, set_up.key)
        assert (side.width, side.height) == HOLD
        assert (above.width, above.height) == ZERO
        assert side.items
        assert above.items


def test_a_later_set_up_finds_the_work_without_what_was_taken_off(qapp):
    desk = _desk()
    last = desk.job.set_ups[-1].key
    before = holding_pictures(desk, last)
    desk.reckoned = None
    assert holding_pictures(desk, last) != before


@pytest.mark.parametrize("key", ["", "gone"])
def test_a_set_up_that_is_gone_has_none(qapp, key):
    assert holding_pictures(_desk(), key) == ()


def test_without_a_card_the_work_is_drawn_all_the_same(qapp):
    desk = _desk(machine="no such card")
    assert len(holding_pictures(desk, desk.job.set_ups[0].key)) == 2
