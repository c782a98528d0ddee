"""Photographs of a job: put to a set-up once, taken out, and gone with their set-up."""

from __future__ import annotations

import pytest

from jobsheet.edit.photograph_commands import AddPhotograph, TakeOutPhotograph, without_owner
from jobsheet.errors import CommandError
from jobsheet.model.job import Photograph

ONE = Photograph(content="a" * 64, about="set-up-1")


def test_one_is_put_behind_the_others_and_not_twice(hm100):
    job = AddPhotograph(ONE).apply(hm100)
    other = Photograph(content="b" * 64, about="set-up-1")
    assert AddPhotograph(other).apply(job).photographs == (*hm100.photographs, ONE, other)
    with pytest.raises(CommandError, match="there already"):
        AddPhotograph(ONE).apply(job)
    # The same picture may show another set-up.
    assert (
        len(AddPhotograph(Photograph(content="a" * 64, about="set-up-2")).apply(job).photographs)
        == len(job.photographs) + 1
    )


def test_taking_out_is_the_job_before(hm100):
    job = AddPhotograph(ONE).apply(hm100)
    assert TakeOutPhotograph(ONE).apply(job) == hm100
    with pytest.raises(CommandError, match="not there any more"):
        TakeOutPhotograph(ONE).apply(hm100)


def test_a_set_up_that_goes_takes_its_own_along(hm100):
    job = AddPhotograph(ONE).apply(hm100)
    assert without_owner(job, "set-up-1") == hm100
    assert without_owner(job, "set-up-2") is job
