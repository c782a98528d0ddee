"""Texts that cannot be read: which of them the figures of a step hang on."""

from __future__ import annotations

import pytest

from jobsheet.gui.desk.unread import hangs_on
from jobsheet.holdings.all_holdings import kind_of
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def job():
    return read_job(sample_jobs() / "hm-104-cover-plate.yaml")


def _first(job):
    return job.set_ups[0], job.set_ups[0].operations[0].key


@pytest.mark.parametrize(
    ("owner", "name", "hangs"),
    [
        ("job", "material", True),
        ("job", "machine", True),
        ("job", "units", True),
        ("job", "part", False),
        ("job:stock", "length", True),
        ("job:stock", "note", False),
        ("job:stock", "condition", False),
        ("job:title", "author", False),
    ],
)
def test_of_the_header_those_that_are_reckoned_with(job, owner, name, hangs):
    assert hangs_on(job, _first(job)[1])(owner, name) is hangs


def test_its_own_fields_all_and_those_of_another_step_none(job):
    set_up, key = _first(job)
    asked = hangs_on(job, key)
    assert asked(key, "depth")
    assert asked(key, "note")
    assert not asked(set_up.operations[1].key, "depth")


def test_of_the_holding_what_it_reckons_and_only_that_of_its_own_set_up(job):
    set_up, key = _first(job)
    asked = hangs_on(job, key)
    assert asked(f"holding:{set_up.key}", "kind")
    for name in kind_of(set_up.holding).reckons:
        assert asked(f"holding:{set_up.key}", name)
    assert not asked(f"holding:{set_up.key}", "no such fact")
    assert not asked("holding:another", "kind")


def test_a_step_that_is_gone_hangs_on_the_header_still(job):
    asked = hangs_on(job, "gone")
    assert asked("job", "material")
    assert not asked("holding:", "kind")
