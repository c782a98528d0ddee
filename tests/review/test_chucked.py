"""How work sits in a chuck: what stands out of it, and which end is free."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.chucked import chucked, free_end, reaches

from .views_read import sample, steps_of


def in_chuck(**facts):
    job = SetField("holding:set-up-1", "kind", "chuck").apply(sample(100))
    for name, text in {"on": "dividing head", "lies": "along", "grip_length": "20", **facts}.items():
        job = SetField("holding:set-up-1", name, text).apply(job)
    return job


def test_no_chuck_holds_what_is_in_a_vice():
    assert chucked(sample(100).set_ups[0], steps_of(sample(100))["face-rough"]) is None


def test_what_is_not_gripped_stands_out_unless_it_is_said():
    job = in_chuck()
    first = steps_of(job)["face-rough"]
    found = chucked(job.set_ups[0], first)
    assert found.length == pytest.approx(first.lie.size[0])
    assert found.out == pytest.approx(found.length - 0.020)
    said = in_chuck(out="35")
    assert chucked(said.set_ups[0], steps_of(said)["face-rough"]).out == pytest.approx(0.035)


def test_every_part_of_a_cut_lies_within_the_work():
    job = in_chuck()
    steps = steps_of(job)
    found = chucked(job.set_ups[0], steps["face-rough"])
    for one, other in reaches(found, steps["face-rough"], steps["drill"]):
        assert 0 <= one <= found.length + 1e-9
        assert 0 <= other <= found.length + 1e-9


def test_the_end_that_is_found_is_free():
    assert free_end(in_chuck().set_ups[0]) in (0, 1, None)
