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
