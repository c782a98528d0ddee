"""What all pages of one print are made from, and the long texts that had to be cut short on them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from msgspec import Struct, field

from jobsheet.model.job import Job, SetUp
from jobsheet.model.machine import Machine
from jobsheet.model.remark import Note, Remark
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Slab
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Page
from jobsheet.report.isometric import RoundHole
from jobsheet.model.lying import Box, Lying, lowered, lying, stock_box
from jobsheet.report.points import Point, points_of
from jobsheet.report.points import shapes_of as _shapes
from jobsheet.review.notes import Notes

T = TypeVar("T")


class Initials(Struct, frozen=True, kw_only=True):
    """Who acknowledged a stop note for this print, and at which step or set-up (keys) it stands."""

    note: str
    by: str
    operation: str = ""
    set_up: str = ""


class Course(Struct, frozen=True, kw_only=True):
    """One set-up as the pages see it: how the stock lies, its points, and the work after it."""

    set_up: SetUp
    lie: Lying
    points: tuple[Point, ...]
    after: Box
    holes: tuple[RoundHole, ...]


class Plan(Struct, kw_only=True):
    """Everything a page may ask for; `fits` says whether a page has room for what it holds."""

    job: Job
    reckoned: Reckoned
    notes: Notes
    remarks: tuple[Remark, ...]
    card: Machine
    acknowledged: tuple[Initials, ...]
    fits: Callable[[Page], bool]
    courses: tuple[Course, ...]
    #: Where and as cut -> whole text. Pages are tried out, so not every one of them was printed so.
    long: dict[tuple[str, str], str] = field(default_factory=dict)
    #: Blocks that many tries of a page have in common.
    made: dict[tuple[object, ...], Any] = field(default_factory=dict)

    def short(self, text: str, most: int, where: str) -> str:
        """The text on one line, cut at a word where it is too long; the whole of it is printed at the end."""
        text = " ".join(text.split())
        if len(text) <= most:
            return text
        start = text[: most - 1]
        blank = start.rfind(" ")
        cut = f"{start[:blank] if blank > most * 0.6 else start} …"
        self.long[where, cut] = text
        return cut

    def once(self, make: Callable[..., T], *what: Any) -> T:
        """What a function makes for this plan, made once; `what` is told apart by identity or value."""
        key = (make.__name__, *(id(one) if isinstance(one, Struct) else one for one in what))
        if key not in self.made:
            self.made[key] = make(self, *what)
        found: T = self.made[key]
        return found

    def given(self, note: Note) -> str:
        """The initials that were given for a stop note, at its own step or set-up only."""
        for one in self.acknowledged:
            if (one.note, one.operation, one.set_up) == (note.id, note.operation, note.set_up):
                return one.by
        return ""

    @property
    def stops(self) -> tuple[Note, ...]:
        """Every stop note, wherever it stands, once each."""
        head = [note for notes in self.notes.set_ups.values() for note in notes if note.level == "stop"]
        return tuple(dict.fromkeys([*self.notes.stops, *head]))

    @property
    def open_stops(self) -> tuple[Note, ...]:
        """Those that nobody has acknowledged."""
        return tuple(note for note in self.stops if not self.given(note))


def courses(job: Job, settings: Mapping[str, Setting]) -> tuple[Course, ...]:
    """The set-ups of a job, each on the work that the ones before it left."""
    work = stock_box(job)
    holes: list[RoundHole] = []
    found = []
    for set_up in job.set_ups:
        lie = lying(set_up, work)
        for operation in set_up.operations:
            for shape in _shapes(operation, settings):
                if isinstance(shape, Slab):
                    work = lowered(work, set_up.up, shape.depth)
        # Holes lie on the face as it is at the end, so that the picture shows their mouths on it.
        done = lying(set_up, work)
        holes = [hole for hole in holes if hole.face != set_up.up] + _holes(
            set_up, lie, done, holes, settings
        )
        found.append(
            Course(set_up=set_up, lie=lie, points=points_of(set_up, settings), after=work, holes=tuple(holes))
        )
    return tuple(found)


def _holes(
    set_up: SetUp, lie: Lying, done: Lying, before: list[RoundHole], settings: Mapping[str, Setting]
) -> list[RoundHole]:
    """The largest hole at each place of the face that is up, those of earlier set-ups on it too."""
    largest: dict[tuple[float, float, float], RoundHole] = {
        hole.centre: hole for hole in before if hole.face == set_up.up
    }
    for operation in set_up.operations:
        for shape in _shapes(operation, settings):
            if not isinstance(shape, Hole):
                continue
            along, across = lie.from_corner(set_up, shape.x, shape.y)
            x, y, z = done.in_stock(along, across)
            centre = (round(x, 9), round(y, 9), round(z, 9))
            old = largest.get(centre)
            if old is None or shape.diameter > old.diameter:
                largest[centre] = RoundHole(set_up.up, centre, shape.diameter, shape.threaded)
    return list(largest.values())
