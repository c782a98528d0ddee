"""Fewest moves where steps are kept together in set-ups, and where steps are
missing, too many, or one of two.

`two_level` is for answers under printed headings: a set-up astray costs one. `together` is for
one flat list, which is NP-hard in general and walked through by which set-ups are done; both from
the reference on lessons, section 3.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from msgspec import Struct

from jobsheet.lessons.precedence import Precedence


class Tally(Struct, frozen=True, kw_only=True):
    """What an answer costs: moves among what belongs there, what is missing, what does not
    belong, and the wrong one of a pair.
    """

    moves: int = 0
    missing: tuple[str, ...] = ()
    extra: tuple[str, ...] = ()
    chosen: tuple[str, ...] = ()

    @property
    def total(self) -> int:
        """All of it, each once."""
        return self.moves + len(self.missing) + len(self.extra) + len(self.chosen)


def tallied(order: Precedence, answer: Iterable[str], twins: Mapping[str, str] | None = None) -> Tally:
    """One list of steps against its order. What follows through a step that is missing still counts.

    Parameters
    ----------
    twins : mapping, optional
        Of each wrong one of a pair its right one: it is a mistake of choice, and stands for its twin
    """
    right = twins or {}
    wrong = tuple(one for one in answer if one in right)
    meant: list[str] = []
    extra: list[str] = []
    for one in answer:
        step = right.get(one, one)
        (meant if step in order.items and step not in meant else extra).append(step)
    missing = tuple(item for item in order.items if item not in meant)
    return Tally(moves=order.only(meant).moves(meant), missing=missing, extra=tuple(extra), chosen=wrong)


def least(orders: Iterable[Precedence], answer: Sequence[str]) -> Tally:
    """Where one thing may be done in more than one way: the way that the answer is nearest to."""
    return min((tallied(precedence, answer) for precedence in orders), key=lambda tally: tally.total)


def two_level(
    set_ups: Precedence, inside: Mapping[str, Precedence], answer: Mapping[str, Sequence[str]]
) -> int:
    """Moves of the set-ups among themselves, and of the steps inside each;
    `answer` has its set-ups in their order.
    """
    asked = [one for one in answer if one in set_ups.items]
    among = set_ups.only(asked).moves(asked)
    return among + sum(tallied(inside[key], steps).moves for key, steps in answer.items() if key in inside)


def together(set_ups: Precedence, inside: Mapping[str, Precedence], answer: Sequence[str]) -> int:
    """Fewest moves from one flat list to an order in which each set-up stands together."""
    count = len(answer)

    @cache
    def kept(key: str, start: int, end: int) -> int:
        here = [one for one in answer[start:end] if one in inside[key].items]
        return len(here) - inside[key].only(here).moves(here)

    @cache
    def best(done: frozenset[str], start: int) -> int:
        if len(done) == len(set_ups.items):
            return 0
        ready = (
            item
            for item in set_ups.items
            if item not in done
            and all(other in done for other in set_ups.items if set_ups.before(other, item))
        )
        # A set-up that ends where it keeps one more is worth looking at, all other ends are not.
        return max(
            kept(key, start, end) + best(done | {key}, end)
            for key in ready
            for end in range(start, count + 1)
            if end == start or answer[end - 1] in inside[key].items
        )

    return count - best(frozenset(), 0)
