"""Fewest moves to a right order, against all orders tried out."""

from __future__ import annotations

from itertools import permutations
from random import Random

from jobsheet.lessons.moves import least, tallied, together, two_level
from tests.lessons.test_precedence import BORE, order


def test_two_set_ups_without_any_pair():
    """Check 5: abc | xyz, `axbycz`: plain 0, together 2; 72 orders."""
    inside = {"1": order("abc", ""), "2": order("xyz", "")}
    set_ups = order("12", "")
    assert order("abcxyz", "").moves("axbycz") == 0
    assert together(set_ups, inside, "axbycz") == 2
    assert (set_ups.count(), inside["1"].count(), inside["2"].count()) == (2, 6, 6)


def test_two_set_ups_with_one_pair_between_them():
    """Check 6: ab | xy with ax. `xyab`: plain 1, together 2, two-level 1. `axyb`: 0, 1."""
    inside = {"1": order("ab", ""), "2": order("xy", "")}
    set_ups = order("12", "12")
    plain = order("abxy", "ax")
    assert plain.moves("xyab") == 1
    assert together(set_ups, inside, "xyab") == 2
    assert two_level(set_ups, inside, {"2": "xy", "1": "ab"}) == 1
    assert plain.moves("axyb") == 0
    assert together(set_ups, inside, "axyb") == 1


def test_a_step_missing_and_one_too_many():
    """Check 7: the bore without its spot, with a Q, and the reamer too early: 1 + 1 + 1."""
    found = tallied(BORE, "ZPDQRECGB")
    assert (found.moves, found.missing, found.extra, found.total) == (1, ("S",), ("Q",), 3)


def test_the_wrong_one_of_a_pair_stands_for_its_twin():
    found = tallied(BORE, "ZSPDTRCGB", {"T": "E"})
    assert (found.moves, found.missing, found.chosen, found.total) == (0, (), ("T",), 1)


def test_where_two_ways_are_right_the_nearer_counts():
    spotted, centred = order("ZSD", "ZS SD"), order("ZCD", "ZC CD")
    assert least((spotted, centred), "ZCD").total == 0
    assert least((spotted, centred), "CZD").total == 1


def best_by_trying(set_ups, inside, answer):
    """Of all right orders with set-ups together the longest run that is shared."""
    worst = len(answer)

    def rights(precedence):
        return [one for one in permutations(precedence.items) if precedence.moves(one) == 0]

    whole = [[]]
    for arranged in rights(set_ups):
        lists = [[]]
        for key in arranged:
            lists = [[*one, *more] for one in lists for more in rights(inside[key])]
        whole += lists
    for right in whole[1:]:
        where = {item: place for place, item in enumerate(right)}
        run: list[int] = []
        for item in answer:
            at = next((index for index, one in enumerate(run) if one >= where[item]), len(run))
            run[at : at + 1] = [where[item]]
        worst = min(worst, len(answer) - len(run))
    return worst


def test_set_ups_together_are_found_as_trying_finds_them():
    random = Random(11)
    for _ in range(120):
        inside = {
            "1": order("abc", random.choice(["", "ab", "ab bc", "ac bc"])),
            "2": order("xy", random.choice(["", "xy"])),
            "3": order("pq", random.choice(["", "pq"])),
        }
        set_ups = order("123", random.choice(["", "12", "12 23", "13 23"]))
        answer = random.sample("abcxypq", 7)
        assert together(set_ups, inside, answer) == best_by_trying(set_ups, inside, answer)
