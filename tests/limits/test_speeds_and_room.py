"""Speeds that a machine has, an edge bears and a cutter is marked for; reach, headroom, travel and load, in all that they say."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import (
    cutting_speed,
    flute_length,
    headroom,
    marked_speed,
    speed_range,
    table_load,
    travel,
)
from jobsheet.model.figure import EdgeSpeed, Figure, Figures
from jobsheet.model.quantity import Depth, Place, Quantity
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.reckoning.what_if import tried
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around as around_step
from tests.reckoning.steps import step as step_of

BELTS, STEPLESS = find_card("bench-mill-b-1"), find_card("bench-mill-b-2")
FOOT = 0.3048


def figures(edge=None, missing=None, **values):
    made = tuple(Figure(name, value, "", "") for name, value in values.items() if value is not None)
    return Figures(made, edge=edge, missing_speed=missing)


def around(machine=BELTS, metal="S235", **more):
    return Setting(machine=machine, material=find(metal), **more)


def step(cutter, **more):
    return SimpleNamespace(cutter=read_cutter(cutter, "mm"), **more)


class TestSpeedRange:
    """B-1 has 180, 320, 560, 900, 1450 and 2300 rpm; B-2 any from 50 to 2500."""

    def say(self, rpm, machine=BELTS, missing=None):
        return speed_range.limit(
            figures(spindle_speed=None if rpm is None else rpm / 60, missing=missing and missing / 60), around(machine)
        )  # fmt: skip

    @pytest.mark.parametrize(
        ("machine", "rpm", "missing", "verdict", "share", "sentence"),
        [
            (BELTS, 560, None, "expected", 560 / 2300, ""), (BELTS, 2300, None, "expected", 1.0, ""),
            (STEPLESS, 700, None, "expected", 700 / 2500, ""),
            (BELTS, 560, 700, "beyond", 1.0, "this machine has no 700 rpm; it has 560 and 900"),
            (BELTS, 2300, 4600, "beyond", 2.0, "this machine has no 4600 rpm; it has 2300"),
            (BELTS, 180, 90, "beyond", 1.0, "this machine has no 90 rpm; it has 180"),
            (STEPLESS, 2500, 5000, "beyond", 2.0, "this machine has no 5000 rpm; it has 50 to 2500"),
            (STEPLESS, 50, 40, "beyond", 1.0, "this machine has no 40 rpm; it has 50 to 2500"),
            # Whoever asks by a speed that no step has, and did not say so.
            (BELTS, 700, None, "beyond", 700 / 2300, "not a speed of this machine: set one that it has"),
            (STEPLESS, 2600, None, "beyond", 1.04, "not a speed of this machine: set one that it has"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, machine, rpm, missing, verdict, share, sentence):
        found, top = self.say(rpm, machine, missing), 2300 if machine is BELTS else 2500
        assert (found.verdict, found.share, found.sentence) == (verdict, pytest.approx(share), sentence)
        assert (found.name, found.title, found.unit) == ("speed-range", "Speed range", "rev/s")
        assert (found.demand, found.capacity, found.low, found.high) == (pytest.approx(rpm / 60), *[pytest.approx(top / 60)] * 3)  # fmt: skip
        assert found.shown == f"{rpm} of {top} rpm"
        assert found.chance is None

    def test_none_where_no_speed_is_set(self):
        assert self.say(None) is None
        assert self.say(None, missing=700) is None


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
            # To 1.3 of its start there are no words for the life: it is never too fast (holding-and-more-kinds C2).
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
        assert found.sentence == ("" if verdict == "expected" else "its tip is thrown out of true: 1000 rpm or less")  # fmt: skip
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


class TestMarkedSpeed:
    @pytest.mark.parametrize(
        ("rpm", "verdict", "sentence"),
        [
            (899, "expected", ""), (900, "expected", ""), (901, "tight", "near what the cutter is marked for: no faster step"),
            (1500, "tight", "near what the cutter is marked for: no faster step"),
            (1501, "beyond", "faster than the cutter is marked for: never; turn slower"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, rpm, verdict, sentence):
        """By a factor: to 0.6 expected, to 1 tight (design, Verdicts)."""
        fields = step("face mill 50 mm, 4 teeth, marked 1500 rpm")
        found = marked_speed.limit(figures(spindle_speed=rpm / 60), around(), fields)
        assert (found.verdict, found.sentence, found.shown) == (verdict, sentence, f"{rpm} of 1500 rpm")
        assert (found.name, found.title, found.unit) == ("marked-speed", "Marked speed", "rev/s")
        assert (found.capacity, found.demand) == (pytest.approx(25), pytest.approx(rpm / 60))

    def test_none_where_nothing_is_marked_or_turns(self):
        marked, plain = step("face mill 50 mm, 4 teeth, marked 1500 rpm"), step("face mill 50 mm, 4 teeth")
        assert marked_speed.limit(figures(), around(), marked) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), plain) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), SimpleNamespace(cutter=None)) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), SimpleNamespace()) is None


def deep(value):
    return Quantity(value, "typed")


class TestReach:
    SHORT = "the shank or the holder rubs; a longer cutter, or from the other side"

    @pytest.mark.parametrize(
        ("cutter", "depth", "verdict", "shown", "sentence"),
        [
            ("flutes 26 mm", 0.026, "expected", "26.0 of 26 mm", ""),
            ("flutes 26 mm", 0.0261, "beyond", "26.1 of 26 mm", f"only 26 mm flutes: {SHORT}"),
            ("30 mm out", 0.031, "beyond", "31.0 of 30 mm", f"only 30 mm out of the holder: {SHORT}"),
            ("30 mm out, flutes 26 mm", 0.027, "beyond", "27.0 of 26 mm", f"only 26 mm flutes: {SHORT}"),
            ("20 mm out, flutes 26 mm", 0.021, "beyond", "21.0 of 20 mm", f"only 20 mm out of the holder: {SHORT}"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, cutter, depth, verdict, shown, sentence):
        found = flute_length.limit(figures(), around(), step(f"end mill 12 mm, {cutter}", depth=deep(depth)))
        assert (found.verdict, found.shown, found.sentence) == (verdict, shown, sentence)
        assert (found.name, found.title, found.unit) == ("flute-length", "Reach of the cutter", "m")

    CUTTER = "end mill 12 mm, 4 teeth, flutes 8 mm, 40 mm out"

    @pytest.mark.parametrize(
        ("values", "more", "demand"),
        [
            ({"hole_depth": 0.02}, {}, 0.02),  # what the figures say of a hole, a slot or a pocket
            ({"hole_depth": 0.02}, {"depth": Depth(None, "through")}, 0.02),
            ({}, {}, 0.012), ({"layers": 3.0, "passes": 6.0}, {}, 0.012),  # a keyway: the whole wall
            ({"layers": 3.0, "passes": 6.0}, {"width": deep(0.01), "side": "left"}, 0.012),  # beside a wall
            ({"layers": 3.0, "passes": 6.0}, {"width": None}, 0.004),  # a face is only as deep as one layer
            ({"layers": 1.0, "passes": 2.0}, {"width": None}, 0.012), ({}, {"width": None}, 0.012),
            ({"layers": 3.0, "passes": 6.0, "hole_depth": 0.012}, {"width": deep(0.01)}, 0.012),  # a pocket has walls
        ],
    )  # fmt: skip
    def test_how_deep_it_stands_in_the_work(self, values, more, demand):
        fields = step(self.CUTTER, **{"depth": deep(0.012), **more})
        assert flute_length.limit(figures(**values), around(), fields).demand == pytest.approx(demand)

    def test_a_pocket_of_many_layers_needs_flutes_for_all_of_them(self):
        """20 mm deep in layers of 5 with flutes of 8 mm: below the second layer the shank rubs along the wall."""
        one = step_of("pocket", cutter="slot drill 10 mm, flutes 8 mm, 40 mm out", centre="40, 25", length="40 mm", width="30 mm", depth="20 mm", layer="5 mm", clear="all of it", feed_per_tooth="0.03 mm")  # fmt: skip
        found = tried(one.kind, one.fields, around_step("bench-mill-b-1", "6082-T6", thickness=0.03)).limit("flute-length")  # fmt: skip
        assert (found.verdict, found.demand) == ("beyond", pytest.approx(0.020))

    def test_none_where_neither_is_written_or_nothing_is_deep(self):
        written, plain = (
            step(self.CUTTER, depth=deep(0.012)),
            step("end mill 12 mm, 4 teeth", depth=deep(0.012)),
        )
        assert flute_length.limit(figures(), around(), written) is not None
        assert flute_length.limit(figures(), around(), plain) is None
        for fields in (
            step(self.CUTTER), step(self.CUTTER, depth=None), step(self.CUTTER, depth=Depth(None, "through")),
            step(self.CUTTER, depth=Depth(None, "through"), width=None), SimpleNamespace(cutter=None, depth=deep(0.01)), SimpleNamespace(depth=deep(0.01)),
        ):  # fmt: skip
            assert flute_length.limit(figures(), around(), fields) is None


class TestHeadroom:
    """B-1 has 80 to 300 mm under its spindle; a holder of 60 mm, 10 mm to get in and out (common practice)."""

    def say(self, top, out=40, machine=BELTS, shop=None):
        fields = step("end mill 12 mm" if out is None else f"end mill 12 mm, {out} mm out")
        return headroom.limit(figures(), around(machine, top=top, shop=shop or Shop()), fields)

    @pytest.mark.parametrize(
        ("top", "verdict", "demand", "capacity", "shown", "sentence"),
        [
            (0.073, "expected", 0.183, 0.300, "183 of 300 mm", ""),
            (0.190, "expected", 0.300, 0.300, "300 of 300 mm", ""),
            (
                0.192, "beyond", 0.302, 0.300, "302 of 300 mm",
                "does not fit under the spindle: lower packing or a shorter tool; work 192 over the table, tool 100, room 10 mm",
            ),
        ],
    )  # fmt: skip
    def test_what_is_said(self, top, verdict, demand, capacity, shown, sentence):
        found = self.say(top)
        assert (found.verdict, found.shown, found.sentence) == (verdict, shown, sentence)
        assert (found.demand, found.capacity) == (pytest.approx(demand), pytest.approx(capacity))
        assert (found.name, found.title, found.unit) == ("headroom", "Headroom", "m")
        assert found.working == f"work {top * 1000:.0f} over the table, tool 100, room 10 mm"

    @pytest.mark.parametrize(("out", "low"), [(9, True), (10, False), (11, False)])
    def test_whether_the_spindle_comes_down_far_enough(self, out, low):
        """Work of 10 mm on the table and a holder of 60: 80 mm are reached with 10 mm out."""
        found = self.say(0.010, out)
        assert found.verdict == ("beyond" if low else "expected")
        if low:
            assert (found.demand, found.capacity) == (pytest.approx(0.080), pytest.approx(0.079))
            assert (found.shown, found.name, found.title, found.unit) == ("79, at least 80 mm", "headroom", "Headroom", "m")  # fmt: skip
            assert found.sentence == "the spindle does not come down to the work: stand it higher"
            assert found.working == "work 10 over the table, tool 69, room 10 mm"

    def test_the_workshop_s_own_holder(self):
        assert self.say(0.073, shop=Shop(holder_length=0.1)).demand == pytest.approx(0.223)

    def test_none_where_card_work_or_tool_is_not_known(self):
        assert self.say(None) is None
        assert self.say(0.073, None) is None
        assert self.say(0.073, machine=replace(BELTS, daylight=None)) is None
        assert headroom.limit(figures(), around(top=0.073), SimpleNamespace(cutter=None)) is None
        assert headroom.tool_length(SimpleNamespace(), around()) is None
        assert self.say(0.0, 40) is not None  # flat on the table

    def test_a_tool_from_the_nose_to_its_tip(self):
        assert headroom.tool_length(step("end mill 12 mm, 45 mm out"), around()) == pytest.approx(0.105)


def places(*points):
    return tuple(Place(Quantity(x / 1000, ""), Quantity(y / 1000, "")) for x, y in points)


class TestTravel:
    """B-1 goes 300 mm along x and 150 along y; 5 mm run in and out each (common practice)."""

    @pytest.mark.parametrize(
        ("values", "fields", "axis", "need"),
        [
            ({"path_length": 0.2}, {}, "x", 210), ({"path_length": 0.2}, {"along": "x"}, "x", 210),
            ({"path_length": 0.1}, {"along": "y"}, "y", 110), ({"path_length": 0.1}, {"along": ""}, "x", 110),
            ({"path_length": 0.2}, {"length": None}, "x", 210),
            ({}, {"at": places((10, 5), (110, 25), (60, 15))}, "x", 100),  # 100 of 300 before 20 of 150
            ({}, {"at": places((10, -20), (60, 25), (30, 0))}, "y", 45),  # 45 of 150 before 50 of 300
            ({}, {"at": places((0, 0), (100, 50))}, "y", 50),  # as near to the end both ways: the last by name
            ({"path_length": 0.2}, {"at": places((10, 5), (20, 6))}, "x", 10),  # places stand for themselves
            ({"path_length": 0.2}, {"at": (), "along": "x"}, "x", 210), ({"path_length": 0.2}, {"at": None}, "x", 210),
            ({}, {"at": places((10, 5))}, "y", 0),
        ],
    )  # fmt: skip
    def test_the_axis_that_is_nearest_to_its_end(self, values, fields, axis, need):
        found = travel.limit(figures(**values), around(), SimpleNamespace(**fields))
        whole = {"x": 300, "y": 150}[axis]
        assert found.shown == f"{need} of {whole} mm, {axis}"
        assert (found.demand, found.capacity) == (pytest.approx(need / 1000), pytest.approx(whole / 1000))
        assert (found.name, found.title, found.unit) == ("travel", "Travel", "m")

    @pytest.mark.parametrize(("length", "verdict"), [(0.29, "expected"), (0.2901, "beyond")])
    def test_run_in_and_run_out_are_part_of_it(self, length, verdict):
        found = travel.limit(figures(path_length=length), around(), SimpleNamespace())
        assert found.verdict == verdict
        words = "the table does not go that far along x: turn the work or move it in two holds"
        assert found.sentence == (words if verdict == "beyond" else "")

    def test_the_workshop_s_own_run(self):
        own = around(shop=Shop(run=0.02))
        assert travel.limit(figures(path_length=0.1), own, SimpleNamespace()).demand == pytest.approx(0.14)

    def test_what_is_as_near_both_ways_but_for_a_rounding_of_inches_is_as_near(self):
        near = places((0, 0), (100 * (1 + 1e-12), 50))
        assert travel.limit(figures(), around(), SimpleNamespace(at=near)).shown.endswith(", y")
        nearer = places((0, 0), (100 * (1 + 1e-5), 50))
        assert travel.limit(figures(), around(), SimpleNamespace(at=nearer)).shown.endswith(", x")

    def test_none_where_nothing_moves_or_the_card_has_no_travels(self):
        assert travel.limit(figures(), around(), SimpleNamespace()) is None
        # A length that is typed is that of the wall, along it: nobody knows which way it lies.
        assert travel.limit(figures(path_length=0.2), around(), SimpleNamespace(length=deep(0.2))) is None
        assert travel.limit(figures(path_length=0.2), around(replace(BELTS, travel=())), SimpleNamespace()) is None  # fmt: skip
        only_y = replace(BELTS, travel=(("y", 0.15),))
        assert travel.limit(figures(path_length=0.2), around(only_y), SimpleNamespace()) is None
        assert travel.limit(figures(), around(only_y), SimpleNamespace(at=places((0, 0), (200, 5)))).shown == "5 of 150 mm, y"  # fmt: skip
        stuck = replace(BELTS, travel=(("x", 0.0), ("y", 0.15)))
        assert travel.limit(figures(path_length=0.2), around(stuck), SimpleNamespace()) is None


class TestLoad:
    """B-1's table carries 40 kg."""

    @pytest.mark.parametrize(("load", "verdict"), [(12.34, "expected"), (40.0, "expected"), (40.1, "beyond")])
    def test_what_is_said(self, load, verdict):
        found = table_load.limit(figures(spindle_speed=9.0), around(load=load), None)
        assert (found.verdict, found.shown) == (verdict, f"{load:.1f} of 40 kg")
        assert (found.name, found.title, found.unit, found.demand, found.capacity) == ("table-load", "Table load", "kg", load, 40.0)  # fmt: skip
        words = "too heavy for this table: a lighter vice, or another machine"
        assert found.sentence == (words if verdict == "beyond" else "")

    def test_none_where_load_or_table_is_not_known_or_nothing_is_cut(self):
        turning = figures(spindle_speed=9.0)
        assert table_load.limit(turning, around(), None) is None
        assert table_load.limit(figures(), around(load=9.0), None) is None
        assert table_load.limit(turning, around(replace(BELTS, table=None), load=9.0), None) is None
        bare = replace(BELTS, table=replace(BELTS.table, load=None))
        assert table_load.limit(turning, around(bare, load=9.0), None) is None
        assert math.isclose(table_load.limit(turning, around(load=0.0), None).share, 0.0)
