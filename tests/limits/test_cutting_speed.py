"""How fast an edge may run: by cutter, metal and fluid, against the published
ends (cutting-data section 2.2).
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import cutting_speed, speed_range
from jobsheet.model.figure import EdgeSpeed, Figure, Figures
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind
from jobsheet.storage.card_files import find_card

from .one_cut import BELTS, around, figures, step

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
    """145 m/min where 30 with a steady flow, 21 by the brush is the start
    (practice check: common practice).
    """
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
    """20 mm starts at 334 rpm here, is too fast from 434 on, and turns twice its start
    at 668 (holding-and-more-kinds C2).
    """
    from msgspec.structs import replace

    from jobsheet.model.figure import EdgeSpeed

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


FOOT = 0.3048


class TestCuttingSpeed:
    """Over the top of what is published it is tight, over half as much again beyond (design, Verdicts)."""

    def say(self, cut, cutter="end mill 20 mm, 4 teeth, HSS", *, start=0.35, top=0.5, work="mill", source="", least=None, rpm=560, metal="S235", machine=BELTS, units="mm"):  # fmt: skip
        edge = EdgeSpeed(start=start, top=top, source=source, work=work, least=least)
        made = figures(edge=edge, cutting_speed=cut, spindle_speed=None if rpm is None else rpm / 60)
        return cutting_speed.limit(made, around(machine, metal, units=units), step(cutter))

    @pytest.mark.parametrize(
        ("cut", "verdict"), [(0.3, "expected"), (0.5, "expected"), (0.5001, "tight"), (0.75, "tight"), (0.7501, "beyond")]
    )  # fmt: skip
    def test_what_is_said(self, cut, verdict):
        found = self.say(cut)
        assert found.verdict == verdict
        assert (found.name, found.title, found.unit) == ("cutting-speed", "Cutting speed", "m/s")
        assert (found.demand, found.capacity, found.share) == (cut, 0.5, pytest.approx(cut / 0.5))
        assert (found.low, found.high) == (0.5, pytest.approx(0.75))
        assert found.shown == f"{cut * 60:.1f} of 30.0 m/min"
        assert (found.chance, found.odds) == (None, "")
        # As much slower as the edge is too fast: 560 rpm × 0.5 / cut.
        most = f"{560 * 0.5 / cut:.0f} rpm or less"
        assert found.sentence.endswith(most) is (verdict != "expected")
        assert (found.sentence == "") is (verdict == "expected")

    def test_in_feet_a_minute(self):
        """0.3 m/s is 59 ft/min, 0.5 m/s 98."""
        assert self.say(0.3, units="in").shown == f"{0.3 / FOOT * 60:.0f} of {0.5 / FOOT * 60:.0f} ft/min"

    @pytest.mark.parametrize(
        ("cut", "cutter", "metal", "work", "words"),
        [
            # To 1.3 of its start there are no words for the life: it is never
            # too fast (holding-and-more-kinds C2).
            (0.52, "end mill 20 mm, 4 teeth, HSS", "S235", "mill", "the edge lasts minutes, not hours"),
            (0.69, "end mill 20 mm, 4 teeth, HSS", "S235", "mill", "the edge lasts minutes, not hours"),
            (0.7, "end mill 20 mm, 4 teeth, HSS", "S235", "mill", "the edge may be gone in one pass"),
            (0.9, "end mill 20 mm, 4 teeth, HSS", "304", "mill", "the edge may be gone in one pass"),
            (0.9, "end mill 20 mm, 4 teeth, HSS", "EN-GJL-250", "mill", "the edge may be gone in one pass"),
            (0.9, "end mill 20 mm, 4 teeth, carbide", "S235", "mill", "more than is published for this cutter here"),
            (0.9, "end mill 20 mm, 4 teeth, HSS", "6082-T6", "mill", "more than is published for this cutter here"),
            (0.9, "end mill 20 mm, 4 teeth, HSS", "Ti-6Al-4V", "mill", "titanium chips catch fire when the edge runs so hot"),
            (0.9, "taps M6", "Ti-6Al-4V", "tap", "titanium chips catch fire when the edge runs so hot"),
            (0.9, "taps M6", "S235", "tap", "a tap binds and breaks before anyone lets go"),
            (0.9, "reamer 8 mm", "S235", "ream", "a hot, fast reamer cuts large and loses its edge"),
            (0.9, "drill 8 mm", "S235", "drill", "the edge may be gone in one pass"),
        ],
    )  # fmt: skip
    def test_what_too_fast_costs(self, cut, cutter, metal, work, words):
        assert self.say(cut, cutter, metal=metal, work=work).sentence.startswith(f"{words}: ")

    def test_far_over_its_top_and_not_over_its_own_start(self):
        """A top under 1.3 of the start is none that the program makes; then no life is foretold."""
        assert self.say(0.44, top=0.4).sentence.startswith("more than is published")
        assert self.say(0.456, top=0.4).sentence.startswith("the edge lasts minutes")

    SLOW = "the slowest speed of this machine is too fast for it: a smaller cutter, or a machine that turns slower"

    @pytest.mark.parametrize(
        ("rpm", "cut", "slow"),
        [
            (180, 0.52, True),  # 173 rpm would do: there is no such step
            (320, 0.52, False),  # 308 rpm or less: there is 180
            (320, 1.0, False),  # 160 rpm would do, but the slowest is not what is set: turn slower first
            (180, 0.5, False),  # just at the top
        ],
    )
    def test_where_even_the_slowest_step_is_too_fast(self, rpm, cut, slow):
        sentence = self.say(cut, rpm=rpm).sentence
        assert (self.SLOW in sentence) is slow
        assert ("rpm or less" in sentence) is (not slow and cut > 0.5)

    def test_the_slowest_that_is_just_slow_enough_is_one(self):
        """The top is reached at 180 rpm to a rounding: that step is still to be had."""
        assert cutting_speed.limit(
            figures(edge=EdgeSpeed(start=0.35, top=0.5 * (1 - 1e-12), source="", work="mill"), cutting_speed=0.9, spindle_speed=0.9 / 0.5 * 3),
            around(), step("end mill 20 mm, 4 teeth, HSS"),
        ).sentence.endswith(": 180 rpm or less")  # fmt: skip

    @pytest.mark.parametrize(("cut", "slow"), [(0.19, True), (0.2, False), (0.3, False)])
    def test_far_too_slow_is_expected_and_says_so(self, cut, slow):
        words = "far too slow for carbide, which rubs and chips: a faster speed, or a cutter of HSS"
        found = self.say(cut, least=0.2)
        assert (found.verdict, found.sentence) == ("expected", words if slow else "")
        assert self.say(cut).sentence == ""

    def test_where_the_range_lies_under_what_cuts_too_fast_is_what_is_said(self):
        assert "rpm or less" in self.say(0.6, least=0.7).sentence

    @pytest.mark.parametrize(
        ("source", "working"),
        [
            (
                "",
                "1.3 × its start speed, the least that counts as too fast; it starts at 21 m/min; common practice",
            ),
            ("a book", "the top of the published range with the fluid as it is given; it starts at 21 m/min"),
        ],
    )
    def test_where_the_top_comes_from(self, source, working):
        assert self.say(0.3, source=source).working == working

    @pytest.mark.parametrize(
        ("rpm", "verdict"), [(999, "expected"), (1000, "expected"), (1001, "tight"), (1499, "tight"), (1501, "beyond")]
    )  # fmt: skip
    def test_an_edge_finder(self, rpm, verdict):
        """1000 rpm (holding-and-more-kinds A4: a school's sheet; makers 600 to 1000)."""
        found = cutting_speed.limit(figures(spindle_speed=rpm / 60), around(), step("edge finder 10 mm"))
        assert (found.verdict, found.shown, found.unit) == (verdict, f"{rpm} of 1000 rpm", "rev/s")
        assert found.sentence == (
            "" if verdict == "expected" else "its tip is thrown out of true: 1000 rpm or less"
        )
        assert (found.capacity, found.working) == (pytest.approx(1000 / 60), "common practice")

    def test_none_where_nothing_turns_or_nobody_says_how_fast(self):
        assert self.say(0.5, rpm=None) is None
        assert self.say(None) is None
        mill = step("end mill 20 mm, 4 teeth, HSS")
        assert cutting_speed.limit(figures(cutting_speed=0.5, spindle_speed=9.0), around(), mill) is None
        edge = EdgeSpeed(start=0.35, top=0.5, source="", work="mill")
        made = figures(edge=edge, cutting_speed=0.5, spindle_speed=9.0)
        assert cutting_speed.limit(made, around(), mill) is not None
        for nobody in (None, SimpleNamespace(), SimpleNamespace(cutter=None)):
            assert cutting_speed.limit(made, around(), nobody) is None


class Fields(Struct, frozen=True):
    """A step with nothing but its cutter."""

    cutter: Cutter


def test_a_cutter_that_needs_less_than_the_slowest_speed():
    """Said once, by the cutting speed: 63 mm at 180 rpm is 35.6 m/min."""
    assert (
        speed_range.limit(figures(wanted_speed=100 / 60, spindle_speed=3.0), around()).verdict == "expected"
    )
    made = replace(
        figures(spindle_speed=3.0, cutting_speed=35.6 / 60),
        edge=EdgeSpeed(start=21 / 60, top=27.3 / 60, source="", work="mill"),
    )
    one = cutting_speed.limit(made, around(), Fields(read_cutter("face mill 63 mm, 4 teeth, HSS", "mm")))
    assert one.verdict == "tight"
    assert "the slowest speed of this machine is too fast" in one.sentence
