"""A pilot before a large drill: from the smallest that is as wide as the chisel up to half of the drill."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.tools.webs import pilot
from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.pilot_first import pilot_first, sizes

from .views_read import sample


@pytest.mark.parametrize("diameter", [8e-3, 10e-3, 16e-3])
def test_pilots_rise_from_the_chisel_to_half_of_the_drill(diameter):
    found = [size for size, _ in sizes(replace(sample(100), workshop="Nobody's"), diameter)]
    assert found == sorted(found)
    assert found[0] >= pilot(diameter).low - 1e-6
    assert found[-1] <= diameter / 2 + 1e-6


def test_a_large_drill_is_offered_one_or_two_stages():
    job = SetField("drill", "cutter", "drill 12 mm").apply(sample(100))
    reckoned = Reckoner().reckon(job)
    fixes = pilot_first(job, reckoned.job.find("drill")[1], reckoned.settings["drill"])
    assert fixes
    assert all("pilot" in one.label.casefold() for one in fixes[:1])
    number = job.find("drill")[1].number
    assert str(number) in fixes[0].label


def piloted(diameter, *, units="mm"):
    """The plate with a drill of that size, and what is offered before it."""
    job = SetField("drill", "cutter", f"drill {diameter} mm").apply(
        replace(sample(100), workshop="Nobody's", units=units)
    )
    reckoned = Reckoner().reckon(job)
    return job, pilot_first(job, reckoned.job.find("drill")[1], reckoned.settings["drill"])


@pytest.mark.parametrize(("diameter", "labels"), [(0.8, 0), (9.9, 1), (10, 2), (12, 2)])
def test_from_ten_on_a_second_stage_is_offered_and_for_the_smallest_drills_none(diameter, labels):
    """Drills by half millimetres: between the web of a drill of 0.8 and half of it lies none."""
    assert len(piloted(diameter)[1]) == labels


def test_one_stage_adds_a_drill_and_two_add_two_that_open_each_other():
    """The second is three quarters of the drill, opened behind the pilot; both stand right before it."""
    job, (one, two) = piloted(12)
    before = [step.key for _, step in job.operations()]
    for fix, kinds in ((one, ["drill"]), (two, ["drill", "drill-out"])):
        mended = fix.mend(job)
        added = [step for _, step in mended.operations() if step.key not in before]
        assert len(added) == len(kinds)
        keys = [step.key for _, step in mended.operations()]
        assert keys[keys.index("drill") - len(added) : keys.index("drill")] == [step.key for step in added]
        assert added[0].fields.cutter.diameter < 0.006 + 1e-9
        assert all(step.fields.at.text == job.find("drill")[1].fields.at.text for step in added)
    assert added[1].fields.cutter.diameter == pytest.approx(0.009)
