"""The cabinet: what a workshop has, each thing with the line by which a job
names it and the place where it lies.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.quantity import Cutter, Thread


class Thing(Struct, frozen=True, kw_only=True):
    """One thing of the cabinet.

    `what` is its line as in a job, without the place; `line` is the very line that a job's field takes, place
    included. `out` says where it is when it is not in its place now. Sizes in metres: `cutter` is what was
    read of the line of a cutting tool or a finder; `size` the thickness of parallels, the length of a
    wrench; `low` and `high` what a gauge or a holder takes; `sizes` the collets. `row` is the entry's
    number in its section, from nought.
    """

    section: str
    what: str
    place: str
    row: int
    count: int = 1
    out: str = ""
    note: str = ""
    name: str = ""
    cutter: Cutter | None = None
    thread: Thread | None = None
    styles: tuple[str, ...] = ()
    size: float | None = None
    low: float | None = None
    high: float | None = None
    sizes: tuple[float, ...] = ()

    @property
    def line(self) -> str:
        """As a job names it."""
        return f"{self.what}, {self.place}" if self.place else self.what

    @property
    def here(self) -> bool:
        """Whether it is in its place now."""
        return not self.out and self.count > 0

    @property
    def away(self) -> str:
        """Where it is when it is not there; empty where it is."""
        return self.out or ("" if self.count else "none left")


class Cabinet(Struct, frozen=True, kw_only=True):
    """All things of one workshop. `sections` are those its file has: of what it
    does not list, nothing is said.
    """

    name: str
    workshop: str = ""
    invented: bool = False
    note: str = ""
    own: bool = False
    sections: frozenset[str] = frozenset()
    things: tuple[Thing, ...] = ()

    def of(self, *sections: str) -> tuple[Thing, ...]:
        """The things of these sections, as they stand in the file."""
        return tuple(thing for thing in self.things if thing.section in sections)
