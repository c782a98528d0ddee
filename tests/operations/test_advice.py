"""Suggestions: from the catalogue, never more than a hand can wind, never taken by themselves."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.operations.registry import kind
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.reckoner import Reckoner


def advice(job, key):
    found = Reckoner().reckon(job)
    operation = job.find(key)[1]
    advised = best_cut(operation, found.settings[key])
    return {one.name: one for one in advised.values if one.text} if advised is not None else {}


def test_a_drill_s_feed_lies_on_the_curve_through_the_published_range(hm100):
    """Navy training manual, 1/8 to 1/4 in: 0.002 to 0.004 in a turn; the curve
    through its ends has 0.078 mm at 5 mm.
    """
    assert advice(hm100, "drill")["feed"].text == "0.078 mm"
    assert advice(hm100, "drill")["feed"].source == "navy"


def test_a_feed_a_tooth_stays_within_the_hand(hm100):
    """0.08-0.15 mm by the table for carbide face mills in steel; at 560 rpm
    and 4 teeth 50 turns give 0.0558.
    """
    one = advice(hm100, "face-rough")["feed_per_tooth"]
    assert one.text == "0.055 mm"
    assert "hand" in one.why


def test_taking_a_suggestion_is_an_edit_and_gives_what_it_says(hm100):
    job = hm100
    for name, one in advice(hm100, "face-rough").items():
        job = SetField("face-rough", name, one.text).apply(job)
    found = Reckoner().reckon(job).operations["face-rough"]
    assert {limit.verdict for limit in found.limits} <= {"expected", "cut before"}


def test_in_an_inch_job_suggestions_are_in_inches(hm100):
    inches = SetField("job", "units", "in").apply(hm100)
    assert (
        advice(inches, "drill")["feed"].text == "0.0030 in"
        or advice(inches, "drill")["feed"].text == "0.0031 in"
    )


@pytest.mark.parametrize("key", ["clamp", "tap", "find-zero"])
def test_where_no_table_has_an_answer_nothing_is_suggested(hm100, key):
    assert advice(hm100, key) == {}


def test_every_suggestion_of_every_sample_can_be_typed_into_its_field(samples):
    from jobsheet.storage.job_file import read_job

    count = 0
    for path in sorted(samples.glob("*.yaml")):
        job = read_job(path)
        for _, operation in job.operations():
            for name, one in advice(job, operation.key).items():
                entry = kind(operation.kind).entry(name)
                assert entry is not None
                assert entry.read(one.text, job.units).value > 0
                assert one.why
                count += 1
    assert count > 20


def test_deep_holes_and_oil_by_hand_slow_the_drill(hm100):
    """Cutting-data section 2.2: brushed 0.7, in a deep hole half; 27 m/min in mild steel."""
    job = SetField("drill", "depth", "10").apply(SetField("drill", "spindle", "").apply(hm100))
    shallow = Reckoner().reckon(job).operations["drill"].figures
    assert shallow.value("wanted_speed") * 60 == pytest.approx(27 * 0.7 / (3.14159265 * 0.005), rel=0.01)
    deep = SetField("drill", "depth", "20").apply(job)
    assert Reckoner().reckon(deep).operations["drill"].figures.value("wanted_speed") * 60 == pytest.approx(
        27 * 0.5 / (3.14159265 * 0.005), rel=0.01
    )


def test_a_feed_that_the_hand_limits_is_worded_in_the_units_of_the_job(hm100):
    operation = hm100.find("face-rough")[1]
    metric = Reckoner().reckon(hm100).settings["face-rough"]
    for setting, unit in ((metric, "mm"), (replace(metric, units="in"), "in")):
        advice = {one.name: one for one in best_cut(operation, setting).values}
        assert "by the table" in advice["feed_per_tooth"].why
        assert advice["feed_per_tooth"].why.endswith(unit)
        assert advice["feed_per_tooth"].text.endswith(unit)
