"""What holds the work at a step, as facts, and what came off before it."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.held import (
    Changed,
    backed,
    changed_before,
    does,
    fact,
    holding_roles,
    on_straps,
    size,
    stopped,
    supported,
)

from .views_read import sample


def held(**facts):
    job = sample(100)
    for name, text in facts.items():
        job = SetField("holding:set-up-1", name, text).apply(job)
    return job.set_ups[0]


def test_a_fact_that_is_not_this_kind_s_is_none():
    assert fact(held(), "no_such_fact") is None
    assert size(held(above_jaws="6"), "above_jaws") == 6e-3
    assert holding_roles(held()).jaws
    assert not on_straps(held())


def test_what_lies_under_and_stands_behind():
    assert backed(held(rests_on="backing"))
    assert not backed(held(rests_on="bed"))
    assert supported(held(supported_by="jack"))
    assert not supported(held())
    assert not stopped(held())


def test_what_comes_off_counts_for_later_steps_alone(hm100):
    job = SetField("finish", "does", "change holding").apply(hm100)
    job = SetField("finish", "removes", "parallels").apply(job)
    set_up = job.find("finish")[0]
    assert changed_before(set_up, "finish") == Changed()
    assert changed_before(set_up, "no-step-after-it") == Changed(frozenset({"parallels"}), frozenset())


def test_a_step_does_what_it_says(hm100):
    clamp = hm100.find("clamp")[1]
    assert does(clamp, "clamp")
    assert not does(clamp, "measure", "saw")
