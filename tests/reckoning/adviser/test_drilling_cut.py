"""Ways of making a hole, in the order in which they are tried, against lists made up by hand."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.operations.roles import Roles
from jobsheet.reckoning.adviser import drilling_cut
from jobsheet.reckoning.adviser.drilling_cut import _feeds, _pecks, _restful, ways
from jobsheet.reckoning.adviser.remarks_drawn import of_drilling
from jobsheet.reckoning.what_if import Tried
from tests.reckoning.adviser.made_up import limit, outcome
from tests.reckoning.steps import around, step

MM = 1e-3
DRILL, REAM = Roles(hole="drill", feed="drill"), Roles(hole="ream", feed="ream")
BENCH = around("bench-mill-b-1")


def drill(**more):
    texts = {"cutter": "drill 6 mm", "at": "10, 10", "depth": "12", "feed": "0.1", **more}
    return step("drill", **texts).fields


def ream():
    return step("ream", cutter="reamer 8 mm, 4 flutes", at="10, 10", depth="12").fields


class TestFeeds:
    @pytest.mark.parametrize(("plays", "fields"), [(DRILL, drill()), (REAM, ream())])
    def test_from_the_catalogue_s_down_to_two_fifths(self, monkeypatch, plays, fields):
        monkeypatch.setattr(drilling_cut, "feed_of", lambda *_: SimpleNamespace(value=0.2 * MM))
        found = _feeds(plays, fields, BENCH, frozenset())
        assert [text for _, text in found] == [
            "0.20 mm",
            "0.17 mm",
            "0.14 mm",
            "0.11 mm",
            "0.094 mm",
            "0.080 mm",
        ]
        assert [value for value, _ in found] == pytest.approx(
            [0.2 * MM, 0.17 * MM, 0.14 * MM, 0.11 * MM, 0.094 * MM, 0.08 * MM]
        )

    def test_what_is_typed_stays(self):
        assert _feeds(DRILL, drill(feed="0.07 mm"), BENCH, frozenset({"feed"})) == [
            (pytest.approx(0.07 * MM), "0.07 mm")
        ]

    def test_nothing_where_none_is_known(self, monkeypatch):
        monkeypatch.setattr(drilling_cut, "feed_of", lambda *_: None)
        assert _feeds(DRILL, drill(), BENCH, frozenset()) == []
        assert list(ways("drill", drill(), BENCH)) == []


def pecks(fields=None, plays=DRILL, setting=BENCH, pinned=()):
    return _pecks(fields or drill(), plays, setting, frozenset(pinned))


class TestPecks:
    """1.5, 1 and 0.5 diameters (a tap and drill maker's printed tips); then as long as an arm keeps up."""

    SIX = ((("peck", "9 mm"),), (("peck", "6 mm"),), (("peck", "3 mm"),))

    def test_in_one_go_then_in_shorter_and_shorter_ones(self):
        assert pecks() == ((("peck", ""),), *self.SIX, None)
        assert pecks(plays=Roles(hole="plunge")) == ((("peck", ""),), *self.SIX, None)

    def test_typed_pecks_are_never_taken_back(self):
        assert pecks(drill(peck="4 mm")) == ((("peck", "4 mm"),), *self.SIX, None)

    def test_pinned_ones_stay(self):
        assert pecks(drill(peck="4 mm"), pinned={"peck"}) == ((),)

    @pytest.mark.parametrize("hole", ["ream", "counterbore", "spot", "countersink"])
    def test_other_tools_have_none(self, hole):
        assert pecks(plays=Roles(hole=hole)) == ((),)

    def test_without_a_lever_no_arm_tires(self):
        setting = replace(BENCH, machine=replace(BENCH.machine, lever=None))
        assert pecks(setting=setting) == ((("peck", ""),), *self.SIX)

    def test_in_inches(self):
        assert pecks(setting=replace(BENCH, units="in"))[1] == (("peck", "0.36 in"),)  # 9 mm are 0.354

    @pytest.mark.parametrize(
        ("size", "down", "units", "text"),
        [
            # So far in 12 s of a strong push; half a diameter at most, a fifth or half a millimetre at least.
            (6, 0.2, "mm", "2.4 mm"), (6, 0.19, "mm", "2.2 mm"), (6, 1.0, "mm", "3 mm"), (6, 0.05, "mm", "1.2 mm"), (6, 0.25, "mm", "3 mm"),
            (2, 0.01, "mm", "0.5 mm"), (2, 0.06, "mm", "0.72 mm"), (20, 0.01, "mm", "4 mm"), (6, 0.2, "in", "0.094 in"),
        ],
    )  # fmt: skip
    def test_as_long_as_an_arm_keeps_up(self, size, down, units, text):
        fields = drill(cutter=f"drill {size} mm")
        assert _restful(fields, down * MM, replace(BENCH, units=units)) == (("peck", text),)


class Holes:
    """What comes of a hole by speed, feed and peck, made up."""

    def __init__(self, monkeypatch, rule, speeds=(20.0, 10.0), feeds=(2e-4, 1e-4)):
        monkeypatch.setattr(
            drilling_cut, "speeds_of", lambda *_: tuple((one, f"{one * 60:.0f} rpm") for one in speeds)
        )
        monkeypatch.setattr(drilling_cut, "_feeds", lambda *_: [(one, f"{one * 1e3:g} mm") for one in feeds])

        def tried(kind, fields, setting):
            peck = fields.peck.value if fields.peck is not None else None
            found = rule(fields.spindle.value, fields.feed.value, peck)
            return (
                Tried(fields=fields, setting=setting, problem="No.")
                if found is None
                else replace(found, fields=fields, setting=setting)
            )

        monkeypatch.setattr(drilling_cut, "tried", tried)


def tried_in_order(setting=BENCH, fields=None):
    found = list(ways("drill", fields or drill(), setting))
    return [
        (one.speed, one.feed, one.fields.peck.text if one.fields.peck is not None else "") for one in found
    ], found


def carries(test):
    return lambda *way: outcome(limit("expected" if test(*way) else "beyond"), strokes=2.0, cutting_time=30.0)


PAIRS = [(20.0, 2e-4), (20.0, 1e-4), (10.0, 2e-4), (10.0, 1e-4)]


class TestOrder:
    def test_the_fastest_with_the_highest_feed_first_and_no_further_where_it_goes(self, monkeypatch):
        Holes(monkeypatch, carries(lambda *_: True))
        assert tried_in_order()[0] == [(20.0, 2e-4, "")]

    def test_the_feed_drops_before_the_speed(self, monkeypatch):
        Holes(monkeypatch, carries(lambda speed, feed, peck: speed * feed < 3e-3))
        assert tried_in_order()[0] == [(20.0, 2e-4, ""), (20.0, 1e-4, "")]

    def test_in_what_hardens_the_speed_drops_before_the_feed(self, monkeypatch):
        Holes(monkeypatch, carries(lambda speed, feed, peck: speed * feed < 3e-3))
        assert tried_in_order(around("bench-mill-b-1", "304"))[0] == [(20.0, 2e-4, ""), (10.0, 2e-4, "")]

    def test_pecks_only_where_it_does_not_go_at_once(self, monkeypatch):
        Holes(monkeypatch, carries(lambda speed, feed, peck: peck is not None and peck < 7 * MM))
        found = tried_in_order()[0]
        assert found == [(*one, "") for one in PAIRS] + [(*one, "9 mm") for one in PAIRS] + [
            (20.0, 2e-4, "6 mm")
        ]

    def test_the_last_peck_goes_by_the_arm_at_each_rate(self, monkeypatch):
        """10 rev/s at 0.01 mm are 0.1 mm/s: 1.2 mm in 12 s."""
        Holes(monkeypatch, carries(lambda *_: False), speeds=(10.0,), feeds=(2e-5, 1e-5))
        assert [peck for *_, peck in tried_in_order()[0]] == [
            "",
            "",
            "9 mm",
            "9 mm",
            "6 mm",
            "6 mm",
            "3 mm",
            "3 mm",
            "2.4 mm",
            "1.2 mm",
        ]

    def test_what_cannot_be_reckoned_is_left_out(self, monkeypatch):
        Holes(monkeypatch, lambda speed, feed, peck: None if speed > 15 else outcome(strokes=1.0))
        assert tried_in_order()[0] == [(10.0, 2e-4, "")]

    def test_a_text_that_cannot_be_read_is_left_out(self, monkeypatch):
        Holes(monkeypatch, carries(lambda *_: True), feeds=(float("nan"), 1e-4))
        assert tried_in_order()[0] == [(20.0, 1e-4, "")]

    def test_each_is_what_it_says(self, monkeypatch):
        Holes(monkeypatch, carries(lambda *_: True))
        (one,) = tried_in_order()[1]
        assert one.texts == (("spindle", "1200 rpm"), ("feed", "0.2 mm"), ("peck", ""))
        assert (one.passes, one.seconds, one.burden) == (2, 30.0, (0, 0, 0))
        Holes(monkeypatch, lambda *_: outcome())
        (one,) = tried_in_order()[1]
        assert (one.passes, one.seconds) == (1, 0.0)

    def test_a_deep_hole_in_one_go_is_not_clean(self, monkeypatch):
        Holes(monkeypatch, lambda *_: outcome(strokes=1.0, hole_depth=30 * MM))
        found, all_of_it = tried_in_order()
        assert found[-1] == (20.0, 2e-4, "9 mm")
        assert [one.burden for one in all_of_it] == [(0, 1, 0)] * 4 + [(0, 0, 0)]


class TestDeepHole:
    """In pecks from three diameters on from solid, from five in a hole that is there (a
    tap and drill maker's printed tips).
    """

    def says(self, deep, fields=None, plays=DRILL, **more):
        fields = fields or drill()
        return of_drilling(
            plays,
            outcome(fields=fields, hole_depth=None if deep is None else deep * MM),
            replace(BENCH, **more),
        )

    @pytest.mark.parametrize(("deep", "says"), [(18, 0), (18.01, 1), (60, 1), (2, 0), (None, 0)])
    def test_from_solid(self, deep, says):
        assert self.says(deep) == says

    @pytest.mark.parametrize(("deep", "says"), [(30, 0), (30.01, 1), (18.01, 0)])
    def test_in_a_hole(self, deep, says):
        assert self.says(deep, pilot=3 * MM) == says
        assert self.says(deep, plays=replace(DRILL, opens=True)) == says

    def test_not_in_pecks_nor_with_another_tool(self):
        assert self.says(60, drill(peck="6")) == 0
        assert self.says(60, plays=replace(DRILL, hole="spot")) == 0
        other = drill()
        assert self.says(60, replace(other, cutter=replace(other.cutter, kind="spot drill"))) == 0
        assert self.says(60, replace(other, cutter=replace(other.cutter, diameter=None))) == 0
        plain = SimpleNamespace(cutter=other.cutter)
        assert self.says(60, plain) == 1
