"""Why no ladder is made: each reason names what is wrong and what to do."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.reckoning.ladder import ladder_refused as refused
from jobsheet.reckoning.what_if import Tried
from tests.limits.one_cut import BELTS, around


@pytest.mark.parametrize(
    "name", ["AZ91", "magnesium", "Ti-6Al-4V", "C17200", "beryllium copper", "unknown", "scrap from the yard"]
)
def test_metals_that_burn_or_make_ill_are_known_by_any_of_their_names(name):
    assert refused.by_name(name)


def test_steel_is_proved():
    assert refused.by_name("S235") == ""
    assert refused.by_material(find("S235")) == ""


@pytest.mark.parametrize(
    ("cutter", "refuses"),
    [("face mill 50 mm, carbide", True), ("face mill 50 mm, carbide, marked 12000 rpm", False), ("face mill 50 mm", False), ("fly cutter 80 mm", True), ("end mill 12 mm", False)],
)  # fmt: skip
def test_inserts_need_their_highest_speed(cutter, refuses):
    assert bool(refused.by_cutter(read_cutter(cutter, "mm"))) is refuses


def test_taps_need_a_spindle_that_reverses_and_milling_a_class():
    one_way = replace(BELTS, spindle=replace(BELTS.spindle, reverses=False))
    assert "does not reverse" in refused.by_machine(one_way, "tap")
    assert refused.by_machine(one_way, "side") == ""
    assert "stiffness class" in refused.by_machine(replace(BELTS, stiffness_class=""), "side")
    assert refused.by_machine(replace(BELTS, stiffness_class=""), "drill") == ""


def test_a_grip_that_nobody_knows_and_a_cut_that_cannot_be_reckoned():
    assert "never learned by slipping" in refused.by_holding(around())
    assert refused.by_limits(Tried(fields=None, setting=around(), problem="No size.")) == "No size."
