"""Gauges that a step names, and how finely they read."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.gauges import measures, named, reads_to

from .views_read import sample, steps_of


def step_with(name, text):
    return steps_of(SetField("face-finish", name, text).apply(sample(100)))["face-finish"]


def test_the_line_of_tolerances_goes_before_the_instrument():
    job = SetField("face-finish", "measure", "11.5 ±0.1, micrometer").apply(sample(100))
    assert "micrometer" in named(steps_of(job)["face-finish"])
    both = SetField("face-finish", "tolerances", "gauge depth gauge").apply(job)
    assert named(steps_of(both)["face-finish"]) == "depth gauge"


def test_a_micrometer_reads_to_a_hundredth_and_a_plug_gauge_to_nothing():
    """Common practice: a hundredth on the drum, no vernier."""
    assert reads_to(step_with("tolerances", "gauge micrometer")) == pytest.approx(0.01e-3)
    assert reads_to(step_with("tolerances", "gauge plug gauge")) is None
    assert reads_to(step_with("tolerances", "")) is None or named(step_with("tolerances", ""))


def test_only_steps_at_the_bench_measure():
    assert not measures(steps_of(sample(100))["drill"])
    job = SetField("finish", "does", "measure").apply(sample(100))
    assert measures(steps_of(job)["finish"])
    assert not measures(steps_of(job)["find-zero"])


def test_what_names_no_gauge_has_an_empty_name():
    for fields, name in (
        (SimpleNamespace(), ""), (SimpleNamespace(instrument=None), ""), (SimpleNamespace(instrument="rule"), "rule"),
        (SimpleNamespace(tolerances=SimpleNamespace(gauge=""), instrument="rule"), "rule"),
        (SimpleNamespace(tolerances=SimpleNamespace(gauge="micrometer"), instrument="rule"), "micrometer"),
        (SimpleNamespace(measure=SimpleNamespace(instrument="", goes=True)), "go and no-go gauge"),
        (SimpleNamespace(measure=SimpleNamespace(instrument="plug", goes=True)), "plug"),
        (SimpleNamespace(measure=SimpleNamespace(instrument="", goes=False)), ""),
    ):  # fmt: skip
        assert named(SimpleNamespace(fields=fields)) == name
