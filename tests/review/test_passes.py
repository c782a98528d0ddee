"""Passes that do not add up to the size that is named."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.passes import passes_out

from .views_read import sample, view_of


def out(job):
    return [
        (step.key, round(left * 1e3, 3), round(off * 1e3, 3))
        for step, left, off in passes_out(plan_of(view_of(job)))
    ]


@pytest.mark.parametrize("number", [100, 101, 102, 103, 104])
def test_the_samples_add_up(number):
    assert out(sample(number)) == []


def test_a_finish_that_is_too_deep_leaves_too_little():
    """HM-100: 12 thick, 0.4 and 0.1 off leave 11.5; with 0.9 off in the end it
    is 10.7, which is 0.8 too little.
    """
    assert out(SetField("face-finish", "depth", "0.9").apply(sample(100))) == [("face-finish", 10.7, -0.8)]


def test_what_lies_within_the_limits_is_no_fault():
    """11.5 ±0.1: 0.15 off leaves 11.45."""
    assert out(SetField("face-finish", "depth", "0.15").apply(sample(100))) == []
