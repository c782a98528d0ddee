"""What must come before what, as bare logic: closed, counted, and how few moves make an order right.

A *move* takes one thing out and puts it back anywhere. Two things *conflict* where the first must come before
the second and stands behind it. Everything can stay where it stands just when no two conflict; conflicts are
themselves an order, so that the most that can stay is a largest antichain, and by Dilworth's theorem the
fewest moves are a largest matching of the conflicts. Derived so in the project's reference on lessons,
section 3; the tests hold it against two searches that know nothing of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import comb

from msgspec import Struct

from jobsheet.errors import JobsheetError

Pairs = Iterable[tuple[str, str]]
#: So many states at most are walked through to count the right orders of one part that hangs together.
MOST_STATES = 200_000


class Circle(JobsheetError):
    """Pairs that go round in a circle: nothing can come first. `pairs` are those
    of one circle, in their turn.
    """

    def __init__(self, pairs: tuple[tuple[str, str], ...]) -> None:
        said = ", ".join(f"{first} before {then}" for first, then in pairs)
        super().__init__(f"These ask for each other in a circle, so that no order is right: {said}")
        self.pairs = pairs


class Precedence(Struct, frozen=True):
    """Things in some order, and of each the set of all that must come before it, as bits of their places."""

    items: tuple[str, ...]
    ahead: tuple[int, ...]

    def before(self, first: str, then: str) -> bool:
        """Whether one must come before the other, drawn or following from what is drawn."""
        return bool(self.ahead[self.items.index(then)] >> self.items.index(first) & 1)

    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Every pair that must stand in order, those that follow too."""
        found = enumerate(self.ahead)
        return tuple((self.items[first], self.items[then]) for then, mask in found for first in _bits(mask))

    def needed(self) -> tuple[tuple[str, str], ...]:
        """The pairs from which all others follow."""
        kept = []
        for then, mask in enumerate(self.ahead):
            through = 0
            for first in _bits(mask):
                through |= self.ahead[first]
            kept += [(self.items[first], self.items[then]) for first in _bits(mask & ~through)]
        return tuple(kept)

    def free(self) -> tuple[tuple[str, str], ...]:
        """The pairs of which either may come first."""
        count = len(self.items)
        return tuple(
            (self.items[one], self.items[other])
            for one in range(count)
            for other in range(one + 1, count)
            if not (self.ahead[one] >> other | self.ahead[other] >> one) & 1
        )

    def only(self, items: Iterable[str]) -> Precedence:
        """The same among some of them: what followed through the others still follows."""
        kept = [self.items.index(item) for item in items]
        return Precedence(
            tuple(self.items[one] for one in kept),
            tuple(
                sum(1 << place for place, other in enumerate(kept) if self.ahead[one] >> other & 1)
                for one in kept
            ),
        )

    def moved(self, order: Sequence[str]) -> tuple[str, ...]:
        """One smallest set of things whose moving makes an order right, as they stand
        in it. Other sets may be as small.
        """
        return _moved(self.conflicts(order), order)

    def moves(self, order: Sequence[str]) -> int:
        """How many moves make an order right at least; nought where it is right."""
        return len(_matching(self.conflicts(order)))

    def conflicts(self, order: Sequence[str]) -> list[int]:
        """Of each place of an order, which places before it hold what must come after: bits."""
        where = [self.items.index(one) for one in order]
        return [
            sum(1 << early for early in range(late) if self.ahead[where[early]] >> where[late] & 1)
            for late in range(len(where))
        ]

    @property
    def worst(self) -> int:
        """The moves of the worst order, a right one turned round: all but the
        most that are free of each other.
        """
        return len(_matching(list(self.ahead)))

    def count(self) -> int | None:
        """How many orders are right; None where they are too many to be
        counted (published as #P-complete).
        """
        total, placed = 1, 0
        for part in self._parts():
            found = _count(self.only(part).ahead)
            if found is None:
                return None
            placed += len(part)
            total *= found * comb(placed, len(part))
        return total

    def _parts(self) -> list[tuple[str, ...]]:
        """What hangs together, each apart from the others."""
        masks: list[int] = []
        for place, mask in enumerate(self.ahead):
            own = mask | 1 << place
            touching = [mask for mask in masks if mask & own]
            for one in touching:
                masks.remove(one)
                own |= one
            masks.append(own)
        return [tuple(self.items[place] for place in _bits(mask)) for mask in masks]


def closed(items: Iterable[str], pairs: Pairs) -> Precedence:
    """The order that follows from pairs, each `(first, then)`.

    Raises
    ------
    Circle
        If they go round.
    """
    names = tuple(items)
    places = {name: place for place, name in enumerate(names)}
    ahead = [0] * len(names)
    for first, then in pairs:
        ahead[places[then]] |= 1 << places[first]
    drawn = tuple(ahead)
    for middle in range(len(names)):
        for place in range(len(names)):
            if ahead[place] >> middle & 1:
                ahead[place] |= ahead[middle]
    round_ = next((place for place, mask in enumerate(ahead) if mask >> place & 1), None)
    if round_ is not None:
        raise Circle(_circle(names, drawn, round_))
    return Precedence(names, tuple(ahead))


def _circle(names: tuple[str, ...], drawn: tuple[int, ...], start: int) -> tuple[tuple[str, str], ...]:
    """The shortest way from a thing back to itself along the drawn pairs."""
    ways: list[list[int]] = [[start]]
    seen: set[int] = set()
    while ways:
        way = ways.pop(0)
        for first in _bits(drawn[way[0]]):
            if first == start:
                whole = [start, *way]
                return tuple((names[one], names[two]) for one, two in pairwise(whole))
            if first not in seen:
                seen.add(first)
                ways.append([first, *way])
    return ()


def _bits(mask: int) -> list[int]:
    return [place for place in range(mask.bit_length()) if mask >> place & 1]


def _matching(edges: list[int]) -> dict[int, int]:
    """A largest matching: of each right place that has one, its left place.
    `edges[left]` are bits of right places.
    """
    mate: dict[int, int] = {}

    def augment(left: int, seen: set[int]) -> bool:
        for right in _bits(edges[left]):
            if right not in seen:
                seen.add(right)
                if right not in mate or augment(mate[right], seen):
                    mate[right] = left
                    return True
        return False

    for left in range(len(edges)):
        augment(left, set())
    return mate


def _moved(conflicts: list[int], order: Sequence[str]) -> tuple[str, ...]:
    """A smallest cover of the conflicts, by König's theorem: what alternating ways
    from the unmatched left do not reach.
    """
    mate = _matching(conflicts)
    matched = set(mate.values())
    left = [place for place in range(len(conflicts)) if place not in matched]
    reached, right = set(left), set[int]()
    while left:
        for other in _bits(conflicts[left.pop()]):
            if other not in right:
                right.add(other)
                if other in mate and mate[other] not in reached:
                    reached.add(mate[other])
                    left.append(mate[other])
    out = {place for place in matched if place not in reached} | right
    return tuple(order[place] for place in sorted(out))


def _count(ahead: tuple[int, ...]) -> int | None:
    """Orders of one part, by what is already placed: f(done) is the sum of f(done and
    one more whose forerunners are done).
    """
    whole = (1 << len(ahead)) - 1
    level: dict[int, int] = {0: 1}
    states = 0
    while whole not in level:
        following: dict[int, int] = {}
        for done, ways in level.items():
            for place, mask in enumerate(ahead):
                if not done >> place & 1 and mask & ~done == 0:
                    more = done | 1 << place
                    following[more] = following.get(more, 0) + ways
        level = following
        states += len(level)
        if states > MOST_STATES:
            return None
    return level[whole]
