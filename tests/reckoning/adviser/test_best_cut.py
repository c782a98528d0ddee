"""What is written into a step that stands: what is asked for, what is changed, and
what is left because it is as good.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.quantity import Quantity
from jobsheet.operations.shared.advice import Advice
from jobsheet.reckoning.adviser import best_cut as module
from jobsheet.reckoning.adviser.best_cut import advice_on, best_cut, question, unchosen
from jobsheet.reckoning.what_if import Tried
from tests.reckoning.adviser.made_up import advised_of, limit, outcome
from tests.reckoning.steps import around, step

MM = 1e-3


def side(**texts):
    usual = {
        "cutter": "end mill 10 mm, 4 teeth", "width": "4", "depth": "6", "feed_per_tooth": "0.05", "spindle": "560 rpm",
        "layer": "2", "cut": "2",
    }  # fmt: skip
    return step("side-mill", **(usual | texts))


def face(**texts):
    usual = {
        "cutter": "end mill 20 mm, 4 teeth",
        "depth": "2",
        "feed_per_tooth": "0.05",
        "spindle": "560 rpm",
        "width": "10",
    }
    return step("face", **(usual | texts))


def drill(**texts):
    usual = {
        "cutter": "drill 6 mm",
        "at": "10, 10",
        "depth": "12",
        "feed": "0.1",
        "spindle": "560 rpm",
        "peck": "3",
    }
    return step("drill", **(usual | texts))


# --- what is asked for ---


class TestUnchosen:
    """What a person typed for speed, feed, layer, width counts for nothing; all else is theirs."""

    def without(self, one, *pinned):
        return unchosen(one.kind, one.fields, frozenset(pinned))

    def test_a_side(self):
        got = self.without(side(cutting_speed="20 m/min", leave="0.2", what="My words", note="Mind"))
        assert (got.spindle, got.layer, got.cut, got.cutting_speed, got.feed) == (None,) * 5
        assert got.feed_per_tooth.value == pytest.approx(0.1e-3)
        assert (got.what, got.note) == ("", "")
        assert got.width.value == pytest.approx(4 * MM)
        assert got.leave.value == pytest.approx(0.2 * MM)

    def test_what_is_chosen_already_makes_no_other_question(self):
        plain, other = (
            side(),
            side(spindle="320 rpm", feed_per_tooth="0.02", layer="3", cut="1", what="Other", note="Note"),
        )
        assert self.without(plain) == self.without(other)
        assert self.without(plain) != self.without(side(depth="7"))
        assert self.without(drill()) == self.without(drill(feed="0.05", spindle="320 rpm"))
        assert self.without(drill()) != self.without(drill(peck="2"))
        assert self.without(face()) == self.without(face(width="8"))

    def test_the_width_of_a_face_is_chosen_and_that_of_a_wall_is_not(self):
        assert self.without(face()).width is None
        assert self.without(side()).width is not None

    def test_a_hole(self):
        got = self.without(drill())
        assert got.spindle is None
        assert got.feed.value == pytest.approx(0.1e-3)
        assert got.peck.value == pytest.approx(3 * MM)

    def test_what_is_pinned_stays(self):
        got = self.without(side(cutting_speed="20 m/min"), "layer", "feed_per_tooth", "cutting_speed")
        assert got.layer.value == pytest.approx(2 * MM)
        assert got.feed_per_tooth.value == pytest.approx(0.05 * MM)
        assert got.cutting_speed is not None
        assert got.cut is None
        assert self.without(face(), "width").width.value == pytest.approx(10 * MM)
        assert self.without(drill(feed="0.07"), "feed").feed.value == pytest.approx(0.07 * MM)

    def test_with_a_typed_feed_of_the_table_no_feed_per_tooth_stands_beside_it(self):
        got = self.without(side(feed_per_tooth="", feed="100 mm/min"), "feed")
        assert got.feed.value == pytest.approx(100 * MM / 60)
        assert got.feed_per_tooth is None
        both = self.without(side(feed="100 mm/min"), "feed", "feed_per_tooth")
        assert both.feed_per_tooth.value == pytest.approx(0.05 * MM)

    def test_the_question_holds_what_is_read_and_no_more(self):
        one = side(length="50")
        wide, narrow = around("bench-mill-b-1"), around("bench-mill-b-1", extent=(0.3, 0.2, 0.1))
        assert question(one, wide) != question(one, around("bench-mill-b-1", "304"))
        assert question(face(), wide) != question(face(), narrow)
        assert question(one, replace(wide, wound=1e-3)) == question(one, wide)
        assert question(one, wide, frozenset({"cut"}))[3] == {"cut"}


class TestOfWhat:
    @pytest.mark.parametrize(
        ("kind", "texts"),
        [
            ("bench-step", {"what": "File"}),
            ("side-mill", {"cutter": "end mill, 4 teeth", "width": "4", "depth": "6"}),
            ("drill", {"cutter": "drill", "at": "10, 10", "depth": "12"}),
            ("hand-tap", {"method": "by hand", "cutter": "hand tap M6", "at": "10, 10", "depth": "12", "thread": "M6", "hole": "5"}),
            ("tap", {"method": "under power", "cutter": "tap M6", "at": "10, 10", "depth": "12", "thread": "M6", "hole": "5", "spindle": "180 rpm"}),
            ("bore", {"cutter": "boring bar 8 mm, 30 mm out", "at": "10, 10", "depth": "12", "to": "20", "hole": "18", "feed": "0.05"}),
            ("saw-cut", {"off": "10 mm"}),
        ],
    )  # fmt: skip
    def test_of_what_is_not_fed_or_has_no_size_there_is_none(self, kind, texts):
        from jobsheet.operations.registry import kind as kind_of

        names = {one.name for one in kind_of(kind).entries}
        one = step(kind, **{name: text for name, text in texts.items() if name in names})
        assert best_cut(one, around("bench-mill-b-1")) is None
        assert advice_on(one, around("bench-mill-b-1")) is None

    def test_without_teeth_there_is_none(self):
        assert best_cut(side(cutter="end mill 10 mm"), around("bench-mill-b-1")) is None

    def test_what_is_pinned_is_not_among_the_values(self):
        names = {one.name for one in best_cut(side(), around("bench-mill-b-1")).values}
        assert names == {"spindle", "feed_per_tooth", "cut", "layer"}
        pinned = best_cut(side(), around("bench-mill-b-1"), pinned=frozenset({"spindle", "layer"}))
        assert {one.name for one in pinned.values} == {"feed_per_tooth", "cut"}
        assert pinned.fields.layer == side().fields.layer
        assert pinned.fields.spindle == side().fields.spindle

    def test_the_skin_is_the_setting_s_where_none_is_said(self):
        """4 mm of a wall in one cut or two: under 3 mm of skin only in one."""
        setting = around("bench-mill-b-1")
        one = step("face", cutter="end mill 20 mm, 4 teeth", depth="2", feed_per_tooth="0.05")
        told = best_cut(one, setting, skin=1.5 * MM)
        assert told == best_cut(one, replace(setting, skin=1.5 * MM))
        assert told.fields.depth.value / told.found.value("layers") >= 1.5 * MM * (1 - 1e-6)
        assert best_cut(one, replace(setting, skin=1.5 * MM), skin=0.5 * MM) == best_cut(
            one, setting, skin=0.5 * MM
        )

    def test_its_passes_and_seconds_are_its_figures(self):
        found = best_cut(side(), around("bench-mill-b-1"))
        assert found.passes == found.found.value("passes")
        assert found.seconds == found.found.value("cutting_time")
        assert found.fields == found.found.fields


# --- what is written ---

ADVISED = {"spindle": "320 rpm", "feed_per_tooth": "0.08", "layer": "3", "cut": ""}


@pytest.fixture
def world(monkeypatch):
    """The adviser's answer and what comes of any fields, made up: by default
    everything goes, in one pass and a minute.
    """

    class World:
        texts = ADVISED
        kind = staticmethod(side)
        rule = staticmethod(lambda fields: outcome(passes=1, cutting_time=60.0))
        passes, seconds = 1, 60.0
        skins: list[float] = []  # noqa: RUF012  made anew for each

        def advised(self, operation, setting, skin=0.0, pinned=frozenset()):
            self.skins.append(skin)
            fields = type(self).kind(**{"feed": "", "cutting_speed": "", **self.texts}).fields
            values = tuple(Advice(name, text, "why", "source") for name, text in self.texts.items())
            found = replace(self.rule(fields), fields=fields)
            return advised_of(found, values=values, fields=fields, passes=self.passes, seconds=self.seconds)

        def write(self, one, **more):
            return advice_on(one, around("bench-mill-b-1"), **more)

    made = World()
    World.skins = []
    monkeypatch.setattr(module, "best_cut", made.advised)
    monkeypatch.setattr(
        module, "tried", lambda kind, fields, setting: replace(made.rule(fields), fields=fields)
    )
    return made


def over_if(test, share=1.2, otherwise="expected"):
    return lambda fields: outcome(
        limit("beyond", share) if test(fields) else limit(otherwise), passes=1, cutting_time=60.0
    )


class TestAdvice:
    def test_where_the_step_is_as_good_nothing_is_written(self, world):
        assert world.write(side()).edits == ()

    def test_only_what_makes_it_better(self, world):
        world.rule = over_if(lambda fields: fields.spindle.value > 6)
        changed = world.write(side())
        assert changed.edits == (("spindle", "320 rpm"),)
        assert changed.fields == replace(side().fields, spindle=Quantity(320 / 60, "320 rpm"))
        assert changed.found.carried

    def test_what_stands_as_advised_is_not_written(self, world):
        world.rule = over_if(
            lambda fields: fields.spindle.value > 6 or fields.feed_per_tooth.value < 0.06 * MM
        )
        assert dict(world.write(side(spindle="320 rpm")).edits) == {"feed_per_tooth": "0.08"}

    def test_speed_stays_first_then_feed_and_layers_give_way(self, world):
        """Either a slower spindle or a thinner layer would do: the layer is tried first, what is
        kept is the speed that stood last.
        """
        world.rule = over_if(lambda fields: fields.spindle.value > 6 and fields.layer.value < 2.5 * MM)
        assert len(world.write(side()).edits) == 1

    def test_an_empty_field_is_written_and_a_typed_one_emptied(self, world):
        world.rule = over_if(lambda fields: fields.cut is not None or fields.layer is None)
        assert dict(world.write(side(layer="")).edits) == {"cut": "", "layer": "3"}
        assert dict(world.write(side(cut="")).edits) == {}

    def test_a_micrometre_counts_and_a_thousandth_of_it_does_not(self, world):
        world.rule = over_if(lambda fields: fields.layer.value < 3 * MM - 1e-12)
        assert dict(world.write(side(layer="2.999")).edits) == {"layer": "3"}
        assert "layer" not in dict(world.write(side(layer="2.9999995")).edits)

    def test_an_edge_is_worse_than_none(self, world):
        world.rule = lambda fields: outcome(
            limit("tight" if fields.layer.value < 2.5 * MM else "expected"), passes=1, cutting_time=60.0
        )
        assert dict(world.write(side()).edits) == {"layer": "3"}

    def test_what_cannot_be_reckoned_is_changed(self, world):
        world.rule = lambda fields: (
            Tried(fields=fields, setting=around("bench-mill-b-1"), problem="No.") if fields.layer.value < 2.5 * MM else outcome(passes=1, cutting_time=60.0)
        )  # fmt: skip
        assert dict(world.write(side()).edits) == {"layer": "3"}

    def test_no_answer_no_advice(self, monkeypatch):
        monkeypatch.setattr(module, "best_cut", lambda *_, **__: None)
        assert advice_on(side(), around("bench-mill-b-1")) is None

    def test_a_pass_more_or_a_tenth_more_time_is_worse(self, world):
        def rule(passes, seconds):
            return lambda fields: outcome(
                passes=passes if fields.layer.value < 2.5 * MM else 2, cutting_time=seconds if fields.layer.value < 2.5 * MM else 60.0
            )  # fmt: skip

        world.passes = 2
        for passes, seconds, changes in (
            (2, 60.0, False),
            (3, 60.0, True),
            (1, 60.0, False),
            (2, 66.0, False),
            (2, 66.1, True),
            (None, None, False),
        ):
            world.rule = rule(passes, seconds)
            assert bool(world.write(side()).edits) is changes, (passes, seconds)

    def test_a_finishing_pass_need_not_be_quick(self, world):
        world.rule = lambda fields: outcome(
            passes=1, cutting_time=600.0 if fields.layer.value < 2.5 * MM else 60.0
        )
        assert world.write(side()).edits
        light = side(width="0.4")
        assert world.write(light).edits == ()

    def test_strokes_of_a_hole_are_no_passes(self, world):
        world.kind, world.texts = None, {"spindle": "320 rpm"}
        type(world).kind = staticmethod(drill)
        world.__dict__.pop("kind")
        world.rule = lambda fields: outcome(passes=9 if fields.spindle.value > 6 else 1, cutting_time=60.0)
        assert world.write(drill()).edits == ()

    def test_where_nothing_goes_as_near_is_as_good(self, world):
        """1.2 and five in a hundred more."""
        for share, changes in ((1.26, False), (1.27, True), (1.0, False)):
            world.rule = lambda fields, share=share: outcome(
                limit("beyond", share if fields.layer.value < 2.5 * MM else 1.2), passes=1, cutting_time=60.0
            )
            assert bool(world.write(side()).edits) is changes, share

    def test_where_all_goes_nearness_does_not_count(self, world):
        world.rule = lambda fields: outcome(
            limit("expected", 0.9 if fields.layer.value < 2.5 * MM else 0.1), passes=1, cutting_time=60.0
        )
        assert world.write(side()).edits == ()

    def test_a_remark_counts_too(self, world):
        """A skin of 3 mm under a wall: a width of 2 stays within it."""
        world.rule = lambda fields: outcome(
            passes=1, cutting_time=60.0, width_of_cut=2 * MM if fields.cut is not None else 4 * MM
        )
        assert world.write(side()).edits == ()
        assert dict(world.write(side(), skin=3 * MM).edits) == {"cut": ""}
        assert world.skins[-2:] == [0.0, 3 * MM]
        skinned = replace(around("bench-mill-b-1"), skin=3 * MM)
        assert dict(advice_on(side(), skinned).edits) == {"cut": ""}


class TestTwoWaysOfSayingTheSame:
    """A feed of the table gives way to one per tooth, a cutting speed to a
    spindle, both at once or neither.
    """

    def test_a_feed_of_the_table_gives_way_with_the_one_per_tooth(self, world):
        world.rule = over_if(lambda fields: fields.feed is not None)
        changed = world.write(side(feed_per_tooth="", feed="900 mm/min"))
        assert dict(changed.edits) == {"feed": "", "feed_per_tooth": "0.08"}
        assert changed.fields.feed is None

    def test_it_stays_where_it_is_as_good(self, world):
        changed = world.write(side(feed_per_tooth="", feed="90 mm/min"))
        assert changed.edits == ()
        assert changed.fields.feed is not None

    def test_never_only_one_of_them(self, world):
        world.rule = over_if(lambda fields: (fields.feed is None) == (fields.feed_per_tooth is None))
        for feed in ("90 mm/min", "900 mm/min"):
            changed = world.write(side(feed_per_tooth="", feed=feed))
            assert (changed.fields.feed is None) != (changed.fields.feed_per_tooth is None)

    def test_a_cutting_speed_gives_way_to_a_spindle(self, world):
        world.rule = over_if(lambda fields: fields.cutting_speed is not None)
        changed = world.write(side(spindle="", cutting_speed="90 m/min"))
        assert dict(changed.edits) == {"cutting_speed": "", "spindle": "320 rpm"}
        said = next(one for one in changed.values if one.name == "cutting_speed")
        assert said.why == "the spindle and the feed per tooth say it"

    def test_a_cutting_speed_beside_a_spindle_that_stands_is_emptied_alone(self, world):
        world.rule = over_if(lambda fields: fields.cutting_speed is not None)
        assert dict(world.write(side(spindle="320 rpm", cutting_speed="90 m/min")).edits) == {
            "cutting_speed": ""
        }

    def test_what_is_empty_is_not_emptied(self, world):
        world.rule = over_if(lambda fields: fields.spindle.value > 6)
        assert set(dict(world.write(side()).edits)) == {"spindle"}

    def test_a_deep_hole_in_one_go_draws_a_remark(self, world):
        """30 mm of a drill of 6 are five diameters: in pecks from three on (a
        tap and drill maker's printed tips).
        """
        type(world).kind = staticmethod(drill)
        world.texts = {"spindle": "320 rpm", "peck": "4"}
        world.rule = lambda fields: outcome(cutting_time=60.0, hole_depth=30 * MM)
        assert dict(world.write(drill(peck="")).edits) == {"peck": "4"}
        assert world.write(drill(peck="5")).edits == ()

    def test_the_feed_of_a_drill_is_its_own(self, world):
        type(world).kind = staticmethod(drill)
        world.texts = {"spindle": "320 rpm", "feed": "0.05"}
        world.rule = over_if(lambda fields: fields.feed.value > 0.06 * MM)
        assert dict(world.write(drill()).edits) == {"feed": "0.05"}
