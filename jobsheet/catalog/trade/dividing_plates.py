"""Plates of dividing heads and the usual worms; rows with their mark in `resources/dividing.yaml`."""

from __future__ import annotations

from functools import cache

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.errors import NoSuchEntry


class Plate(Struct, frozen=True):
    """One plate, or one side of it: its name and how many holes its circles have."""

    name: str
    circles: tuple[int, ...]


@cache
def plate_sets() -> dict[str, tuple[Plate, ...]]:
    """The plates that are sold together, by the name of the set."""
    return {
        name: tuple(Plate(plate, tuple(int(holes) for holes in circles)) for plate, circles in plates.items())
        for name, plates in shipped("dividing.yaml")["plates"].items()
    }


def plates(name: str = "") -> tuple[Plate, ...]:
    """The plates of a set; without a name the commonest.

    Raises
    ------
    NoSuchEntry
        If there is no such set.
    """
    sets = plate_sets()
    found = sets.get(name or next(iter(sets)))
    if found is None:
        raise NoSuchEntry(f"There is no set of plates “{name}”; there are: {'; '.join(sets)}.")
    return found


@cache
def worms() -> dict[int, tuple[str, str]]:
    """The usual worms: turns of the handle for one of the work -> what has it,
    and the usual line of its dial.
    """
    rows = shipped("dividing.yaml")["worms"]
    return {int(ratio): (row["kind"], row["line"]) for ratio, row in rows.items()}
