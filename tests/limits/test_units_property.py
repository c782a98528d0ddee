"""Verdicts do not depend on units: every sample typed anew in inches, every size
a hand would type, says the same.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.edit.commands import ChangeUnits, SetField
from jobsheet.operations.registry import kind as kind_of
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.units.table import bare_unit

SAMPLES = {path.stem: read_job(path) for path in sorted(sample_jobs().glob("hm-*.yaml"))}
#: What a bare number means in a job; speeds in rpm, torques and times are typed alike in both.
LENGTHS = {"length", "depth", "feed per tooth", "feed per turn", "feed", "cutting speed"}


def bare(value, asks, system):
    """A value as a bare number of that system, to twelve digits: far finer than any verdict can feel."""
    unit = bare_unit("length" if asks == "depth" else asks, system)
    return f"{value / unit.size:.12g}"


def sizes(job):
    """Every size of every step: its key, its entry, its value in SI."""
    for _, operation in job.operations():
        for entry in kind_of(operation.kind).entries:
            value = getattr(operation.fields, entry.name)
            if entry.asks in LENGTHS and getattr(value, "value", None) is not None:
                yield operation.key, entry, value.value


def typed(job, system):
    """The same job in that system: bare numbers for all that is a length, and the places too."""
    made = ChangeUnits(system).apply(job)
    for key, entry, value in sizes(job):
        made = SetField(key, entry.name, bare(value, entry.asks, system)).apply(made)
    for name in ("length", "width", "height"):
        made = SetField("job:stock", name, bare(getattr(job.stock, name).value, "length", system)).apply(made)
    for _, operation in job.operations():
        places = getattr(operation.fields, "at", None)
        if places:
            text = "; ".join(
                f"{bare(one.x.value, 'length', system)}, {bare(one.y.value, 'length', system)}"
                for one in places
            )
            made = SetField(operation.key, "at", text).apply(made)
    return made


def said(job):
    found = Reckoner().reckon(job).operations
    assert not any(outcome.problem for outcome in found.values())
    return {(key, one.name): one for key, outcome in found.items() for one in outcome.limits}


def same(one, other):
    one, other = said(one), said(other)
    assert one.keys() == other.keys()
    for where, limit in one.items():
        assert other[where].verdict == limit.verdict, where
        assert other[where].share == pytest.approx(limit.share, rel=1e-8), where
        assert other[where].capacity == pytest.approx(limit.capacity, rel=1e-8), where


@pytest.mark.parametrize("name", sorted(SAMPLES))
def test_a_sample_typed_in_inches_says_the_same(name):
    inches = typed(SAMPLES[name], "in")
    assert inches.units == "in"
    assert not any(" mm" in text for text in (inches.stock.length.text, inches.stock.height.text))
    same(SAMPLES[name], inches)


@pytest.mark.parametrize("name", sorted(SAMPLES))
def test_and_so_does_its_file_read_back(name):
    inches = typed(SAMPLES[name], "in")
    same(inches, job_from_text(write_job(inches), "inches.yaml"))


@given(st.sampled_from(sorted(SAMPLES)), st.data(), st.floats(0.3, 1.6))
@settings(max_examples=60)
def test_also_where_a_size_is_changed_and_verdicts_move(name, data, by):
    """One size of one step larger or smaller, typed in each system: nothing hangs on which."""
    job = SAMPLES[name]
    key, entry, value = data.draw(st.sampled_from(sorted(sizes(job), key=lambda one: (one[0], one[1].name))))
    made = [
        SetField(key, entry.name, bare(value * by, entry.asks, system)).apply(typed(job, system))
        for system in ("mm", "in")
    ]
    found = [Reckoner().reckon(one).operations for one in made]
    for each in found[0]:
        one, other = found[0][each], found[1][each]
        assert bool(one.problem) == bool(other.problem)
        assert [(limit.name, limit.verdict) for limit in one.limits] == [
            (limit.name, limit.verdict) for limit in other.limits
        ]
