"""The work after the steps that were placed: these alone, in this order, and nothing of later set-ups."""

from __future__ import annotations

from jobsheet.lessons.work_so_far import placed_so_far


def test_only_what_was_placed_stands_in_the_order_of_placing(pivot):
    job = pivot.job
    set_up = job.set_ups[1]
    keys = [one.key for one in set_up.operations][::-1][:2]
    found = placed_so_far(job, set_up.key, keys)
    assert [one.key for one in found.set_ups[-1].operations] == keys
    assert found.set_ups[0] == job.set_ups[0]
    assert len(found.set_ups) == 2


def test_nothing_placed_and_what_is_of_no_step_leave_an_empty_set_up(pivot):
    first = pivot.job.set_ups[0].key
    assert placed_so_far(pivot.job, first, ()).set_ups[0].operations == ()
    assert placed_so_far(pivot.job, first, ("no-such",)).set_ups[0].operations == ()
