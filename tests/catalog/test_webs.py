"""How thick a drill is at its heart, and how wide a pilot should be."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.sources import table as sources
from jobsheet.catalog.tools.webs import chisel, pilot, web
from jobsheet.errors import CalcError


# The handbook's averages of new jobber drills (remembered), and one between two of them.
@pytest.mark.parametrize(
    ("diameter", "thickness"),
    [(2, 0.50), (3, 0.70), (4, 0.90), (5, 1.05), (6, 1.20), (8, 1.50), (9, 1.625), (10, 1.75), (12, 2.00), (16, 2.5), (20, 2.9), (25, 3.4)],
)  # fmt: skip
def test_web_of_a_drill(diameter, thickness):
    found = web(diameter * 1e-3)
    assert found.value * 1e3 == pytest.approx(thickness)
    assert not found.outside
    assert found.source in sources()
    assert chisel(diameter * 1e-3) * 1e3 == pytest.approx(1.15 * thickness)


def test_webs_outside_the_table_are_marked_and_above_zero():
    assert web(0.3e-3).outside
    assert web(0.3e-3).value == pytest.approx(0.075e-3)
    assert web(40e-3).outside
    assert web(30e-3).value > 3.4e-3


def test_a_pilot_is_as_wide_as_the_chisel_and_a_third_at_most():
    found = pilot(12e-3)
    assert found.low * 1e3 == pytest.approx(2.2)  # a tenth more than a web of 2.0 mm
    assert found.value * 1e3 == pytest.approx(2.3)
    assert found.high * 1e3 == pytest.approx(4.0, abs=0.001)
    for size in (0.5e-3, 2e-3, 5e-3, 25e-3, 40e-3):
        found = pilot(size)
        assert 0 < found.low <= found.value <= found.high < size
    with pytest.raises(CalcError):
        pilot(0)
