"""Why no ladder is made: each reason names what is wrong and what to do."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each.chatter import CLASSES
from jobsheet.model.figure import Limit
from jobsheet.reckoning.ladder import ladder_refused as refused
from jobsheet.reckoning.what_if import Tried
from tests.limits.one_cut import BELTS, around, figures


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


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("AZ31", "magnesium: its chips burn"), ("AZ91", "magnesium: its chips burn"), ("Ti6Al4V", "titanium: its chips burn"),
        ("CuBe2", "beryllium copper: its dust makes ill"), ("C17200", "beryllium copper: its dust makes ill"),
        ("scrap from the yard", "a metal that nobody knows"), (" Unknown", "a metal that nobody knows"),
    ],
)  # fmt: skip
def test_each_metal_has_its_own_reason(name, why):
    assert refused.by_name(name) == f"No test cuts in {why}."


@pytest.mark.parametrize("name", ["", "AZ", "C1720", "steel from the scrap", "6082-T6"])
def test_what_only_looks_like_them_is_proved(name):
    assert refused.by_name(name) == ""


@pytest.mark.parametrize(
    ("cutter", "refuses"),
    [
        ("fly cutter 80 mm, marked 2000 rpm", False), ("slitting saw 63 mm", True), ("slitting saw 63 mm, marked 500 rpm", False),
        ("end mill 12 mm, carbide", False),
    ],
)  # fmt: skip
def test_what_turns_wide_needs_its_highest_speed_whatever_it_is_made_of(cutter, refuses):
    assert bool(refused.by_cutter(read_cutter(cutter, "mm"))) is refuses


@pytest.mark.parametrize("process", ["face", "side", "slot"])
def test_every_cut_that_may_chatter_needs_a_class(process):
    said = refused.by_machine(replace(BELTS, stiffness_class=""), process)
    assert (
        said
        == f"The card does not say which stiffness class the machine is of: write {' or '.join(CLASSES)} there first."
    )
    assert refused.by_machine(BELTS, process) == ""


def stopped(*names, sentence="it slips"):
    limits = tuple(
        Limit(name=name, title=name.capitalize(), demand=1, capacity=1, unit="", share=1, verdict="beyond", low=1, high=1, shown="2 of 1", sentence=sentence)
        for name in names
    )  # fmt: skip
    return refused.by_limits(Tried(fields=None, setting=around(), figures=figures(), limits=limits))


def test_a_limit_that_is_not_learned_stops_it_and_says_what_to_do():
    assert stopped() == ""
    assert stopped("chatter") == ""
    assert stopped("quill-push") == "Quill-push: it slips."
    assert stopped("quill-push", sentence="") == "Quill-push: 2 of 1."
    assert stopped("holding") == "Holding: it slips; better holding first, it is never learned by slipping."
