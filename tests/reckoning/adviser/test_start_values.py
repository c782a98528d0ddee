"""Where the adviser starts: the machine's speeds up to 1.1 × the start value,
the catalogue's feeds by what is cut.
"""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import drill_feed, end_mill_feed, face_mill_feed, gentle_feed, reamer_feed
from jobsheet.catalog.metals.materials import find
from jobsheet.model.quantity import Quantity
from jobsheet.reckoning.adviser import start_values
from jobsheet.reckoning.adviser.start_values import feed_of, roles_of, speed_first, speeds_of, spot_of
from tests.reckoning.adviser.made_up import outcome
from tests.reckoning.steps import around, step

MM = 1e-3
STEEL = find("S235")


def side(**more):
    texts = {
        "cutter": "end mill 10 mm, 4 teeth",
        "width": "4",
        "depth": "6",
        "feed_per_tooth": "0.05",
        **more,
    }
    return step("side-mill", **texts).fields


@pytest.fixture
def wanted(monkeypatch):
    """The speed to start from, made up [rpm]; a typed speed is what the spindle takes, to 2500 rpm."""

    def made(rpm, spindle=None):
        def tried(kind, fields, setting):
            if fields.spindle is None:
                return outcome(
                    wanted_speed=None if rpm is None else rpm / 60, spindle_speed=None if spindle is None else spindle / 60
                )  # fmt: skip
            return outcome(spindle_speed=min(fields.spindle.value, 2500 / 60))

        monkeypatch.setattr(start_values, "tried", tried)

    return made


def texts(machine="bench-mill-b-1", pinned=(), setting=None, **more):
    found = speeds_of("side-mill", side(**more), setting or around(machine), frozenset(pinned))
    for speed, text in found:
        if text and "spindle" not in pinned:
            assert speed * 60 == pytest.approx(float(text.removesuffix(" rpm")))
    return [text.removesuffix(" rpm") for _, text in found]


class TestSteps:
    """B-1 has 180, 320, 560, 900, 1450 and 2300 rpm."""

    @pytest.mark.parametrize(
        ("rpm", "first"),
        [(560, 560), (510, 560), (509.1, 560), (509, 320), (600, 560), (817, 560), (819, 900), (180, 180), (164, 180), (9000, 2300)],
    )  # fmt: skip
    def test_the_fastest_at_or_under_1_1_of_the_start_value_and_all_below(self, wanted, rpm, first):
        wanted(rpm)
        known = ["2300", "1450", "900", "560", "320", "180"]
        assert texts() == known[known.index(str(first)) :]

    def test_just_1_1_of_it_belongs_to_it(self, wanted):
        wanted(320 / 1.1)
        assert texts()[0] == "320"

    @pytest.mark.parametrize("rpm", [163, 20, None])
    def test_the_slowest_unsaid_where_all_are_too_fast_or_nothing_is_known(self, wanted, rpm):
        wanted(rpm)
        assert speeds_of("side-mill", side(), around("bench-mill-b-1")) == ((3.0, ""),)

    def test_never_faster_than_is_marked_on_the_cutter(self, wanted):
        wanted(2300)
        assert texts(cutter="end mill 10 mm, 4 teeth, max 560 rpm")[0] == "560"
        assert texts(cutter="end mill 10 mm, 4 teeth, max 559 rpm")[0] == "320"
        wanted(320)
        assert texts(cutter="end mill 10 mm, 4 teeth, max 2300 rpm")[0] == "320"
        wanted(None)
        assert texts(cutter="end mill 10 mm, 4 teeth, max 560 rpm") == [""]

    def test_what_is_typed_stays(self, wanted):
        wanted(900)
        assert speeds_of(
            "side-mill", side(spindle="333 rpm"), around("bench-mill-b-1"), frozenset({"spindle"})
        ) == ((333 / 60, "333 rpm"),)

    def test_by_a_typed_cutting_speed_the_program_sets_the_spindle(self, wanted):
        wanted(900, spindle=320)
        pinned = frozenset({"cutting_speed"})
        fields = side(cutting_speed="20 m/min", spindle="900 rpm")
        assert speeds_of("side-mill", fields, around("bench-mill-b-1"), pinned) == ((320 / 60, ""),)
        wanted(900)
        assert speeds_of("side-mill", fields, around("bench-mill-b-1"), pinned) == ((3.0, ""),)


class TestStepless:
    """B-2 turns from 50 to 2500 rpm; it is set to ten turns a minute."""

    @pytest.mark.parametrize(
        ("rpm", "found"),
        [
            (1234, [1230, 1040, 860, 670, 490, 360, 240, 120, 50]),
            # Nothing under the slowest: 0.2 and 0.1 of 200 are left out.
            (200, [200, 170, 140, 110, 80, 60, 50]),
            (1000, [1000, 850, 700, 550, 400, 300, 200, 100, 50]),
            (500, [500, 420, 350, 270, 200, 150, 100, 50]),
            (9000, [2500, 2120, 1750, 1370, 1000, 750, 500, 250, 50]),
            (30, [50]), (50, [50]), (None, [50]),
        ],
    )  # fmt: skip
    def test_shares_of_its_fastest(self, wanted, rpm, found):
        wanted(rpm)
        assert texts("bench-mill-b-2") == [str(one) for one in found]

    def test_what_lies_between_two_ranges_is_not_tried(self, wanted):
        wanted(1000)
        setting = around("bench-mill-b-2")
        low, high = setting.machine.spindle.ranges
        spindle = replace(
            setting.machine.spindle, ranges=(replace(low, highest=400 / 60), replace(high, lowest=700 / 60))
        )
        setting = replace(setting, machine=replace(setting.machine, spindle=spindle))
        assert texts(setting=setting) == ["1000", "850", "700", "400", "300", "200", "100", "50"]

    def test_a_speed_that_cannot_be_reckoned_is_the_slowest(self, monkeypatch):
        monkeypatch.setattr(
            start_values, "tried", lambda _, fields, __: outcome(wanted_speed=20.0 if fields.spindle is None else None)
        )  # fmt: skip
        assert texts("bench-mill-b-2") == ["50"]


@pytest.mark.parametrize(
    ("hardens", "family", "says"),
    [(False, "steel", False), (True, "stainless", True), (False, "magnesium", True), (False, "titanium", True), (False, "aluminium", False)],
)  # fmt: skip
def test_the_speed_drops_first_in_what_hardens_or_burns(hardens, family, says):
    """Issue "Advice that can be acted on", 1: magnesium, titanium and work-hardening metals."""
    assert speed_first(SimpleNamespace(work_hardens=hardens, family=family)) is says


class TestFeeds:
    def feed(self, kind, **more):
        fields = step(kind, **more).fields
        found = feed_of(roles_of(kind, fields), fields, around("bench-mill-b-1"))
        return None if found is None else found.value

    def test_a_drill_by_the_published_curve(self):
        """0.0169 D^0.953 (holding and more kinds, C3): 6 mm are fed 0.093."""
        found = self.feed("drill", cutter="drill 6 mm", at="10, 10", depth="12")
        assert found == pytest.approx(0.0169 * 6**0.953 * MM, rel=0.01)
        assert found == drill_feed(6 * MM, STEEL).value

    def test_a_side_a_slot_and_a_face(self):
        assert (
            self.feed("side-mill", cutter="end mill 10 mm, 4 teeth", width="4", depth="6")
            == end_mill_feed(0.01, STEEL).value
        )
        slot = self.feed("slot", cutter="slot drill 10 mm, 2 teeth", ends="20, 25; 60, 25", depth="6")
        assert slot == end_mill_feed(0.01, STEEL, cut="slot").value
        hard = self.feed("slot", cutter="end mill 10 mm, 2 teeth, carbide", ends="20, 25; 60, 25", depth="6")
        assert hard == pytest.approx(
            0.7 * end_mill_feed(0.01, STEEL, carbide=True).value
        )  # feeds.yaml, cuts of carbide
        assert (
            self.feed("face", cutter="face mill 50 mm, 4 teeth, carbide", depth="1")
            == face_mill_feed(STEEL).value
        )

    def test_a_reamer_by_its_edges(self):
        assert (
            self.feed("ream", cutter="reamer 8 mm, 4 flutes", at="10, 10", depth="12") == reamer_feed(4).value
        )

    def test_a_spot_by_its_own_diameter_and_no_more_than_the_drill_s(self):
        cutter = {"cutter": "spot drill 10 mm, 90°", "at": "10, 10"}
        assert self.feed("spot-drill", to="6", **cutter) == gentle_feed("spot drill", 6 * MM, STEEL).value
        assert self.feed("spot-drill", depth="1", **cutter) == pytest.approx(
            gentle_feed("spot drill", 2 * MM, STEEL).value
        )
        assert self.feed("drill", depth="1", **cutter) == pytest.approx(
            gentle_feed("spot drill", 2 * MM, STEEL).value
        )
        assert self.feed("drill", depth="9", **cutter) == gentle_feed("spot drill", 10 * MM, STEEL).value
        assert self.feed("spot-drill", to="2", **cutter) != self.feed("spot-drill", to="6", **cutter)

    def test_how_wide_a_spot_is(self):
        def fields(kind="spot drill", angle=math.pi / 2, **more):
            return SimpleNamespace(cutter=SimpleNamespace(kind=kind, point_angle=angle), **more)

        one = Quantity(1 * MM, "1 mm")
        assert spot_of(fields(depth=one)) == pytest.approx(2 * MM)
        assert spot_of(fields(depth=one, to=Quantity(3 * MM, "3 mm"))) == pytest.approx(3 * MM)
        assert spot_of(fields(depth=one, to=None)) == pytest.approx(2 * MM)
        assert spot_of(fields(angle=math.pi * 2 / 3, depth=one)) == pytest.approx(2 * math.sqrt(3) * MM)
        for nothing in (
            fields(),
            fields(depth=None),
            fields(depth=Quantity(None, "through")),
            fields(angle=None, depth=one),
        ):
            assert spot_of(nothing) is None
        assert spot_of(fields(kind="centre drill", depth=one, to=one)) is None
