"""Which of several cuts is preferred (issue "Advice that can be acted on", 1): table
by table, and against plain sorting.
"""

from __future__ import annotations

import random
from types import SimpleNamespace

import pytest

from jobsheet.reckoning.adviser.best_cut import chosen, finishes, worst_of
from tests.reckoning.adviser.made_up import advised_of, candidate, limit, outcome
from tests.reckoning.steps import around, step

OVER, REMARK, EDGE = (1, 0, 0), (0, 1, 0), (0, 0, 1)


def best(*candidates):
    """Whichever way round they come."""
    found = chosen(candidates)
    assert chosen(candidates[::-1]) == found
    return candidates.index(found)


def test_nothing_beyond_then_no_remark_then_nothing_at_its_edge_whatever_it_costs():
    dear = {"passes": 60, "seconds": 9000.0, "speed": 1.0, "feed": 1e-5}
    assert best(candidate(**dear), candidate(burden=EDGE)) == 0
    assert best(candidate(burden=EDGE, **dear), candidate(burden=REMARK)) == 0
    assert best(candidate(burden=(0, 0, 9), **dear), candidate(burden=REMARK)) == 0
    assert best(candidate(burden=REMARK, **dear), candidate(burden=OVER)) == 0
    assert best(candidate(burden=OVER, **dear), candidate(burden=(2, 0, 0))) == 0


def test_the_fewest_passes_first():
    assert best(candidate(passes=2, seconds=89.0), candidate(passes=3, seconds=60.0)) == 0


def test_more_passes_that_save_a_third_of_the_time_are_better():
    """60 s against 90 s saves just a third: only more is worth it (factor
    1.5, common practice, no source).
    """
    assert best(candidate(passes=2, seconds=90.0), candidate(passes=3, seconds=60.0)) == 0
    assert best(candidate(passes=2, seconds=90.1), candidate(passes=3, seconds=60.0)) == 1


@pytest.mark.parametrize(("fewest", "most"), [(1, 2), (2, 4), (3, 5), (4, 7), (10, 16)])
def test_half_as_many_passes_again_and_one_at_most(fewest, most):
    slow = candidate(passes=fewest, seconds=1000.0)
    assert best(slow, candidate(passes=most, seconds=1.0)) == 1
    assert best(slow, candidate(passes=most + 1, seconds=1.0)) == 0


def test_of_more_passes_each_must_save_on_the_last():
    three, four = candidate(passes=3, seconds=50.0), candidate(passes=4, seconds=34.0)
    assert best(candidate(passes=2, seconds=100.0), three, four) == 1
    assert best(candidate(passes=2, seconds=100.0), three, candidate(passes=4, seconds=33.0)) == 2


def test_more_passes_are_as_quick_as_the_quickest_of_them():
    few, slow = candidate(passes=2, seconds=100.0), candidate(passes=3, seconds=500.0)
    assert best(few, slow, candidate(passes=3, seconds=60.0)) == 2
    four = candidate(passes=4, seconds=45.0)
    assert best(few, slow, candidate(passes=3, seconds=60.0), four) == 2


def test_of_as_many_passes_the_quickest_and_within_a_tenth_the_fastest():
    quick, fast = candidate(seconds=100.0, speed=5.0), candidate(seconds=110.0, speed=9.0)
    assert best(quick, fast) == 1
    assert best(quick, candidate(seconds=110.1, speed=9.0)) == 0
    assert best(candidate(seconds=100.0, speed=9.0), candidate(seconds=95.0, speed=5.0)) == 0


def test_of_one_speed_the_highest_feed_and_of_one_feed_the_quickest():
    assert best(candidate(seconds=60.0, feed=1e-4), candidate(seconds=61.0, feed=2e-4)) == 1
    assert best(candidate(seconds=61.0), candidate(seconds=60.0)) == 1


def beyond(share, **more):
    return candidate(outcome(limit("beyond", share), fields=candidate().fields), burden=OVER, **more)


class TestNothingGoes:
    def test_what_is_over_by_least(self):
        assert best(beyond(1.2, passes=9, seconds=900.0), beyond(1.3)) == 0

    def test_five_in_a_hundred_more_are_as_near(self):
        near, far = beyond(1.2, passes=2), beyond(1.2 * 1.05)
        assert best(near, far) == 1
        assert best(near, beyond(1.2 * 1.051)) == 0

    def test_where_all_goes_shares_do_not_count(self):
        heavy = candidate(outcome(limit("expected", 0.9), fields=candidate().fields))
        assert (
            best(candidate(outcome(limit("expected", 0.1), fields=candidate().fields), passes=2), heavy) == 1
        )

    def test_the_worst_is_the_largest_of_what_is_beyond(self):
        found = outcome(
            limit("beyond", 1.2), limit("beyond", 1.4, "power"), limit("cut before", 3.0, "chatter")
        )
        assert worst_of(found) == 1.4
        assert worst_of(outcome(limit("tight", 0.9))) == 0


def face(deep, machine="bench-mill-b-1", cutter="face mill 50 mm, 4 teeth, carbide", layers=1, **more):
    """A face so deep in all [mm]."""
    fields = step("face", cutter=cutter, depth=f"{deep}", feed_per_tooth="0.05").fields
    return candidate(outcome(fields=fields, setting=around(machine), layers=layers), **more)


class TestDeepFace:
    """A face mill goes 1.5 mm deep on a bench machine and 4 mm on a knee mill (holding
    and more kinds, C4: common practice).
    """

    @pytest.mark.parametrize(("machine", "most"), [("bench-mill-b-1", 1.5), ("knee-mill-k-2", 4.0)])
    def test_one_pass_more_is_better_than_deeper(self, machine, most):
        shallow = face(1, machine, passes=2, seconds=100.0)
        assert best(face(most, machine, seconds=100.0), shallow) == 0
        assert best(face(most + 0.01, machine, seconds=100.0), shallow) == 1
        assert best(face(most + 0.01, machine, layers=None, seconds=100.0), shallow) == 1
        assert best(face(2 * most, machine, layers=2, seconds=100.0), shallow) == 0

    def test_two_passes_more_are_not(self):
        assert best(face(2, seconds=100.0), face(1, passes=3, seconds=100.0)) == 0

    def test_other_cutters_go_as_deep_as_they_carry(self):
        end_mill = "end mill 20 mm, 4 teeth"
        assert (
            best(face(3, cutter=end_mill, seconds=100.0), face(1, cutter=end_mill, passes=2, seconds=100.0))
            == 0
        )

    def test_a_class_of_which_nothing_is_said_has_no_such_depth(self):
        from msgspec.structs import replace

        one = face(9, seconds=100.0)
        found = one.found
        odd = replace(found.setting, machine=replace(found.setting.machine, stiffness_class="planer"))
        one = replace(one, found=replace(found, setting=odd))
        assert best(one, face(1, passes=2, seconds=100.0)) == 0

    def test_where_one_of_the_fewest_is_shallow_it_is_taken(self):
        assert best(face(3, speed=20.0, seconds=100.0), face(1, speed=5.0, seconds=105.0)) == 1
        assert best(face(3, seconds=100.0), face(1, seconds=90.0), face(1, passes=2, seconds=70.0)) == 1

    def test_of_the_shallow_ones_the_quickest(self):
        assert (
            best(
                face(3, seconds=10.0),
                face(1, passes=2, seconds=100.0),
                face(1, passes=2, seconds=300.0, speed=99.0),
            )
            == 1
        )


@pytest.mark.parametrize("seed", range(40))
def test_against_plain_sorting(seed):
    """Where no way saves as much, the whole preference is one sorting: burden, passes, then
    speed and feed of the quickest tenth.
    """
    dice = random.Random(seed)
    known = [
        candidate(
            burden=(0, dice.randrange(2), dice.randrange(3)), passes=passes, seconds=100.0 + 10 * passes + dice.uniform(0, 30),
            speed=dice.choice((5.0, 9.0, 15.0)), feed=dice.choice((1e-4, 2e-4)),
        )
        for passes in [dice.randrange(1, 4) for _ in range(12)]
    ]  # fmt: skip
    least = min((one.burden, one.passes) for one in known)
    same = [one for one in known if (one.burden, one.passes) == least]
    quickest = min(one.seconds for one in same)
    near = [one for one in same if one.seconds <= 1.1 * quickest]
    assert chosen(known) == max(near, key=lambda one: (one.speed, one.feed, -one.seconds))


class TestAdvised:
    def test_it_clears_where_nothing_is_beyond_and_is_easy_where_nothing_is_at_its_edge(self):
        for words, clears, easy in (
            (("expected",), True, True), (("tight",), True, False), (("not tried",), True, False), (("beyond", "expected"), False, False),
            ((), True, True),
        ):  # fmt: skip
            found = advised_of(outcome(*(limit(one) for one in words)))
            assert (found.clears, found.easy) == (clears, easy), words

    def test_what_stays_is_beyond_or_else_at_its_edge(self):
        over, edge, fine, new = limit("beyond"), limit("tight"), limit("expected"), limit("not tried")
        assert advised_of(outcome(edge, over, fine)).stays == (over,)
        assert advised_of(outcome(edge, fine, new)).stays == (edge, new)
        assert advised_of(outcome(fine)).stays == ()


class TestFinishing:
    """0.25 mm off a face, 5 % of the cutter off a wall that is then to size
    (cutting-data section 3.4, common practice).
    """

    def says(self, mills, **values):
        names = {"depth": None, "width": None, "leave": None} | values
        fields = SimpleNamespace(
            cutter=SimpleNamespace(diameter=0.02),
            **{
                name: SimpleNamespace(value=value) if name in values else None
                for name, value in names.items()
            },
        )
        return finishes(SimpleNamespace(mills=mills), fields)

    @pytest.mark.parametrize(
        ("depth", "says"), [(0.25e-3, True), (0.251e-3, False), (0.1e-3, True), (None, False)]
    )
    def test_a_face(self, depth, says):
        assert self.says("flat", depth=depth) is says

    @pytest.mark.parametrize(("width", "says"), [(1e-3, True), (1.001e-3, False), (0.2e-3, True)])
    def test_a_wall(self, width, says):
        assert self.says("wall", width=width, depth=0.01) is says
        assert self.says("wall", width=width, depth=0.01, leave=0.1e-3) is False

    def test_nothing_else(self):
        assert self.says("groove", depth=0.1e-3, width=0.1e-3) is False
        assert self.says("", depth=0.1e-3) is False
