"""How figures are called and shown: in the units of the job, with the SI unit beside their value."""

from __future__ import annotations

import pytest

from jobsheet.operations.names import FIGURES, show, si_unit
from jobsheet.units.grammar import read


@pytest.mark.parametrize(
    ("name", "value", "metric", "inch"),
    [("spindle_speed", 10.0, "600 rpm", "600 rpm"), ("cutting_speed", 0.5, "30.0 m/min", "98 ft/min"), ("table_feed", 1e-3, "60 mm/min", "2.36 in/min"), ("feed_per_tooth", 0.05e-3, "0.050 mm", "0.0020 in")],
)  # fmt: skip
def test_a_figure_in_both_systems(name, value, metric, inch):
    """By hand: 0.5 m/s is 30 m/min and 98.4 ft/min; 1 mm/s is 60 mm/min and 2.36 in/min."""
    assert show(name, value, "mm") == metric
    assert show(name, value, "in") == inch


@pytest.mark.parametrize("name", FIGURES)
def test_every_figure_has_a_title_and_a_unit(name):
    assert FIGURES[name].title
    assert si_unit(name)
    assert show(name, 1.0, "mm")
    assert show(name, 1.0, "in")


def test_what_is_shown_reads_back_as_the_value():
    assert read(show("torque", 8.0, "mm"), FIGURES["torque"].measures, "mm") == pytest.approx(8.0)
