"""How fast an edge may run: by cutter, metal and fluid, against the published ends (cutting-data section 2.2)."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.limits.each import cutting_speed
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind
from jobsheet.storage.card_files import find_card

FEET = 0.3048 / 60


def judged(name: str, texts: dict[str, str], metal: str = "S235", fluid: str = "brushed", machine: str = "bench-mill-b-1", **around):  # fmt: skip
    """The limit of one step, as it is typed."""
    made = kind(name)
    setting = Setting(machine=find_card(machine), material=find(metal), fluid=fluid, thickness=0.01, extent=(0.1, 0.03, 0.01), **around)  # fmt: skip
    fields = fields_from(made.fields, made.entries, {**made.example, **texts}, "mm")
    return cutting_speed.limit(made.figures(fields, setting), setting, fields)


def mill(cutter: str, rpm: int, metal: str = "S235", fluid: str = "brushed"):
    texts = {
        "cutter": cutter,
        "depth": "0.5 mm",
        "width": "5 mm",
        "spindle": f"{rpm} rpm",
        "feed_per_tooth": "0.03 mm",
    }
    return judged("side-mill", texts, metal, fluid)


def test_hss_of_20_mm_at_2300_rpm_in_steel_is_beyond():
    """145 m/min where 30 with a steady flow, 21 by the brush is the start (practice check: common practice)."""
    found = mill("end mill 20 mm, 4 teeth, HSS", 2300)
    assert found.verdict == "beyond"
    assert found.capacity == pytest.approx(1.3 * 21 / 60)
    assert "gone in one pass" in found.sentence
    assert "434 rpm or less" in found.sentence


@pytest.mark.parametrize(
    ("cutter", "metal", "fluid", "top"),
    [
        ("end mill 12 mm, 4 teeth, HSS", "6082-T6", "flood", 500 * FEET),  # the published end
        ("end mill 12 mm, 4 teeth, HSS", "6082-T6", "brushed", 500 * FEET * 0.7),
        (
            "end mill 12 mm, 4 teeth, HSS",
            "S235",
            "flood",
            1.3 * 30 / 60,
        ),  # its own end is nearer: 1.3 of the start
        (
            "end mill 12 mm, 4 teeth, carbide",
            "S235",
            "brushed",
            300 / 60,
        ),  # the brush takes nothing of carbide
        ("end mill 12 mm, 4 teeth, carbide", "304", "brushed", 110 / 60),
    ],
)
def test_the_top_is_the_published_one_and_never_under_1_3_of_the_start(cutter, metal, fluid, top):
    assert mill(cutter, 560, metal, fluid).capacity == pytest.approx(top, rel=1e-3)


def test_life_is_said_of_hss_in_iron_and_steel_only():
    assert "lasts" in mill("end mill 20 mm, 4 teeth, HSS", 560).sentence
    assert "lasts" not in mill("end mill 20 mm, 4 teeth, HSS", 2300, "6082-T6").sentence
    assert "catch fire" in mill("end mill 20 mm, 4 teeth, HSS", 560, "Ti-6Al-4V").sentence


def test_too_slow_for_carbide_is_another_sentence():
    found = mill("end mill 12 mm, 4 teeth, carbide", 560)
    assert (found.verdict, "rubs" in found.sentence) == ("expected", True)
    assert mill("end mill 12 mm, 4 teeth, HSS", 180).sentence == ""


def test_countersinks_and_spot_drills_may_run_as_a_drill():
    for name in ("countersink", "spot-drill"):
        texts = {"at": "10, 10", "spindle": "560 rpm"}
        found = judged(name, texts, pilot=0.004)
        assert found.capacity == pytest.approx(1.3 * 27 * 0.7 / 60, rel=1e-3), name


@pytest.mark.parametrize(("rpm", "verdict"), [(900, "expected"), (1450, "tight"), (2300, "beyond")])
def test_an_edge_finder_has_its_own(rpm, verdict):
    """1000 rpm (a school's sheet; its makers say 600 to 1000)."""
    assert judged("pick-up-edge", {"spindle": f"{rpm} rpm"}).verdict == verdict


def test_a_fly_cutter_has_no_published_end():
    """One tooth on an arm: 1.3 of where it starts, also in carbide (common practice)."""
    found = judged("fly-cut", {"cutter": "fly cutter 60 mm, carbide", "spindle": "560 rpm"})
    assert found.capacity == pytest.approx(1.3 * 0.6 * 210 / 60, rel=1e-3)


def test_typed_or_chosen_changes_nothing():
    texts = {
        "cutter": "end mill 40 mm, 4 teeth, HSS",
        "depth": "0.5 mm",
        "width": "5 mm",
        "feed_per_tooth": "0.03 mm",
    }
    chosen = judged("side-mill", {**texts, "spindle": ""}, "304")
    typed = judged("side-mill", {**texts, "spindle": "180 rpm"}, "304")
    assert chosen == typed
    assert chosen.verdict == "tight"
    assert "slowest speed of this machine is too fast" in chosen.sentence


@pytest.mark.parametrize(
    ("rpm", "words"), [(433, ""), (450, "minutes, not hours"), (660, "minutes, not hours"), (680, "gone in one pass")]
)  # fmt: skip
def test_what_too_fast_costs_goes_by_how_far_it_is_over_the_start(rpm, words):
    """20 mm starts at 334 rpm here, is too fast from 434 on, and turns twice its start at 668 (holding-and-more-kinds C2)."""
    from msgspec.structs import replace

    from jobsheet.model.figure import EdgeSpeed, Figure, Figures

    speed = 3.141592653589793 * 0.02 * rpm / 60
    edge = EdgeSpeed(start=21 / 60, top=27.33 / 60, source="", work="mill")
    found = Figures(
        (Figure("spindle_speed", rpm / 60, "", ""), Figure("cutting_speed", speed, "", "")), edge=edge
    )
    made = kind("side-mill")
    texts = {**made.example, "cutter": "end mill 20 mm, 4 teeth, HSS"}
    setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"))
    one = cutting_speed.limit(found, setting, fields_from(made.fields, made.entries, texts, "mm"))
    assert words in one.sentence
    assert bool(words) == (one.verdict != "expected")
    far = cutting_speed.limit(
        replace(found, edge=replace(edge, top=edge.top / 1.6)), setting, SimpleNamespace(cutter=None)
    )
    assert far is None
