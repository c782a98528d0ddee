"""Lengths in a limit's words: an inch job is told inches and thou, 25.4 mm each inch."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.limits.each import (
    cutting_speed,
    flute_length,
    headroom,
    holding,
    table_push,
    travel,
    wall_error,
)
from jobsheet.limits.in_units import number, of, put_in
from jobsheet.model.figure import EdgeSpeed
from jobsheet.model.setting import Grip

from .one_cut import BELTS, around, deep, figures, step

INCH = 0.0254


def test_to_a_millimetre_or_a_hundredth_of_an_inch():
    assert of(0.204, 0.42, "mm") == "204 of 420 mm"
    assert of(8 * INCH, 16.5 * INCH, "in") == "8 of 16.5 in"
    assert of(3.111 * INCH, 3.15 * INCH, "in", ", at least ") == "3.11, at least 3.15 in"
    assert (number(0.0104, "mm"), number(INCH / 8, "in")) == ("10", "0.12")


def test_what_is_put_into_a_formula_keeps_its_tenths_of_a_thou():
    assert (put_in(5.08e-3, "mm"), put_in(5.08e-3, "in")) == ("5.08 mm", "0.2 in")
    assert (put_in(16.234e-3, "mm", 3), put_in(INCH / 16, "in", 3)) == ("16.2 mm", "0.0625 in")


class TestInInches:
    """The same cuts as in the tests of each limit, of a job in inches: B-1, 80 to 300 mm under its spindle."""

    def test_headroom(self):
        """7.5 in of work, a holder of 60 mm = 2.36 in with 40 mm = 1.57 in of cutter, 10 mm = 0.39 in of room."""
        fields = step("end mill 12 mm, 40 mm out")
        found = headroom.limit(figures(), around(top=7.5 * INCH, units="in"), fields)
        assert (found.verdict, found.shown) == ("beyond", "11.83 of 11.81 in")
        assert found.working == "work 7.5 over the table, tool 3.94, room 0.39 in"
        assert found.sentence.endswith(found.working)
        low = headroom.limit(
            figures(), around(top=0.01, units="in"), step("end mill 12 mm, 9 mm out")
        )  # 79 of 80 mm
        assert low.shown == "3.11, at least 3.15 in"

    def test_travel(self):
        """B-1 goes 300 mm = 11.81 in along x: 8 in, and 5 mm run in and out, each 0.197 in."""
        found = travel.limit(figures(path_length=8 * INCH), around(units="in"), SimpleNamespace())
        assert found.shown == "8.39 of 11.81 in, x"

    @pytest.mark.parametrize(("depth", "shown"), [(1.25, "1.25 of 1.25 in"), (1.252, "1.252 of 1.25 in")])
    def test_reach(self, depth, shown):
        """A thou too deep shows, as a tenth of a millimetre does."""
        fields = step("end mill 1/2 in, 2 in out, flutes 1.25 in", depth=deep(depth * INCH))
        found = flute_length.limit(figures(), around(units="in"), fields)
        assert found.shown == shown
        assert found.sentence.startswith("only 1.25 in flutes: ") == (depth > 1.25)

    @pytest.mark.parametrize(
        ("error", "shown"), [(0.0005, "0.50 of 1.00 thou"), (0.003, "over 1.97 of 1.00 thou")]
    )
    def test_wall_error(self, error, shown):
        """±0.001 in; over 50 µm = 1.97 thou the wall gives way by more than is said."""
        fields = SimpleNamespace(measure=read_size("1 ±0.001", "in"))
        found = wall_error.limit(figures(wall_error=-error * INCH), around(units="in"), fields)
        assert found.shown == shown

    def test_table_push(self):
        """A screw of 2.5 mm = 0.0984 in and a crank of 55 mm = 2.1654 in."""
        found = table_push.limit(figures(feed_force=600.0), around(units="in"), None)
        assert found.working.endswith("N × 0.0984 in / (2 π × 0.3 × 2.1654 in)")

    def test_cutting_speed(self):
        """It starts at 30 m/min = 98 ft/min; in millimetres as it was."""
        edge = EdgeSpeed(start=0.5, top=0.8, source="table", work="mill", least=None)
        values = {"spindle_speed": 5.0, "cutting_speed": 0.5}
        for units, words in (("mm", "30 m/min"), ("in", "98 ft/min")):
            found = cutting_speed.limit(
                figures(edge=edge, **values), around(units=units), step("end mill 12 mm")
            )
            assert found.working.endswith(f"it starts at {words}")

    HELD = Grip(
        kind="vice", force=10e3, low=5e3, high=15e3, friction=0.12, working="2 π η T / s = … / {}", over=5.08e-3,
        radius=INCH, turning=50.0,
    )  # fmt: skip

    @pytest.mark.parametrize(
        ("units", "arm", "lead"), [("mm", "25.4 mm", "5.08 mm"), ("in", "1 in", "0.2 in")]
    )
    def test_holding(self, units, arm, lead):
        """The arm of a cut on round work of 2 in, and the lead of the screw that closes the vice."""
        setting = around(units=units, grip=self.HELD, extent=(0.1, 0.1, 0.1))
        found = holding.limit(figures(in_plane_peak=500.0), setting, None)
        assert found.working.startswith(f"2.5 × 500 N × {arm}; ")
        assert found.working.endswith(f"F: 2 π η T / s = … / {lead}")
        plain = replace(self.HELD, over=None, working="half of 6 kN", radius=None)
        said = holding.limit(figures(in_plane_peak=500.0), around(BELTS, grip=plain, units=units), None)
        assert said.working.endswith("F: half of 6 kN")

    @pytest.mark.parametrize(("units", "said"), [("mm", "12.7 mm"), ("in", "0.5 in")])
    def test_break_through(self, units, said):
        fields = step("drill 1/2 in", depth=SimpleNamespace(through=True))
        held = replace(self.HELD, radius=None, turning=None)
        found = holding.limit(
            figures(torque=200.0, spindle_speed=5.0), around(units=units, grip=held), fields
        )
        assert f"N·m / {said} × 0.577" in found.working
