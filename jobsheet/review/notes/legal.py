"""Figures of law and advice for the chosen country, each with its place and
date; data in `resources/legal.yaml`.

Advice is not law and says so. Nothing here sets a trigger or a verdict: a figure
is printed, never reckoned with.
"""

from __future__ import annotations

from datetime import date
from functools import cache

from msgspec import Struct

from jobsheet import clock
from jobsheet.catalog.reading.data import shipped
from jobsheet.review.notes.notes import Notes

#: Stands in place of a figure where no country is chosen or none is on file, as the safety notes word it.
DEFERRED = (
    "Limits differ by country and change. Ask your safety adviser or regulator for the figure in force."
)
#: Stands beside every figure, after its place and dates.
CHECK = "Check that it still holds."
#: Stands beside a figure whose text was read more than so many years ago, or nobody knows when.
OLD = "Ask for the figure in force."
OLD_YEARS = 2


class Figure(Struct, frozen=True, kw_only=True):
    """One row: the choice it belongs to, its place in words, the notes it stands
    with, and what was read of it when.
    """

    id: str
    country: str
    place: str
    notes: tuple[str, ...]
    figure: str
    see: str
    law: str
    read: str
    read_on: str
    source: str

    @property
    def subject(self) -> str:
        """What it is about, in one word: the first of its id."""
        return self.id.split("-", maxsplit=1)[0].capitalize()

    @property
    def limit(self) -> bool:
        """Whether it is about a number; the others are duties, which no sentence on limits stands in for."""
        return not self.figure or any(letter.isdigit() for letter in self.figure)

    def old(self, today: date) -> bool:
        """Whether its text was read over two years ago; a day that nobody wrote down counts as long ago."""
        if not self.read_on:
            return True
        read = date.fromisoformat(self.read_on)
        return (today.year - read.year, today.month, today.day) > (OLD_YEARS, read.month, read.day)

    def words(self, today: date) -> str:
        """The figure as it is printed: subject, figure, place, law, when it was read, and to check it."""
        said = self.figure or f"{DEFERRED} {self.see}"
        if not said.startswith(self.subject):
            said = f"{self.subject}: {said}"
        beside = f"{self.place}, {self.law}, {self.read}. {CHECK}".replace("MEM", "from memory")
        return f"{said} {beside}{f' {OLD}' if self.old(today) else ''}"


class ByLaw(Struct, frozen=True, kw_only=True):
    """The figures that a job's notes call up, and the subjects with a limit for which none is on file."""

    figures: tuple[Figure, ...]
    deferred: tuple[str, ...]

    def lines(self, today: date) -> tuple[str, ...]:
        """What is printed: every figure, and once that other limits differ, of what."""
        words = tuple(row.words(today) for row in self.figures)
        if not self.deferred:
            return words
        first, *more = self.deferred
        return (*words, f"{', '.join((first, *(one.lower() for one in more)))}: {DEFERRED}")


@cache
def figures() -> tuple[Figure, ...]:
    """Every figure there is, in the order of the file."""
    return tuple(
        Figure(
            id=name, country=row["country"], place=row["place"], notes=tuple(row["notes"]), figure=row["figure"],
            see=row.get("see", ""), law=row["law"], read=row["read"], read_on=row.get("read on", ""),
            source=row["source"],
        )
        for name, row in shipped("legal.yaml")["figures"].items()
    )  # fmt: skip


def by_law(notes: Notes, country: str) -> ByLaw:
    """What the notes of a job call up in a country as the workshop's file names it; `none` has no figures.

    A part of a country has the figures of the whole country too: `us michigan` those of `us`.
    """
    placed = (*notes.set_ups.values(), *notes.steps.values())
    here = {note.id for some in (notes.sheet, notes.stops, *placed) for note in some}
    called = [row for row in figures() if here & set(row.notes)]
    own = tuple(row for row in called if row.country == country or country.startswith(f"{row.country} "))
    answered = {note for row in own for note in row.notes}
    open_limits = (
        row for row in called if row.figure and row.limit and not set(row.notes) & here <= answered
    )
    return ByLaw(figures=own, deferred=tuple(dict.fromkeys(row.subject for row in open_limits)))


def today() -> date:
    """The day by the clock of the place."""
    return clock.now().date()
