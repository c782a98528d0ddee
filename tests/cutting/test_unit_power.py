"""The second method of power: its table, and how far it is from the first."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.formula import outside_validity
from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.unit_power import unit_power, unit_power_feed_factor

# Printed beside each other in inch; the inch table is the metric one within its rounding.
INCH = {
    0.001: 1.60, 0.002: 1.40, 0.003: 1.30, 0.004: 1.25, 0.005: 1.19, 0.006: 1.15, 0.007: 1.11, 0.008: 1.08,
    0.009: 1.06, 0.010: 1.04, 0.012: 1.00, 0.015: 0.96, 0.020: 0.90, 0.025: 0.86, 0.030: 0.83, 0.040: 0.78,
}  # fmt: skip


# Feed in mm, a tooth or a turn.
METRIC = {
    0.02: 1.70, 0.05: 1.40, 0.07: 1.30, 0.10: 1.25, 0.12: 1.20, 0.15: 1.15, 0.18: 1.11, 0.20: 1.08,
    0.22: 1.06, 0.25: 1.04, 0.30: 1.00, 0.40: 0.94, 0.50: 0.90, 0.60: 0.87, 0.80: 0.82, 1.00: 0.78,
}  # fmt: skip


@pytest.mark.parametrize(("feed", "factor"), METRIC.items())
def test_gives_the_printed_points(feed, factor):
    assert unit_power_feed_factor(feed * 1e-3) == pytest.approx(factor)


@pytest.mark.parametrize(("feed", "factor"), INCH.items())
def test_the_inch_table_is_the_same_curve(feed, factor):
    assert unit_power_feed_factor(feed * 25.4e-3) == pytest.approx(factor, abs=0.05)


@given(st.floats(0.001e-3, 3e-3), st.floats(0.001e-3, 3e-3))
def test_a_thicker_chip_needs_less_energy_everywhere_and_never_none(one, other):
    thin, thick = sorted((one, other))
    assert unit_power_feed_factor(thin) >= unit_power_feed_factor(thick) * (1 - 1e-9) > 0


def test_goes_on_past_the_ends_and_says_so():
    assert unit_power_feed_factor(0.01e-3) > 1.70
    assert unit_power_feed_factor(2e-3) < 0.78
    assert outside_validity(unit_power_feed_factor, feed=0.01e-3) == [
        "outside the range of the source (f 0.02-1 mm): f is 0.01 mm",
    ]


@pytest.mark.parametrize(
    ("material", "kc11", "mc", "horse", "ratio"),
    [
        ("1045", 1700, 0.20, 0.82, 0.99),
        ("4140", 1775, 0.24, 0.72, 1.32),
        ("4140 prehard", 1750, 0.24, 0.87, 1.08),
        ("304", 2150, 0.20, 0.72, 1.42),
        ("grey iron", 1150, 0.24, 0.65, 0.95),
        ("6061", 750, 0.25, 0.33, 1.26),
        ("brass", 700, 0.27, 0.50, 0.82),
        ("titanium", 1700, 0.23, 1.30, 0.68),
        ("718", 3100, 0.24, 1.12, 1.49),
        ("A36", 1450, 0.20, 0.74, 0.93),
    ],
)
def test_ratio_of_the_two_methods(material, kc11, mc, horse, ratio):
    first = specific_cutting_force(kc11 * 1e6, mc, 0.05e-3)
    second = unit_power(horse * 2.7305e9, unit_power_feed_factor(0.05e-3), 1.0)
    assert first / second == pytest.approx(ratio, abs=0.01), material


@pytest.mark.parametrize(("feed", "factor"), [(0.035, 1.55), (0.35, 0.97), (0.9, 0.80)])
def test_is_straight_between_the_printed_points(feed, factor):
    assert unit_power_feed_factor(feed * 1e-3) == pytest.approx(factor)


def test_a_worn_edge_asks_more_by_its_factor():
    assert unit_power(2e9, 1.25, 1e-6, wear=1.3) == pytest.approx(3250)
