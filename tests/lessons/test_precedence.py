"""The logic of orders against the worked checks of the reference, section 9, and two
searches that know nothing of matchings.
"""

from __future__ import annotations

from itertools import pairwise, permutations
from random import Random

import pytest

from jobsheet.lessons.precedence import Circle, closed


def order(items: str, pairs: str):
    return closed(items, [(pair[0], pair[1]) for pair in pairs.split()])


BORE = order("ZSPDERGCB", "ZS SP PD DE ER RG EC CB RB GB")


# --- worked checks 1 to 4 of the reference, section 9 ---


@pytest.mark.parametrize(
    ("answer", "moves"),
    [("ZSPDRECGB", 1), ("SPDEZRGCB", 1), ("ZSPDECBRG", 1), ("BCGREDPSZ", 7), ("ZSPDECRGB", 0)],
)
def test_the_bore(answer, moves):
    assert BORE.moves(answer) == moves


def test_the_bore_has_three_right_orders_and_at_worst_seven_moves():
    assert BORE.count() == 3
    assert BORE.worst == 7
    assert 1 - BORE.moves("ZSPDRECGB") / BORE.worst == pytest.approx(0.857, abs=5e-4)


@pytest.mark.parametrize(
    ("items", "pairs", "count", "worst", "answers"),
    [
        ("abcde", "ab db bc be", 4, 3, {"cebad": 3, "bacde": 2, "adceb": 1}),
        ("abcd", "ac bc bd", 5, 2, {"cdab": 2, "acbd": 1}),
        ("abcde", "ab ac bd cd de", 2, 3, {"edcba": 3, "dabce": 1, "eabcd": 1}),
    ],
)
def test_small_orders(items, pairs, count, worst, answers):
    found = order(items, pairs)
    assert found.count() == count
    assert found.worst == worst
    assert {answer: found.moves(answer) for answer in answers} == answers


def test_four_holes_of_five_steps_each():
    """Section 3: 11,732,745,024 right orders."""
    pairs = [(f"{hole}{step}", f"{hole}{step + 1}") for hole in "abcd" for step in range(4)]
    assert closed([f"{hole}{step}" for hole in "abcd" for step in range(5)], pairs).count() == 11_732_745_024


# --- oracles ---


def random_order(random: Random, most: int):
    items = "abcdefghi"[: random.randint(2, most)]
    shuffled = random.sample(items, len(items))
    share = random.random()
    pairs = [
        (one, other)
        for place, one in enumerate(shuffled)
        for other in shuffled[place + 1 :]
        if random.random() < share
    ]
    return closed(items, pairs), pairs


def is_right(answer, pairs) -> bool:
    return all(answer.index(first) < answer.index(then) for first, then in pairs)


def by_trying(answer, pairs) -> int:
    """Breadth first: every order that so many moves reach."""
    level, seen, moves = {tuple(answer)}, {tuple(answer)}, 0
    while not any(is_right(one, pairs) for one in level):
        level = {
            (*rest[:to], one[place], *rest[to:])
            for one in level
            for place in range(len(one))
            for rest in [(*one[:place], *one[place + 1 :])]
            for to in range(len(one))
        } - seen
        seen |= level
        moves += 1
    return moves


def by_longest_run(answer, pairs, items) -> int:
    """Of all right orders the one that shares the longest run with the answer."""
    best = 0
    for right in permutations(items):
        if not is_right(right, pairs):
            continue
        where = {item: place for place, item in enumerate(right)}
        run: list[int] = []
        for item in answer:
            place = where[item]
            at = next((index for index, one in enumerate(run) if one >= place), len(run))
            run[at : at + 1] = [place]
        best = max(best, len(run))
    return len(items) - best


def cases(count: int, most: int, seed: int):
    random = Random(seed)
    for _ in range(count):
        found, pairs = random_order(random, most)
        answer = random.sample(found.items, len(found.items))
        yield found, pairs, answer


def test_fewest_moves_are_those_that_trying_finds():
    for found, pairs, answer in cases(300, 5, 1):
        assert found.moves(answer) == by_trying(answer, pairs)


def test_fewest_moves_leave_the_longest_run_of_a_right_order():
    for found, pairs, answer in cases(500, 6, 2):
        assert found.moves(answer) == by_longest_run(answer, pairs, found.items)


@pytest.mark.long
def test_fewest_moves_on_three_thousand_orders():
    for found, pairs, answer in cases(3000, 7, 3):
        moves = found.moves(answer)
        assert moves == by_longest_run(answer, pairs, found.items)
        if len(answer) <= 5:
            assert moves == by_trying(answer, pairs)


# --- properties ---


def test_no_move_just_where_the_order_is_right():
    for found, pairs, answer in cases(500, 9, 4):
        assert (found.moves(answer) == 0) == is_right(answer, pairs)


def test_one_more_pair_never_makes_it_easier():
    for found, pairs, answer in cases(300, 8, 5):
        free = found.free()
        if free:
            assert closed(found.items, [*pairs, free[0]]).moves(answer) >= found.moves(answer)


def test_what_is_free_changes_nothing_between_right_orders():
    for found, _, _ in cases(100, 6, 6):
        for right in permutations(found.items):
            if found.moves(right):
                continue
            for one, other in pairwise(right):
                if (one, other) in found.free() or (other, one) in found.free():
                    swapped = [{one: other, other: one}.get(item, item) for item in right]
                    assert found.moves(swapped) == 0
            break


def test_one_move_changes_it_by_one_at_most():
    random = Random(7)
    for found, _, answer in cases(300, 9, 8):
        rest = list(answer)
        rest.insert(random.randrange(len(answer)), rest.pop(random.randrange(len(answer))))
        assert abs(found.moves(rest) - found.moves(answer)) <= 1


def test_moving_what_it_names_makes_it_right():
    """What stays keeps its order, and everything else can be put somewhere."""
    for found, pairs, answer in cases(300, 8, 9):
        moved = found.moved(answer)
        assert len(moved) == found.moves(answer)
        stay = [one for one in answer if one not in moved]
        chain = [*pairs, *pairwise(stay)]
        closed(found.items, chain)  # no circle: an order with all of it exists


def test_the_drawn_pairs_that_it_keeps_give_all_the_others():
    for found, _, _ in cases(200, 8, 10):
        assert set(closed(found.items, found.needed()).pairs()) == set(found.pairs())


def test_a_circle_is_refused_with_its_pairs():
    with pytest.raises(Circle) as caught:
        order("abcd", "ab bc ca ad")
    assert set(caught.value.pairs) == {("a", "b"), ("b", "c"), ("c", "a")}
