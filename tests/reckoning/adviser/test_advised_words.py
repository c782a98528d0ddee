"""The sentences by which a person acts on advice: every reason, rival and
other way, each where it belongs.
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.reckoning.adviser.advised_words import other_way, reasons, rivals, words_of
from tests.reckoning.adviser.made_up import candidate, limit, outcome
from tests.reckoning.steps import around

START = Suggestion(0.1e-3, 0.08e-3, 0.12e-3, "proto", False, "the table's own words")
SETTING = around("bench-mill-b-1")
FASTEST = "the fastest at or under 1.1 × the speed to start from"
SLOWEST = "the slowest there is"
SLOWER = "slower than the cutter may: a faster one carries less or asks more of the hand"


def why(name, text="x", *, found=None, start=START, speeds=(10.0, 10.0), speed=10.0, feed=0.1e-3):
    one = candidate(found, texts=((name, text),), speed=speed, feed=feed)
    (said,) = reasons(one, start, speeds, SETTING)
    assert (said.name, said.text) == (name, text)
    return said


class TestSpeed:
    """`speeds` are the fastest that was tried and the one to start from [rev/s]."""

    @pytest.mark.parametrize(
        ("speed", "fastest", "wanted", "says"),
        [
            (10.0, 10.0, 10.0, FASTEST), (11.0, 11.0, 10.0, FASTEST), (11.1, 11.1, 10.0, SLOWEST), (10.0, 10.0, None, FASTEST),
            (9.0, 10.0, 10.0, SLOWER), (9.0, 10.0, None, SLOWER), (9.0, 10.0, 5.0, SLOWER), (3.0, 3.0, 1.0, SLOWEST),
            (10.0 * (1 - 1e-12), 10.0, 10.0, FASTEST), (9.99, 10.0, 10.0, SLOWER),
        ],
    )  # fmt: skip
    def test_why(self, speed, fastest, wanted, says):
        said = why("spindle", speed=speed, speeds=(fastest, wanted))
        assert (said.why, said.source) == (says, "common-practice")


class TestFeed:
    """The hand winds 50 turns a minute at most (cutting-data 1.13)."""

    @pytest.mark.parametrize("name", ["feed_per_tooth", "feed"])
    @pytest.mark.parametrize("feed", [0.1e-3, 0.0971e-3, 0.12e-3])
    def test_the_catalogue_s_own_says_where_it_stands(self, name, feed):
        said = why(name, feed=feed)
        assert (said.why, said.source) == ("the table's own words", "proto")

    def test_just_rounded_is_the_catalogue_s_own(self):
        assert why("feed", feed=START.value * 0.97).source == "proto"

    @pytest.mark.parametrize("pace", [50 / 60, 49 / 60, 48.6 / 60])
    def test_what_the_hand_winds(self, pace):
        found = outcome(feed_per_tooth=0.05e-3, handle_pace=pace)
        said = why("feed_per_tooth", found=found, feed=0.05e-3, speed=560 / 60)
        assert said.why == "as much as a hand winds evenly at 560 rpm; by the table 0.100 mm"
        assert said.source == "common-practice"

    @pytest.mark.parametrize("pace", [48 / 60, 8 / 60, None])
    def test_what_a_limit_allows(self, pace):
        found = outcome(feed_per_tooth=0.05e-3, handle_pace=pace)
        said = why("feed_per_tooth", found=found, feed=0.05e-3)
        assert said.why == "lowered until every limit allows it; by the table 0.100 mm"
        assert said.source == "common-practice"

    def test_of_a_hole_it_is_per_turn(self):
        inch = around("bench-mill-b-1", units="in")
        one = candidate(outcome(feed_per_turn=0.05e-3), texts=(("feed", "0.002 in"),), feed=0.05e-3)
        (said,) = reasons(one, START, (10.0, 10.0), inch)
        assert said.why == "lowered until every limit allows it; by the table 0.0039 in"

    def test_nothing_is_said_where_no_table_is_known(self):
        said = why("feed", start=None)
        assert (said.why, said.source) == ("", "common-practice")


@pytest.mark.parametrize(
    ("name", "text", "figures", "says"),
    [
        ("layer", "", {"layers": 1}, "at once: every limit allows it"), ("layer", "", {}, "at once: every limit allows it"),
        ("layer", "2 mm", {"layers": 3}, "3 layers, the fewest that every limit allows"),
        ("layer", "2 mm", {"layers": 2}, "2 layers, the fewest that every limit allows"),
        ("peck", "3 mm", {}, "to clear the chips"), ("peck", "", {}, "in one go: not deep enough for pecks"),
        ("cut", "2 mm", {"passes": 6}, "6 passes in all, the fewest that go"), ("width", "9 mm", {"passes": 2}, "2 passes in all, the fewest that go"),
        ("cut", "", {"passes": 1}, "in one pass"), ("width", "9 mm", {}, "in one pass"),
    ],
)  # fmt: skip
def test_layers_pecks_and_widths(name, text, figures, says):
    said = why(name, text, found=outcome(**figures))
    assert (said.why, said.source) == (says, "common-practice")


def test_every_value_has_its_reason_in_its_order():
    texts = (("spindle", "560 rpm"), ("feed_per_tooth", "0.1 mm"), ("cut", ""), ("layer", "2 mm"))
    one = candidate(outcome(layers=2, passes=2), texts=texts)
    assert [(said.name, said.text) for said in reasons(one, START, (10.0, 10.0), SETTING)] == list(texts)


def way(speed, *, burden=(0, 0, 0), passes=1, seconds=60.0):
    return candidate(
        outcome(cutting_time=seconds), texts=(("spindle", f"{speed:g} rev"),), speed=speed, burden=burden, passes=passes, seconds=seconds
    )  # fmt: skip


def speeds_named(best, *others):
    return [text.split(" rev")[0] for text in rivals(best, (best, *others))]


class TestRivals:
    def test_two_other_speeds_the_fewest_passes_first_then_the_quickest(self):
        best = way(10)
        assert speeds_named(
            best, way(8, passes=3), way(6, passes=2, seconds=90), way(4, passes=2, seconds=80)
        ) == ["4", "6"]
        assert speeds_named(best, way(8), way(6, passes=2)) == ["8", "6"]
        assert speeds_named(best, way(8)) == ["8"]
        assert speeds_named(best) == []

    def test_one_of_each_speed_and_none_of_the_best_one_s(self):
        best = way(10)
        assert speeds_named(
            best, way(10, passes=2), way(8, passes=3), way(8, passes=2), way(6, passes=9)
        ) == ["8", "6"]
        assert rivals(best, (best, way(8, passes=2), way(8, passes=3)))[0].endswith("2 passes, 60 shown")

    def test_only_such_as_go_as_well(self):
        best = way(10, burden=(0, 0, 1))
        assert speeds_named(
            best, way(8, burden=(0, 0, 2)), way(6, burden=(0, 0, 1)), way(4, burden=(1, 0, 0))
        ) == ["6"]


class TestWords:
    """As the function's own example has it."""

    @pytest.mark.parametrize(
        ("texts", "passes", "says"),
        [
            ((("spindle", "560 rpm"), ("feed_per_tooth", "0.055 mm"), ("layer", "2 mm")), 4, "560 rpm, 0.055 mm, layer 2 mm: 4 passes, 6 shown"),
            ((("spindle", "560 rpm"), ("cut", "3 mm"), ("layer", "")), 2, "560 rpm, 3 mm wide: 2 passes, 6 shown"),
            ((("spindle", "560 rpm"), ("width", "9 mm")), 1, "560 rpm, 9 mm wide: 6 shown"),
            ((("spindle", ""), ("feed", "0.1 mm"), ("peck", "3 mm")), 1, "0.1 mm, 3 mm: 6 shown"),
        ],
    )  # fmt: skip
    def test_what_it_costs(self, texts, passes, says):
        assert words_of(candidate(outcome(cutting_time=6.0), texts=texts, passes=passes)) == says


def beyond(*names, kind="end mill", **figures):
    limits = [limit("beyond", 1.2, name) for name in names]
    return candidate(
        outcome(
            *limits,
            limit("tight", 0.9, "hand-pace"),
            fields=SimpleNamespace(cutter=SimpleNamespace(kind=kind)),
            **figures,
        )
    )


class TestOtherWay:
    def test_none_where_nothing_is_beyond(self):
        assert other_way(beyond(), skin=1e-3) == ""

    @pytest.mark.parametrize(
        ("names", "says"),
        [
            (("torque",), "A smaller cutter, a saw for the bulk, or a heavier machine"),
            (("chatter", "speed-range"), "A smaller cutter, or a machine that turns slower"),
            (("cutting-speed",), "A smaller cutter, or a machine that turns slower"),
            (("hand-pace", "cutting-speed"), "A smaller cutter, or a machine that turns slower"),
            (("hand-pace",), "A cutter with other teeth, or a machine with a power feed"),
            (("torque", "hand-pace"), "A cutter with other teeth, or a machine with a power feed"),
        ],
    )
    def test_of_milling(self, names, says):
        assert other_way(beyond(*names)) == says

    @pytest.mark.parametrize(
        ("kind", "says"),
        [
            (
                "drill",
                "Drill in stages, or bore what is left; a smaller drill first, or a machine with more torque",
            ),
            ("slot drill", "Drill a hole first and let the cutter down into it, or a smaller cutter"),
            ("end mill", "Drill a hole first and let the cutter down into it, or a smaller cutter"),
            ("reamer", "A smaller tool, or a machine with more torque and a slower spindle"),
        ],
    )
    def test_of_a_hole_whatever_its_skin_and_its_limit(self, kind, says):
        for name in ("torque", "cutting-speed"):
            assert other_way(beyond(name, kind=kind, feed_per_turn=1e-4), skin=1e-3) == says

    def test_under_a_skin_it_says_how_deep_that_is(self):
        said = other_way(beyond("torque"), skin=1e-3)
        assert said.startswith("No width goes under the skin (1 mm deep at least) with every limit: ")
        assert "grinding" in said
        assert "(0.5 mm deep" in other_way(beyond("cutting-speed"), skin=0.5e-3)
