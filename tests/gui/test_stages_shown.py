"""Which stages the strip shows, and the three moments of the large drawing in turn."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.window.stages_shown import StagesShown
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture
def shown(qapp):
    desk = Desk(read_job(sample_jobs() / "hm-101-setting-block.yaml"))
    strip, said, asked = SimpleNamespace(moment="after", current=None), [], []
    strip.put = lambda stages, current: setattr(strip, "current", (stages, current))
    hand = SimpleNamespace(desk=desk, set_up=desk.job.set_ups[1], chosen="face-2-finish", say=said.append)
    made = StagesShown(hand, lambda: strip, SimpleNamespace(ask=asked.append))
    made.hand, made.strip, made.said, made.asked = hand, strip, said, asked
    return made


def test_the_stages_around_the_chosen_step_are_shown(shown):
    shown.refresh()
    stages, current = shown.strip.current
    assert current == "face-2-finish"
    assert {"face-2-rough", "face-2-finish"} <= {one.key for one in stages}


def test_on_the_heading_of_a_set_up_its_first_step_is_current(shown):
    shown.hand.chosen = shown.hand.set_up.key
    shown.refresh()
    assert shown.strip.current[1] == shown.hand.set_up.operations[0].key


def test_the_moments_follow_each_other_and_each_is_said(shown):
    moments = []
    for _ in range(4):
        shown.next_moment()
        moments.append(shown.strip.moment)
    assert moments == ["before", "stock", "after", "before"]
    assert len(set(shown.said)) == 3
    assert shown.asked == [shown.strip] * 4
