"""What a learner has on the desk: slips and places, what was tried, and what the
marking then says. No widget here.

Nothing gives the answer away before a try, and what a try says holds only for what stood there then: a row
that is changed loses its marking. Nothing of it is kept.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.lessons.marking import Marked, marked
from jobsheet.lessons.order_exercise import OrderExercise
from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.said_of_an_order import result_lines
from jobsheet.lessons.slips import Slip

#: So many brackets at once: the nearest pairs first.
MOST_BRACKETS = 3


class Bracket(Struct, frozen=True):
    """Two places whose steps stand the wrong way round, from the upper to the lower, and why."""

    upper: int
    lower: int
    pair: Pair


class OrderDesk:
    """The places of one exercise of one set-up; those that are given away stand
    there from the start and stay.
    """

    def __init__(self, exercise: OrderExercise) -> None:
        self.exercise = exercise
        self.slips: dict[str, Slip] = {slip.key: slip for slip in exercise.blocks[0].slips}
        self.places: list[str] = [""] * len(self.slips)
        first, last = exercise.given
        if first:
            self.places[0] = first
        if last:
            self.places[-1] = last
        self.fixed = {key for key in exercise.given if key}
        self.said: tuple[str, ...] = ()
        self.brackets: tuple[Bracket, ...] = ()
        self.reasons = False

    @property
    def left(self) -> list[Slip]:
        """The slips that are not placed yet, in the order of the sheet."""
        return [slip for key, slip in self.slips.items() if key not in self.places]

    @property
    def placed(self) -> int:
        """How many are placed."""
        return sum(bool(key) for key in self.places)

    @property
    def in_a_row(self) -> tuple[str, ...]:
        """The steps from the first place on as far as none is empty: what can be done so far."""
        end = self.next_place
        return tuple(self.places if end is None else self.places[:end])

    @property
    def next_place(self) -> int | None:
        """The first empty place; None where all are taken."""
        return next((at for at, key in enumerate(self.places) if not key), None)

    def slip_of(self, letter: str) -> Slip | None:
        """The slip of that letter."""
        return next((slip for slip in self.slips.values() if slip.letter == letter.casefold()), None)

    def put(self, letter: str, at: int | None = None) -> int | None:
        """Put a slip into a place, the next empty one where none is named; which
        it was. None where it cannot be.
        """
        slip = self.slip_of(letter)
        place = self.next_place if at is None or self.places[at] else at
        if slip is None or place is None or slip.key in self.places:
            return None
        self.places[place] = slip.key
        self._changed(place)
        return place

    def give_back(self, at: int) -> bool:
        """Take the slip of a place back, or the last one before it where that is empty."""
        while at >= 0 and (not self.places[at] or self.places[at] in self.fixed):
            at -= 1
        if at < 0:
            return False
        self.places[at] = ""
        self._changed(at)
        return True

    def move(self, at: int, by: int) -> int:
        """Change a place with the one above or below; where the slip then stands."""
        to = at + by
        if (
            not (0 <= to < len(self.places))
            or self.fixed & {self.places[at], self.places[to]}
            or not self.places[at]
        ):
            return at
        self.places[at], self.places[to] = self.places[to], self.places[at]
        self._changed(at, to)
        return to

    def _changed(self, *places: int) -> None:
        self.brackets = tuple(
            bracket
            for bracket in self.brackets
            if bracket.upper not in places and bracket.lower not in places
        )
        self.said = ()

    def attempt(self) -> Marked:
        """Mark what stands there now, no more."""
        block = self.exercise.blocks[0]
        answer = {block.set_up.key: tuple(key for key in self.places if key)}
        found = marked(self.exercise.asked, answer)
        self.said = tuple(result_lines(self.exercise, found))
        at = {key: place for place, key in enumerate(self.places) if key}
        turned = [
            Bracket(min(at[pair.first], at[pair.then]), max(at[pair.first], at[pair.then]), pair)
            for pair in found.broken
            if pair.first in at and pair.then in at
        ]
        self.brackets = tuple(
            sorted(turned, key=lambda bracket: (bracket.lower - bracket.upper, bracket.upper))[:MOST_BRACKETS]
        )
        return found

    def look_again(self) -> None:
        """Hide what the marking said, to think once more."""
        self.said, self.brackets, self.reasons = (), (), False

    @property
    def head(self) -> str:
        """The one line under the column."""
        if self.said:
            return self.said[0]
        return f"{self.placed} of {len(self.places)} placed."

    def reason_lines(self) -> list[str]:
        """After a try, where reasons are asked for: each broken pair with its
        rule; else their severities alone.
        """
        if not self.reasons:
            return []
        return [f"{self._named(bracket.pair)}: {bracket.pair.because}" for bracket in self.brackets]

    def _named(self, pair: Pair) -> str:
        return f"{self.slips[pair.first].letter} before {self.slips[pair.then].letter}"
