"""Pairs of a set-up: clamped before it is cut, found before it is placed, measured and deburred behind it."""

from __future__ import annotations

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.lessons.bench_pairs import bench_pairs

from .pairs_of import looked_at


def pairs(job):
    _, plan, holes = looked_at(job)
    return {(one.first, one.then) for one in bench_pairs(plan, holes)}


def test_nothing_is_cut_before_it_is_clamped(hm100):
    found = pairs(hm100)
    cuts = {one.key for _, one in hm100.operations() if one.kind != "bench-step"}
    assert {then for first, then in found if first == "clamp"} >= cuts


def test_the_zero_is_found_before_places_are_drilled(hm100):
    found = pairs(hm100)
    assert ("find-zero", "spot") in found
    assert ("find-zero", "drill") in found


def test_the_last_step_at_the_bench_follows_the_cuts(hm100):
    found = pairs(hm100)
    assert ("tap", "finish") in found
    assert not {then for first, then in found if first == "finish"}


def test_what_is_gone_is_in_no_pair(hm100):
    found = pairs(DeleteSteps(("clamp",)).apply(hm100))
    assert not {pair for pair in found if "clamp" in pair}
