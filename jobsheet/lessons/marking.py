"""Marking an order of work: how few moves mend it, which rules it breaks and why,
and whether the part would be good.

Two results that are never mixed: *marks*, and *would the part be good*. What is free costs nothing, a
habit is said and costs nothing, and nobody is told that a step is wrong: the smallest repairs of an
order differ, the broken rules do not.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from jobsheet.lessons.moves import Tally, tallied, two_level
from jobsheet.lessons.needed_order import Needed
from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.precedence import Precedence
from jobsheet.model.remark import SEVERITIES

#: A pair that follows from others: it is counted, and its reason is theirs.
_COUNTED = Pair("", "", "")


class Asked(Struct, frozen=True, kw_only=True):
    """What an exercise asks to be put in order: of each set-up its steps; some that are
    given away; of a wrong one its twin.
    """

    needed: Needed
    steps: dict[str, tuple[str, ...]]
    twins: dict[str, str] = {}

    def inside(self, set_up: str) -> Precedence:
        """The order of the asked steps of a set-up."""
        return self.needed.steps.only(self.steps[set_up])

    @property
    def set_ups(self) -> Precedence:
        """The order of the asked set-ups."""
        return self.needed.set_ups.only(self.steps)

    @property
    def worst(self) -> int:
        """The moves of a right answer turned round."""
        return self.set_ups.worst + sum(self.inside(step).worst for step in self.steps)

    def count(self) -> int | None:
        """How many answers are right; None where they are too many to be counted."""
        total = self.set_ups.count()
        for step in self.steps:
            found = self.inside(step).count()
            total = None if total is None or found is None else total * found
        return total


class Marked(Struct, frozen=True, kw_only=True):
    """What is said of an answer."""

    tallies: dict[str, Tally]
    #: Moves among the set-ups.
    astray: int
    #: Drawn pairs that the answer has the other way round, the worst first.
    broken: tuple[Pair, ...]
    habits: tuple[Pair, ...]
    #: Pairs that matter among what was placed: how many are kept, and of how many.
    kept: int
    of: int
    worst: int

    @property
    def total(self) -> int:
        """Moves, missing, too many, wrongly chosen: nought where the answer is right."""
        return self.astray + sum(tally.total for tally in self.tallies.values())

    @property
    def moves(self) -> int:
        """How few moves put what was placed in order."""
        return self.astray + sum(tally.moves for tally in self.tallies.values())

    @property
    def mark(self) -> float:
        """From 1, all right, to 0: as far away as an answer can be. Print moves and
        rules first: a blind order has some.
        """
        return max(0.0, 1.0 - self.total / self.worst) if self.worst else float(self.total == 0)

    @property
    def good(self) -> bool:
        """Whether the part would be good as it comes off: nothing broken but what a little more work mends,
        all of it done, nothing wrongly chosen.
        """
        costs = any(pair.severity in ("hazard", "scrap") for pair in self.broken)
        lacking = any(tally.missing or tally.chosen for tally in self.tallies.values())
        return not costs and not lacking


def marked(asked: Asked, answer: Mapping[str, Sequence[str]]) -> Marked:
    """Mark an answer: set-ups in the order it has them, each with its steps in theirs.
    Steps and set-ups go by their keys.
    """
    needed = asked.needed
    tallies = {key: tallied(asked.inside(key), answer.get(key, ()), asked.twins) for key in asked.steps}
    astray = two_level(asked.set_ups, {}, answer)
    matter: list[tuple[bool, Pair]] = []
    for key, steps in answer.items():
        placed = [asked.twins.get(step, step) for step in steps]
        order = needed.steps.only(dict.fromkeys(one for one in placed if one in asked.steps.get(key, ())))
        drawn = order.needed()
        for first, then in order.pairs():
            kept = placed.index(first) < placed.index(then)
            matter.append(
                (kept, reason(needed, first, then) if not kept and (first, then) in drawn else _COUNTED)
            )
    turned = [one for one in answer if one in asked.steps]
    among = asked.set_ups.only(turned)
    for first, then in among.pairs():
        kept = turned.index(first) < turned.index(then)
        drawn_too = not kept and (first, then) in among.needed()
        matter.append((kept, set_up_reason(needed, first, then) if drawn_too else _COUNTED))
    broken = dict.fromkeys(pair for kept, pair in matter if not kept and pair is not _COUNTED)
    places = {
        asked.twins.get(one, one): place
        for place, one in enumerate(step for steps in answer.values() for step in steps)
    }
    unlike = [pair for pair in needed.habits if pair.first in places and pair.then in places]
    return Marked(
        tallies=tallies, astray=astray,
        broken=tuple(sorted(broken, key=lambda pair: SEVERITIES.index(pair.severity))),
        habits=tuple(pair for pair in unlike if places[pair.first] > places[pair.then]),
        kept=sum(kept for kept, _ in matter), of=len(matter), worst=asked.worst,
    )  # fmt: skip


def reason(needed: Needed, first: str, then: str) -> Pair:
    """The drawn pair, or where it follows through steps that are not there the one that ends the way."""
    drawn = {(pair.first, pair.then): pair for pair in needed.pairs}
    if (first, then) in drawn:
        return drawn[first, then]
    through = (
        pair
        for pair in needed.pairs
        if pair.then == then and (pair.first == first or needed.steps.before(first, pair.first))
    )
    last = next(through)
    return Pair(first, then, last.rule)


def set_up_reason(needed: Needed, first: str, then: str) -> Pair:
    """A pair of steps by which one set-up comes before another: drawn between the two,
    or the one that ends the way there.
    """
    home = {operation.key: set_up.key for set_up, operation in needed.job.operations()}
    ending = [pair for pair in needed.pairs if home[pair.then] == then != home[pair.first]]
    direct = [pair for pair in ending if home[pair.first] == first]
    through = [pair for pair in ending if needed.set_ups.before(first, home[pair.first])]
    return (direct or through)[0]
