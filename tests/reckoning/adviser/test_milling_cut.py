"""The parts of which ways of milling are made: how deep, in how many layers, how
wide, how fast, with what feed.
"""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.machine.spindle import steps
from jobsheet.model.quantity import Quantity
from jobsheet.model.shop import Shop
from jobsheet.operations.roles import Roles
from jobsheet.reckoning.adviser import milling_cut
from jobsheet.reckoning.adviser.burden import HOPELESS
from jobsheet.reckoning.adviser.milling_cut import (
    _bounds,
    _feeds,
    _speeds_and_feeds,
    _widths,
    cutting_of,
    fewest,
    in_width,
    most_layer,
)
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around, step

MM, INCH = 1e-3, 25.4e-3
SLOT, SIDE, FACE = (
    Roles(mills="groove", full_width=True),
    Roles(mills="wall"),
    Roles(mills="flat"),
)


def side(pinned=(), setting=None, skin=0.0, **more):
    texts = {
        "cutter": "end mill 10 mm, 4 teeth",
        "width": "4",
        "depth": "6",
        "feed_per_tooth": "0.05",
        **more,
    }
    one = step("side-mill", **texts)
    return cutting_of("side-mill", one.fields, setting or around("bench-mill-b-1"), skin, frozenset(pinned))


def slot(pinned=(), setting=None, **more):
    texts = {
        "cutter": "slot drill 10 mm, 2 teeth",
        "ends": "20, 25; 60, 25",
        "depth": "6",
        "feed_per_tooth": "0.05",
        **more,
    }
    one = step("slot", **texts)
    return cutting_of("slot", one.fields, setting or around("bench-mill-b-1"), 0.0, frozenset(pinned))


def face(pinned=(), setting=None, skin=0.0, **more):
    texts = {"cutter": "end mill 20 mm, 4 teeth", "depth": "2", "feed_per_tooth": "0.05", **more}
    one = step("face", **texts)
    return cutting_of("face", one.fields, setting or around("bench-mill-b-1"), skin, frozenset(pinned))


# --- how deep ---


class TestDeepest:
    """A slot: the workshop's share of the cutter, a quarter on a bench machine, and
    never above a half (issue "Advice", 1).
    """

    def test_what_is_not_in_a_slot_goes_as_deep_as_it_carries(self):
        assert most_layer(SIDE, 0.01, around("bench-mill-b-1")) == math.inf
        assert most_layer(FACE, 0.01, around("bench-mill-b-1")) == math.inf

    @pytest.mark.parametrize(
        ("machine", "shares", "deepest"),
        [
            ("bench-mill-b-1", {}, 2.5), ("knee-mill-k-2", {}, 5.0),
            ("bench-mill-b-1", {"slot_layer_bench": 0.1}, 1.0), ("knee-mill-k-2", {"slot_layer_bench": 0.1}, 5.0),
            ("knee-mill-k-2", {"slot_layer": 0.3}, 3.0), ("knee-mill-k-2", {"slot_layer": 0.9}, 5.0),
            ("bench-mill-b-1", {"slot_layer": 0.2}, 2.0), ("bench-mill-b-1", {"slot_layer": 0.9, "slot_layer_bench": 0.8}, 5.0),
        ],
    )  # fmt: skip
    def test_in_a_slot_of_10(self, machine, shares, deepest):
        setting = around(machine, shop=Shop(**shares))
        assert most_layer(SLOT, 0.01, setting) == pytest.approx(deepest * MM)
        assert cutting_of("slot", slot().fields, setting).most == pytest.approx(deepest * MM)


class TestDepth:
    def test_it_is_what_is_typed_or_the_work_s_own_height(self):
        assert slot().depth == pytest.approx(6 * MM)
        assert slot(
            depth="through", setting=around("bench-mill-b-1", thickness=0.013)
        ).depth == pytest.approx(0.013)

    def test_a_typed_layer_leaves_nothing_to_part(self):
        assert side(pinned={"layer"}, layer="2").depth is None
        assert side(pinned={"spindle"}).depth == pytest.approx(6 * MM)

    def test_what_has_no_layers_has_no_depth(self):
        one = step(
            "edge-chamfer",
            cutter="chamfer mill 12 mm, 4 teeth, 90°",
            edges="all round the top",
            size="1",
            feed_per_tooth="0.05",
        )
        assert cutting_of("edge-chamfer", one.fields, around("bench-mill-b-1")).depth is None

    def test_it_keeps_what_it_is_told(self):
        one = side(pinned={"cut"}, skin=1e-3)
        assert (one.kind, one.skin, one.pinned, one.plays.mills) == ("side-mill", 1e-3, {"cut"}, "wall")


class TestBounds:
    """As few layers as the deepest allows, as many as leave each a tenth of a
    millimetre, sixty-four at most.
    """

    @pytest.mark.parametrize(
        ("depth", "least", "most"),
        [("6", 3, 60), ("2.5", 1, 25), ("2.51", 2, 25), ("5", 2, 50), ("7", 3, 64), ("0.1", 1, 1), ("0.25", 1, 2), ("0.05", 1, 1)],
    )  # fmt: skip
    def test_a_slot_of_10_on_a_bench(self, depth, least, most):
        assert _bounds(slot(depth=depth)) == (least, most)

    def test_a_side_may_go_at_once(self):
        assert _bounds(side()) == (1, 60)
        assert _bounds(side(depth="0.2")) == (1, 2)

    def test_more_than_the_most_stay_where_the_deepest_asks_for_them(self):
        """200 mm deep in layers of 2.5 are 80."""
        assert _bounds(slot(depth="200")) == (80, 80)

    def test_each_layer_of_a_face_goes_under_its_skin(self):
        assert _bounds(face(skin=0.5 * MM)) == (1, 4)
        assert _bounds(face(skin=3 * MM)) == (1, 1)
        assert _bounds(face(skin=0.01 * MM)) == (1, 20)

    def test_the_skin_of_a_wall_is_under_its_width(self):
        assert _bounds(side(skin=3 * MM)) == (1, 60)

    def test_without_a_depth_there_is_one(self):
        assert _bounds(side(pinned={"layer"}, layer="2")) == (1, 1)


class TestFewest:
    """The smallest count of which no more is wrong than of the largest, against looking at every one."""

    @pytest.mark.parametrize("most", [1, 2, 3, 7, 8, 30, 64])
    @pytest.mark.parametrize("least", [1, 2, 3, 5])
    def test_where_more_layers_are_never_worse(self, least, most):
        for first in range(least, most + 1):
            for worse, at_best in (
                ((1, 0, 0), (0, 0, 0)),
                ((0, 0, 1), (0, 0, 0)),
                ((2, 0, 0), (1, 0, 3)),
                ((0, 1, 0), (0, 0, 2)),
            ):
                asked = []

                def burden(count, worse=worse, at_best=at_best, asked=asked, first=first):
                    assert least <= count <= most
                    asked.append(count)
                    return worse if count < first else at_best

                assert fewest(burden, least, most) == first
                assert len(set(asked)) <= 3 + 2 * math.log2(most)

    def test_the_smallest_that_is_clean_is_taken_unasked(self):
        asked = []

        def burden(count):
            asked.append(count)
            return (0, 0, 0)

        assert fewest(burden, 3, 64) == 3
        assert set(asked) == {3}

    def test_as_much_wrong_as_with_most_is_enough(self):
        assert fewest(lambda _: (1, 0, 0), 2, 64) == 2

    def test_less_wrong_than_with_the_most_is_better(self):
        """A layer so thin that it rubs: the largest count is not the best."""
        assert fewest(lambda count: (0, 0, 1) if count < 20 else (0, 1, 0), 2, 64) == 2


# --- how wide ---


def by_trying(total, most, least):
    """How many cuts there may be side by side: one by one to eight, then a quarter more
    each time; exact in whole hundredths.
    """
    count = 1
    while total / count > most * (1 + 1e-9):
        count += 1
    found = [count]
    while True:
        count = count + 1 if count < 8 else math.ceil(count * 5 / 4)
        if total / count < least:
            return found
        found.append(count)


def counts(cutting):
    return [count for _, count in _widths(cutting)]


class TestWidths:
    @pytest.mark.parametrize("width", ["4", "10", "10.1", "20", "25", "0.3", "0.1", "0.05", "80", "3.2"])
    def test_a_wall_in_cuts_no_wider_than_the_cutter(self, width):
        """Down to 4 % of the cutter of 10 mm."""
        assert counts(side(width=width)) == by_trying(float(width), 10, 0.4)

    def test_never_thinner_than_a_tenth(self):
        """Of a cutter of 2 mm 4 % are 0.08."""
        assert counts(side(cutter="end mill 2 mm, 4 teeth", width="1")) == by_trying(1, 2, 0.1)

    def test_a_narrow_wall_is_taken_at_once(self):
        assert list(_widths(side(width="0.3"))) == [((("cut", ""),), 1)]

    def test_what_is_left_on_the_wall_is_not_parted(self):
        assert counts(side(width="4.2", leave="0.2")) == counts(side(width="4"))
        assert list(_widths(side(width="0.2", leave="0.2"))) == []
        assert list(_widths(side(width="0.2", leave="0.3"))) == []

    def test_at_once_nothing_is_typed_and_in_parts_their_width(self):
        texts = {count: each for each, count in _widths(side(width="9"))}
        assert texts[1] == (("cut", ""),)
        assert texts[2] == (("cut", "4.5 mm"),)
        assert texts[7] == (("cut", "1.3 mm"),)

    def test_a_wall_s_cuts_go_under_its_skin(self):
        assert counts(side(width="4", skin=1 * MM)) == [1, 2, 3, 4]
        assert counts(side(width="4", skin=5 * MM)) == [1]

    def test_a_face_s_widths_do_not_care_for_its_skin(self):
        assert counts(face(skin=5 * MM)) == counts(face())

    @pytest.mark.parametrize(("along", "across"), [("x", 50), ("y", 80)])
    def test_a_face_in_passes_of_three_quarters_of_the_cutter(self, along, across):
        """The work is 80 × 50; the cutter has 20 (cutting-data section 3.3: 60 to 75 %)."""
        assert counts(face(along=along)) == by_trying(across, 15, 0.8)

    def test_a_face_as_narrow_as_the_cutter_allows_has_its_width_typed(self):
        setting = around("bench-mill-b-1", extent=(0.08, 0.015, 0.02))
        assert next(iter(_widths(face(setting=setting)))) == ((("width", "15 mm"),), 1)
        assert next(iter(_widths(face(setting=replace(setting, extent=(0.08, 0.0151, 0.02)))))) == (
            (("width", "7.6 mm"),),
            2,
        )

    def test_work_that_is_not_known_has_no_widths(self):
        assert list(_widths(face(setting=around("bench-mill-b-1", extent=(0.0, 0.0, 0.0))))) == []

    def test_in_inches(self):
        texts = {
            count: each
            for each, count in _widths(side(width="9", setting=around("bench-mill-b-1", units="in")))
        }
        assert texts[2] == (("cut", "0.18 in"),)  # 4.5 mm are 0.1772; 0.18 is 1.6 % wider, 0.2 would be 13 %

    @pytest.mark.parametrize("name", ["cut", "width"])
    def test_a_typed_width_stays(self, name):
        assert list(_widths(side(pinned={name}))) == [((), 1)]
        assert list(_widths(face(pinned={name}))) == [((), 1)]

    def test_other_cuts_are_as_wide_as_they_are(self):
        assert list(_widths(slot())) == [((), 1)]
        one = step(
            "pocket",
            cutter="slot drill 8 mm, 2 teeth",
            centre="40, 25",
            length="40",
            width="25",
            depth="4",
            feed_per_tooth="0.05",
        )
        assert list(_widths(cutting_of("pocket", one.fields, around("bench-mill-b-1")))) == [((), 1)]
        one = step("fly-cut", cutter="fly cutter 40 mm, 1 tooth, carbide", depth="0.2", feed_per_tooth="0.05")
        assert list(_widths(cutting_of("fly-cut", one.fields, around("bench-mill-b-1")))) == [((), 1)]


class TestInWidth:
    def test_wider_than_the_cutter_is_parted(self):
        fields = in_width(side(width="25"))
        assert fields.cut.value == pytest.approx(8.4 * MM)  # 25 in 3 is 8.33

    def test_nothing_to_part_stays(self):
        assert in_width(slot()) == slot().fields

    def test_what_cannot_be_typed_is_left(self):
        one = side(width="0.05", leave="0.05")
        assert in_width(one) == one.fields


# --- how fast, with what feed ---


class TestFeeds:
    """From the start value, or what the hand winds, down to 0.35 of the start value (issue "Advice", 1)."""

    def test_the_whole_list(self):
        assert _feeds(1.0, 2.0, only_start=False) == pytest.approx((1.0, 0.8, 0.65, 0.5, 0.42, 0.35))
        assert _feeds(1.0, 1.0, only_start=False)[0] == 1.0

    def test_the_hand_s_own_stands_first_and_nothing_next_to_it(self):
        assert _feeds(1.0, 0.81, only_start=False) == pytest.approx((0.81, 0.65, 0.5, 0.42, 0.35))
        assert _feeds(1.0, 0.9, only_start=False) == pytest.approx((0.9, 0.8, 0.65, 0.5, 0.42, 0.35))
        assert _feeds(1.0, 0.45, only_start=False) == pytest.approx((0.45, 0.42, 0.35))
        assert _feeds(1.0, 0.35, only_start=False) == pytest.approx((0.35,))

    def test_never_under_the_least(self):
        assert _feeds(1.0, 0.349, only_start=False) == ()
        assert min(_feeds(0.08, 1.0, only_start=False)) == pytest.approx(0.35 * 0.08)

    def test_where_the_speed_drops_first_it_is_the_start_value_or_nothing(self):
        assert _feeds(1.0, 1.0, only_start=True) == (1.0,)
        assert _feeds(1.0, 1.0 - 1e-12, only_start=True) == (1.0,)
        assert _feeds(1.0, 2.0, only_start=True) == (1.0,)
        assert _feeds(1.0, 0.99, only_start=True) == ()


def start_of(monkeypatch, value, high=None):
    """A catalogue that starts everything at this feed per tooth [m]."""
    found = None if value is None else SimpleNamespace(value=value, high=high if high is not None else value)
    monkeypatch.setattr(milling_cut, "feed_of", lambda *_: found)


def speeds_are(monkeypatch, *rpm):
    monkeypatch.setattr(milling_cut, "speeds_of", lambda *_: tuple((one / 60, f"{one} rpm") for one in rpm))


class TestSpeedsAndFeeds:
    """B-1: 2.5 mm a turn; a hand winds 8 to 50 turns a minute (cutting-data
    1.13): 20 to 125 mm/min of the table.
    """

    def pairs(self, cutting):
        return [(text, each) for _, text, _, each in _speeds_and_feeds(cutting)]

    def test_as_much_as_the_hand_winds_and_less(self, monkeypatch):
        """560 rpm, four teeth: 125 / 2240 = 0.0558, under a start of 0.06; 320: 0.0977, above it."""
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560, 320)
        found = self.pairs(side())
        shares = ("0.048 mm", "0.039 mm", "0.030 mm", "0.025 mm", "0.021 mm")
        assert found == [("560 rpm", "0.055 mm"), *(("560 rpm", one) for one in shares), ("320 rpm", "0.060 mm"), *(("320 rpm", one) for one in shares)]  # fmt: skip

    def test_values_go_with_the_texts(self, monkeypatch):
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560)
        for speed, text, tooth, each in _speeds_and_feeds(side()):
            assert (speed, text) == (560 / 60, "560 rpm")
            assert f"{tooth / MM:.3f} mm" == each

    def test_a_speed_of_which_the_hand_keeps_no_feed_is_left_out(self, monkeypatch):
        """2300 rpm: 125 / 9200 = 0.0136, under 0.35 × 0.06."""
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 2300, 320)
        assert {text for text, _ in self.pairs(side())} == {"320 rpm"}

    def test_where_no_speed_has_one_the_slowest_is_fed_least(self, monkeypatch):
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 9500, 9000, 8000)
        assert self.pairs(side()) == [("8000 rpm", "0.021 mm")]

    def test_the_range_goes_on_to_where_a_hand_winds_evenly(self, monkeypatch):
        """180 rpm, four teeth: under 20 / 720 = 0.0278 a hand does not wind evenly."""
        start_of(monkeypatch, 0.02 * MM, high=0.03 * MM)
        speeds_are(monkeypatch, 180)
        assert self.pairs(side())[:2] == [("180 rpm", "0.028 mm"), ("180 rpm", "0.020 mm")]

    @pytest.mark.parametrize(("value", "high"), [(0.02, 0.0275), (0.0277777777777778, 0.03), (0.03, 0.04)])
    def test_no_further_than_the_range_and_not_where_it_is_even_already(self, monkeypatch, value, high):
        start_of(monkeypatch, value * MM, high=high * MM)
        speeds_are(monkeypatch, 180)
        first = next(_speeds_and_feeds(side()))
        assert first[2] <= value * MM

    def test_to_the_very_end_of_the_range(self, monkeypatch):
        card = find_card("bench-mill-b-1")
        least = around("bench-mill-b-1").shop.slowest_pace * (card.handle("y").travel / (4 * 3.0))
        start_of(monkeypatch, 0.02 * MM, high=least)
        speeds_are(monkeypatch, 180)
        assert next(_speeds_and_feeds(side()))[2] >= least * (1 - 1e-9)

    def test_what_hardens_drops_the_speed_before_the_feed(self, monkeypatch):
        """304: 560 rpm would be 0.0558 of a start of 0.06; 320 keeps the whole
        feed, and nothing less is tried.
        """
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560, 320, 180)
        assert self.pairs(side(setting=around("bench-mill-b-1", "304"))) == [
            ("320 rpm", "0.060 mm"),
            ("180 rpm", "0.060 mm"),
        ]

    def test_where_that_leaves_nothing_the_feed_drops_too(self, monkeypatch):
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560)
        found = self.pairs(side(setting=around("bench-mill-b-1", "304")))
        assert found[0] == ("560 rpm", "0.055 mm")
        assert len(found) == 6

    def test_without_a_handle_on_that_slide_the_hand_is_not_asked(self, monkeypatch):
        setting = around("bench-mill-b-1")
        setting = replace(setting, machine=replace(setting.machine, handles=()))
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 2300)
        assert self.pairs(side(setting=setting))[0] == ("2300 rpm", "0.060 mm")

    def test_the_handle_is_the_one_that_feeds(self, monkeypatch):
        """A side left or right is fed by y, front or rear by x: here with another lead."""
        setting = around("bench-mill-b-1")
        x, *others = setting.machine.handles
        setting = replace(
            setting, machine=replace(setting.machine, handles=(replace(x, travel=x.travel / 2), *others))
        )
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560)
        assert self.pairs(side(setting=setting))[0][1] == "0.055 mm"
        assert self.pairs(side(setting=setting, side="front"))[0][1] == "0.027 mm"  # 62.5 / 2240

    def test_what_has_no_direction_is_fed_by_x(self, monkeypatch):
        setting = around("bench-mill-b-1")
        x, y, head = setting.machine.handles
        setting = replace(
            setting, machine=replace(setting.machine, handles=(replace(x, travel=x.travel / 2), y, head))
        )
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560)
        cutting = replace(side(setting=setting), fields=SimpleNamespace(cutter=side().fields.cutter))
        cutting = replace(cutting, pinned=frozenset({"cut"}))
        monkeypatch.setattr(milling_cut, "in_width", lambda one: one.fields)
        assert self.pairs(cutting)[0][1] == "0.027 mm"

    def test_without_teeth_or_without_a_feed_on_file_there_is_nothing(self, monkeypatch):
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560)
        bare = side()
        cutter = replace(bare.fields.cutter, teeth=None)
        assert self.pairs(replace(bare, fields=replace(bare.fields, cutter=cutter))) == []
        start_of(monkeypatch, None)
        assert self.pairs(side()) == []

    def test_a_typed_feed_per_tooth_stays(self, monkeypatch):
        start_of(monkeypatch, 0.06 * MM)
        speeds_are(monkeypatch, 560, 320)
        found = list(_speeds_and_feeds(side(pinned={"feed_per_tooth"}, feed_per_tooth="0.07")))
        assert found == [
            (560 / 60, "560 rpm", pytest.approx(0.07 * MM), None),
            (320 / 60, "320 rpm", pytest.approx(0.07 * MM), None),
        ]

    def test_of_a_typed_feed_of_the_table_each_tooth_has_its_part(self, monkeypatch):
        """100 mm/min at 560 rpm of four teeth: 0.0446."""
        speeds_are(monkeypatch, 560)
        (found,) = _speeds_and_feeds(side(pinned={"feed"}, feed_per_tooth="", feed="100 mm/min"))
        assert found[2] == pytest.approx(100 / (4 * 560) * MM)
        assert found[3] is None

    def test_the_speeds_are_those_of_the_machine(self):
        speeds = [text for text, _ in self.pairs(side())]
        known = [f"{one.marked} rpm" for one in reversed(steps(find_card("bench-mill-b-1")))]
        assert list(dict.fromkeys(speeds)) == [one for one in known if one in speeds]


# --- in layers ---


class Layers:
    """What is wrong by the count of layers, made up; every question is counted."""

    def __init__(self, monkeypatch, rule, side_by_side=1, hopeless=()):
        self.asked = []

        def tried(cutting, texts, count):
            self.asked.append(count)
            one = SimpleNamespace(count=lambda name: count * side_by_side if name == "passes" else 1)
            return (
                (None, HOPELESS, texts)
                if count in hopeless
                else (one, rule(count), (*texts, ("layer", str(count))))
            )

        monkeypatch.setattr(milling_cut, "_tried", tried)


def known(burden, passes):
    return SimpleNamespace(burden=burden, passes=passes)


CLEAN, EDGE, OVER = (0, 0, 0), (0, 0, 1), (1, 0, 0)


def from_count(first, at_best=CLEAN, worse=OVER):
    return lambda count: worse if count < first else at_best


def count_of(found):
    return None if found is None else int(dict(found[2])["layer"])


class TestInLayers:
    """6.4 mm deep with a dial of 0.05: 1, 2, 4, 8 and 16 layers come out on lines."""

    def layers(self, best=None, here=None, depth="6.4", **more):
        return count_of(milling_cut._in_layers(side(depth=depth, **more), (), best, here))

    def test_the_fewest(self, monkeypatch):
        Layers(monkeypatch, from_count(16))
        assert self.layers() == 16

    def test_one_more_where_only_that_ends_on_lines(self, monkeypatch):
        Layers(monkeypatch, from_count(7))
        assert self.layers() == 8
        Layers(monkeypatch, from_count(15))
        assert self.layers() == 16

    def test_three_where_two_do_not(self, monkeypatch):
        """0.45 mm: two of 0.225 end between lines, three of 0.15 on them."""
        Layers(monkeypatch, from_count(2))
        assert self.layers(depth="0.45") == 3

    def test_two_more_are_not_worth_it(self, monkeypatch):
        Layers(monkeypatch, from_count(6))
        assert self.layers() == 6

    def test_not_where_it_stands_on_lines_already(self, monkeypatch):
        """6 mm: 5 layers of 1.2 and 6 of 1.0 both do."""
        Layers(monkeypatch, from_count(5))
        assert self.layers(depth="6") == 5

    def test_not_where_at_once_goes(self, monkeypatch):
        """6.41: neither one nor two end on lines; 0.81: nor does one, where nothing is parted."""
        Layers(monkeypatch, from_count(1))
        assert self.layers(depth="6.42") == 1
        assert self.layers(depth="0.81") == 1

    def test_not_where_one_more_costs_a_pass_for_each_cut_side_by_side(self, monkeypatch):
        Layers(monkeypatch, from_count(7), side_by_side=2)
        assert self.layers() == 7

    def test_a_last_cut_on_the_wall_is_not_side_by_side(self, monkeypatch):
        layers = Layers(monkeypatch, from_count(7), side_by_side=8 / 7)
        assert self.layers() == 8
        assert layers.asked

    def test_not_where_it_would_be_worse(self, monkeypatch):
        """A thinner layer that rubs."""
        Layers(monkeypatch, lambda count: OVER if count < 7 else CLEAN if count == 7 else EDGE)
        assert self.layers() == 7

    def test_not_past_the_most(self, monkeypatch):
        """6.5 mm would end on lines in 65 layers of a tenth: 64 are the most."""
        layers = Layers(monkeypatch, from_count(64))
        assert self.layers(depth="6.5") == 64
        assert max(layers.asked) == 64

    def test_at_once_stays_at_once_where_only_its_half_has_a_line(self, monkeypatch):
        """On a dial of 62.5 lines a turn 40 thou have a line, 80 lie half a line past a turn's."""
        setting = around("bench-mill-b-1")
        x, y, head = setting.machine.handles
        odd = replace(head, travel=INCH / 16, line=INCH / 1000, dial="in")
        setting = replace(setting, machine=replace(setting.machine, handles=(x, y, odd)))
        Layers(monkeypatch, from_count(1))
        assert self.layers(depth="0.08 in", setting=setting) == 1

    def test_what_cannot_be_reckoned_is_nothing(self, monkeypatch):
        Layers(monkeypatch, from_count(1), hopeless=range(100))
        assert self.layers() is None

    def test_no_question_is_asked_twice(self, monkeypatch):
        layers = Layers(monkeypatch, from_count(7))
        self.layers()
        assert len(layers.asked) == len(set(layers.asked))

    def test_more_wrong_than_with_the_best_is_nothing_at_two_questions(self, monkeypatch):
        for burden, best in ((OVER, CLEAN), (OVER, EDGE), (EDGE, CLEAN), ((2, 0, 0), OVER)):
            layers = Layers(monkeypatch, from_count(65, worse=burden))
            assert self.layers(best=known(best, 3)) is None
            assert sorted(layers.asked) == [1, 64]

    def test_as_much_wrong_as_with_the_best_is_still_looked_at(self, monkeypatch):
        Layers(monkeypatch, from_count(5, at_best=OVER, worse=(2, 0, 0)))
        assert self.layers(best=known(OVER, 3)) == 5
        Layers(monkeypatch, from_count(5, at_best=CLEAN))
        assert self.layers(best=known(OVER, 3), here=known(OVER, 3)) == 5
        assert self.layers(best=known(CLEAN, 3), here=known(EDGE, 3)) == 5

    def test_clean_at_once_is_never_cut_short(self, monkeypatch):
        layers = Layers(monkeypatch, from_count(1))
        assert self.layers(best=known(CLEAN, 1), here=known(CLEAN, 1)) == 1
        assert layers.asked == [1]

    @pytest.mark.parametrize(("first", "found"), [(8, 8), (9, 9), (10, None)])
    def test_where_clean_is_known_at_this_speed_one_pass_more_is_a_rival_and_two_are_not(
        self, monkeypatch, first, found
    ):
        layers = Layers(monkeypatch, from_count(first))
        assert self.layers(best=known(CLEAN, 8), here=known(CLEAN, 8)) == found
        assert max(layers.asked) <= 9

    @pytest.mark.parametrize(("first", "found"), [(4, 4), (5, None)])
    def test_passes_side_by_side_count_there(self, monkeypatch, first, found):
        """Two by two: four layers are eight passes, five are ten."""
        layers = Layers(monkeypatch, from_count(first), side_by_side=2)
        assert self.layers(best=known(CLEAN, 8), here=known(CLEAN, 8)) == found
        assert max(layers.asked) <= 4

    def test_nothing_is_asked_where_even_the_fewest_are_too_many(self, monkeypatch):
        """A slot 6 deep takes three layers on a bench: no less is asked for where one pass is known."""
        layers = Layers(monkeypatch, from_count(64))
        assert milling_cut._in_layers(slot(), (), known(CLEAN, 1), known(CLEAN, 1)) is None
        assert layers.asked == [3]

    def test_where_the_fewest_cannot_be_reckoned_each_layer_is_a_pass(self, monkeypatch):
        for first, found in ((4, 4), (5, None)):
            layers = Layers(monkeypatch, from_count(first), hopeless=(1,))
            assert self.layers(best=known(CLEAN, 3), here=known(CLEAN, 3)) == found
            assert max(layers.asked) == 4


class TestTried:
    def test_the_layer_is_typed_with_the_rest(self):
        one, _, texts = milling_cut._tried(side(), (("spindle", "320 rpm"), ("cut", "2 mm")), 4)
        assert texts == (("spindle", "320 rpm"), ("cut", "2 mm"), ("layer", "1.5 mm"))
        assert one.value("layers") == 4
        assert one.value("passes") == 8
        assert one.fields.spindle == Quantity(320 / 60, "320 rpm")

    def test_a_typed_layer_is_left_as_it_is(self):
        one, _, texts = milling_cut._tried(side(pinned={"layer"}, layer="2 mm"), (), 1)
        assert texts == ()
        assert one.value("layers") == 3

    def test_a_text_that_cannot_be_read_is_hopeless(self):
        assert milling_cut._tried(side(), (("spindle", "fast"),), 1)[:2] == (None, HOPELESS)

    def test_what_cannot_be_reckoned_is_hopeless(self):
        """Wider than the cutter."""
        one, burden, _ = milling_cut._tried(side(width="25"), (("cut", ""),), 1)
        assert one.problem
        assert burden == HOPELESS

    def test_a_skin_that_it_stays_within_is_a_remark(self):
        """4 wide in two: 2 mm under a skin of 3."""
        assert milling_cut._tried(side(skin=3 * MM), (("cut", "2 mm"),), 1)[1][1] == 1
        assert milling_cut._tried(side(skin=2 * MM), (("cut", "2 mm"),), 1)[1][1] == 0
