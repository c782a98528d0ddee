"""What of a step is the adviser's, what is given back, and when it is asked."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import AS_RECOMMENDED
from jobsheet.model.quantity import Quantity
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.adviser import best_cut, left_empty
from jobsheet.reckoning.adviser.left_empty import (
    NOTHING,
    Filler,
    chosen_of,
    filled,
    filled_texts,
    given_back,
    left_of,
    with_values,
)
from tests.reckoning.adviser.made_up import advised_of
from tests.reckoning.steps import around, step

SETTING = around("bench-mill-b-1")


def left(one, empty=""):
    """By their names, sorted."""
    found = left_of(replace(one, empty=empty))
    assert not set(found.names) & found.pinned
    return sorted(found.names), sorted(found.pinned)


def side(**more):
    return step("side-mill", **{"cutter": "end mill 10 mm, 4 teeth", "width": "4", "depth": "6", **more})


def drill(**more):
    return step("drill", **{"cutter": "drill 6 mm", "at": "10, 10", "depth": "12", **more})


def ream(**more):
    return step("ream", **{"cutter": "reamer 8 mm, 4 flutes", "at": "10, 10", "depth": "12", **more})


class TestWhatIsTheAdvisers:
    def test_all_that_is_empty_where_no_feed_is_stated(self):
        assert left(side()) == (["cut", "feed_per_tooth", "layer", "spindle"], [])
        assert left(side(layer="2", spindle="320 rpm")) == (["cut", "feed_per_tooth"], ["layer", "spindle"])
        assert left(drill(peck="2")) == (["feed", "spindle"], ["peck"])

    def test_nothing_where_the_feed_is_stated(self):
        for one in (side(feed_per_tooth="0.05"), side(feed="100 mm/min"), drill(feed="0.1")):
            assert left_of(one) == NOTHING

    def test_unless_it_says_so(self):
        assert left(side(feed_per_tooth="0.05"), AS_RECOMMENDED) == (
            ["cut", "layer", "spindle"],
            ["feed_per_tooth"],
        )
        assert left(drill(feed="0.1"), AS_RECOMMENDED) == (["peck", "spindle"], ["feed"])

    def test_a_feed_of_the_table_says_the_one_per_tooth(self):
        assert left(side(feed="100 mm/min", layer="2"), AS_RECOMMENDED) == (
            ["cut", "spindle"],
            ["feed", "layer"],
        )

    def test_a_cutting_speed_says_the_spindle(self):
        assert left(side(cutting_speed="20 m/min")) == (["cut", "feed_per_tooth", "layer"], ["cutting_speed"])
        assert left(drill(cutting_speed="20 m/min")) == (["feed", "peck"], ["cutting_speed"])

    def test_a_reamer_starts_by_its_edges_unless_it_says_so(self):
        assert left_of(ream()) == NOTHING
        assert left(ream(), AS_RECOMMENDED) == (["feed", "spindle"], [])
        if any(entry.name == "feed_per_edge" for entry in kind_of("ream").entries):
            assert left_of(replace(ream(feed_per_edge="0.02"), empty=AS_RECOMMENDED)) == NOTHING

    def test_nothing_of_what_has_no_size_or_is_not_fed(self):
        assert left_of(side(cutter="end mill, 4 teeth")) == NOTHING
        assert left_of(drill(cutter="drill")) == NOTHING
        assert left_of(step("bench-step", what="File")) == NOTHING
        assert left_of(step("saw-cut", off="10 mm")) == NOTHING
        bore = step(
            "bore",
            cutter="boring bar 8 mm, 30 mm out",
            at="10, 10",
            depth="12",
            to="20",
            hole="18",
            feed="0.05",
        )
        assert left_of(replace(bore, empty=AS_RECOMMENDED)) == NOTHING

    @pytest.mark.parametrize(
        ("kind", "names"),
        [
            ("side-mill", ("spindle", "feed_per_tooth", "layer", "cut")), ("face", ("spindle", "feed_per_tooth", "layer", "width")),
            ("slot", ("spindle", "feed_per_tooth", "layer")), ("pocket", ("spindle", "feed_per_tooth", "layer")),
            ("fly-cut", ("spindle", "feed_per_tooth", "layer")), ("edge-chamfer", ("spindle", "feed_per_tooth")),
            ("drill", ("spindle", "feed", "peck")), ("enlarge", ("spindle", "feed", "peck")), ("plunge", ("spindle", "feed", "peck")),
            ("ream", ("spindle", "feed")), ("counterbore", ("spindle", "feed")), ("spot-drill", ("spindle", "feed")),
            ("bore", ()), ("tap", ()), ("saw-cut", ()), ("pick-up-edge", ()), ("bench-step", ()),
        ],
    )  # fmt: skip
    def test_what_it_may_choose_of_each_kind(self, kind, names):
        fields = kind_of(kind).blank("mm")
        assert chosen_of(kind_of(kind).plays(fields), fields) == names


class TestGivenBack:
    def test_one_field_goes_back_and_the_rest_stays(self):
        one = side(layer="2", spindle="320 rpm", feed_per_tooth="0.05")
        back = given_back(one, "layer")
        assert back.fields == replace(one.fields, layer=None)
        assert back.empty == AS_RECOMMENDED

    @pytest.mark.parametrize("name", ["spindle", "cutting_speed"])
    def test_two_that_say_the_same_go_together(self, name):
        back = given_back(
            side(spindle="320 rpm", cutting_speed="20 m/min", feed_per_tooth="0.05"), name
        ).fields
        assert (back.spindle, back.cutting_speed) == (None, None)
        assert back.feed_per_tooth is not None

    @pytest.mark.parametrize("name", ["feed", "feed_per_tooth"])
    def test_so_do_the_feeds(self, name):
        for typed in ({"feed": "100 mm/min"}, {"feed_per_tooth": "0.05"}):
            back = given_back(side(spindle="320 rpm", **typed), name).fields
            assert (back.feed, back.feed_per_tooth) == (None, None)
            assert back.spindle is not None

    def test_without_a_name_all_of_them(self):
        one = side(layer="2", spindle="320 rpm", feed="100 mm/min", cut="2", cutting_speed="9 m/min")
        back = given_back(one).fields
        assert [
            getattr(back, name)
            for name in ("layer", "spindle", "feed", "feed_per_tooth", "cut", "cutting_speed")
        ] == [None] * 6
        assert back.depth == one.fields.depth

    def test_what_nobody_recommends_stays(self):
        assert given_back(side(), "depth") is None
        assert given_back(drill(), "layer") is None
        assert given_back(step("saw-cut", off="10 mm")) is None
        assert given_back(step("bench-step", what="File"), "spindle") is None
        assert roles(side()).mills == "wall"


class TestFilledTexts:
    def test_as_typed_and_in_words_where_nothing_is(self):
        one = side()
        done = side(spindle="320 rpm", feed_per_tooth="0.05 mm")
        assert filled_texts(one, done) == {
            "spindle": "320 rpm",
            "feed_per_tooth": "0.05 mm",
            "layer": "all at once",
            "cut": "all at once",
        }
        assert filled_texts(drill(), drill(feed="0.1 mm")) == {
            "spindle": "the slowest",
            "feed": "0.1 mm",
            "peck": "in one go",
        }
        face = step("face", cutter="end mill 20 mm, 4 teeth", depth="1")
        assert (
            filled_texts(face, replace(face, fields=replace(face.fields, spindle=Quantity(5.0, "300 rpm"))))[
                "width"
            ]
            == ""
        )

    def test_nothing_where_nothing_was(self):
        assert filled_texts(side(), side()) == {}


@pytest.fixture
def asked(monkeypatch):
    """Every question to the adviser, who answers 320 rpm and 0.05 mm."""
    questions = []

    def answer(operation, setting, skin=0.0, pinned=frozenset()):
        questions.append((operation, setting, pinned))
        texts = {"spindle": "320 rpm"} | (
            {"feed": "0.05 mm"} if operation.kind == "drill" else {"feed_per_tooth": "0.05 mm"}
        )
        made = (drill if operation.kind == "drill" else side)(**texts)
        return advised_of(fields=made.fields)

    monkeypatch.setattr(best_cut, "best_cut", answer)
    monkeypatch.setattr(left_empty, "_KNOWN", type(left_empty._KNOWN)())
    return questions


class TestFilled:
    def test_the_very_same_where_nothing_is_left(self, asked):
        one = side(feed_per_tooth="0.05")
        assert filled(one, SETTING) is one
        assert filled(one, SETTING, at_once=False) is one
        assert asked == []

    def test_what_is_empty_is_filled_and_what_is_typed_stays(self, asked):
        done = filled(side(layer="2", spindle="900 rpm"), SETTING)
        assert done.fields == side(layer="2", spindle="900 rpm", feed_per_tooth="0.05 mm").fields
        assert asked[0][2] == {"layer", "spindle"}

    def test_the_same_is_asked_once(self, asked):
        first = filled(side(), SETTING)
        assert filled(side(note="Mind the vice"), SETTING).fields.spindle == first.fields.spindle
        assert len(asked) == 1
        filled(side(depth="7"), SETTING)
        filled(side(), around("bench-mill-b-1", "304"))
        filled(side(), replace(SETTING, skin=1e-3))
        filled(side(layer="2"), SETTING)
        assert len(asked) == 5

    def test_with_no_time_only_what_is_known_is_said(self, asked):
        assert filled(side(), SETTING, at_once=False) is None
        assert asked == []
        known = filled(side(), SETTING)
        assert filled(side(), SETTING, at_once=False) == known

    def test_where_the_adviser_knows_nothing_the_step_stays(self, asked, monkeypatch):
        monkeypatch.setattr(best_cut, "best_cut", lambda *_, **__: asked.append(0))
        one = side()
        assert filled(one, SETTING) is one
        assert filled(one, SETTING, at_once=False) is one
        assert len(asked) == 1

    def test_the_oldest_of_many_are_forgotten(self, asked, monkeypatch):
        monkeypatch.setattr(left_empty, "_ROOM", 3)
        for depth in ("1", "2", "3", "4"):
            filled(side(depth=depth), SETTING)
        assert filled(side(depth="1"), SETTING, at_once=False) is None
        for depth in ("2", "3", "4"):
            assert filled(side(depth=depth), SETTING, at_once=False) is not None


class TestFiller:
    OLD = staticmethod(lambda: side(spindle="900 rpm", feed_per_tooth="0.01"))

    def test_without_bounds_it_asks_each_time(self, asked):
        filler = Filler(None)
        for depth in ("1", "2", "3"):
            assert filler.fill(side(depth=depth), SETTING, self.OLD()).fields.spindle.text == "320 rpm"
        assert len(asked) == 3

    def test_then_it_stands_as_before_and_waits(self, asked):
        filler = Filler(1)
        first = filler.fill(side(depth="1"), SETTING, self.OLD())
        second = filler.fill(side(depth="2"), SETTING, self.OLD())
        assert first.fields.spindle.text == "320 rpm"
        assert second.fields == replace(
            side(depth="2").fields,
            spindle=self.OLD().fields.spindle,
            feed_per_tooth=self.OLD().fields.feed_per_tooth,
        )
        assert (filler.waits(first), filler.waits(second)) == (False, True)
        assert not filler.waits(replace(second, number=99))
        assert len(asked) == 1

    def test_each_question_uses_up_one(self, asked):
        filler = Filler(2)
        done = [filler.fill(side(depth=depth), SETTING, self.OLD()) for depth in ("1", "2", "3")]
        assert [filler.waits(one) for one in done] == [False, False, True]

    def test_what_is_known_costs_no_patience(self, asked):
        filler = Filler(1)
        filled(side(depth="1"), SETTING)
        assert not filler.waits(filler.fill(side(depth="1"), SETTING, self.OLD()))
        assert not filler.waits(filler.fill(side(depth="2"), SETTING, self.OLD()))
        assert filler.waits(filler.fill(side(depth="3"), SETTING, self.OLD()))

    def test_what_never_stood_before_is_asked_all_the_same(self, asked):
        filler = Filler(0)
        for before in (None, drill(spindle="900 rpm", feed="0.1")):
            asked.clear()
            left_empty._KNOWN.clear()
            done = filler.fill(side(), SETTING, before)
            assert done.fields.spindle.text == "320 rpm"
            assert len(asked) == 1
            assert not filler.waits(done)
        assert filler.waits(filler.fill(side(depth="3"), SETTING, self.OLD()))

    def test_a_step_that_is_new_uses_patience_up_too(self, asked):
        filler = Filler(1)
        filler.fill(side(depth="1"), SETTING, None)
        assert filler.waits(filler.fill(side(depth="2"), SETTING, self.OLD()))


def test_values_of_other_fields_are_taken_for_what_is_left():
    one = side(layer="2")
    done = with_values(one, side(layer="5", spindle="320 rpm", feed_per_tooth="0.05", cut="1").fields)
    assert done.fields == side(layer="2", spindle="320 rpm", feed_per_tooth="0.05", cut="1").fields
