"""What all pages of one print are made from, and the long texts that had to be cut short on them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from msgspec import Struct, field

from jobsheet.catalog.trade.opinions import opinions
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import Lying, lying
from jobsheet.model.machine import Machine
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.remark import Note, Remark
from jobsheet.model.setting import Setting
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Page
from jobsheet.report.points import ON_THE_SHEET, Point, points_of
from jobsheet.report.texts import typed_order
from jobsheet.review.notes.notes import Notes
from jobsheet.review.notes.reminders import Reminders, reminders_for
from jobsheet.stages.course import course_of
from jobsheet.storage.photos.kept_photographs import Shot

if TYPE_CHECKING:
    from jobsheet.stages.solids import Stage

T = TypeVar("T")
#: Behind a text that is cut, as a footnote has it: the whole of it stands under the same sign at the end.
CUT = "*"


class Initials(Struct, frozen=True, kw_only=True):
    """Who acknowledged a stop note for this print, and at which step or set-up (keys) it stands."""

    note: str
    by: str
    operation: str = ""
    set_up: str = ""


class Course(Struct, frozen=True, kw_only=True):
    """One set-up as the pages see it: how the work lies when it begins, and its points."""

    set_up: SetUp
    lie: Lying
    points: tuple[Point, ...]


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
    not_checked: tuple[NotChecked, ...] = ()
    #: The check code of the plan that these sheets carry.
    code: str = ""
    #: By what this plan is superseded, as in `plan 3`; empty where it is the one that counts.
    superseded: str = ""
    #: The day on which they are printed, as it is written; empty where nobody says.
    printed_on: str = ""
    #: The name of the file that they were made from.
    file: str = ""
    #: What happened the last time, in a line, by the key of the set-up; nothing where nothing is recorded.
    last_times: Mapping[str, str] = field(default_factory=dict)
    #: Whether the cover is printed with these pages.
    covered: bool = True
    #: The photographs of the job, and whether the first of a set-up stands on its page.
    shots: tuple[Shot, ...] = ()
    shown: bool = True
    #: Whether `fits` measures; where nothing is measured, pages are not filled up with what comes next.
    measured: bool = True
    #: Where and as cut -> whole text. Pages are tried out, so not every one of them was printed so.
    long: dict[tuple[str, str], str] = field(default_factory=dict)
    #: Blocks that many tries of a page have in common.
    made: dict[tuple[object, ...], Any] = field(default_factory=dict)
    #: The stages, kept apart: they are no blocks.
    drawn: dict[str, Any] = field(default_factory=dict)

    def short(self, text: str, most: int, where: str) -> str:
        """The text on one line, cut at a word where it is too long; the whole of it is printed at the end."""
        text = " ".join(text.split())
        if len(text) <= most:
            return text
        start = text[: most - 1]
        blank = start.rfind(" ")
        cut = f"{start[:blank] if blank > most * 0.6 else start}{CUT}"
        self.long[where, cut] = text
        return cut

    @property
    def mark(self) -> str:
        """File, check code and the day of printing, for the foot of every page; nothing without a code."""
        printed = f"printed {self.printed_on}" if self.printed_on else ""
        parts = (self.file, f"check {self.code}", printed)
        return " · ".join(part for part in parts if part) if self.code else ""

    @property
    def reminders(self) -> Reminders:
        """What is true of steps and set-ups, said beside them; made once."""
        if "reminders" not in self.drawn:
            self.drawn["reminders"] = reminders_for(self.job, self.reckoned)
        reminders: Reminders = self.drawn["reminders"]
        return reminders

    @property
    def stages(self) -> list[Stage]:
        """Stock and the work after every step; made once, when the first picture asks for them."""
        if "stages" not in self.drawn:
            from jobsheet.report.stage_view import stages_of

            self.drawn["stages"] = stages_of(self.job, self.reckoned.settings)
        stages: list[Stage] = self.drawn["stages"]
        return stages

    @property
    def of_the_print(self) -> tuple[str, ...]:
        """Lines for the foot that are true of the whole print: where this workshop chose other
        than usual, and which way text runs.
        """
        if "of the print" not in self.drawn:
            self.drawn["of the print"] = self._of_the_print()
        found: tuple[str, ...] = self.drawn["of the print"]
        return found

    def _of_the_print(self) -> tuple[str, ...]:
        shop = self.reckoned.shop
        other = [
            f"{opinion.id.replace('-', ' ')}, {getattr(shop, opinion.field)}"
            for opinion in opinions()
            if getattr(shop, opinion.field) != opinion.default
        ]
        chosen = (f"This workshop’s choices: {'; '.join(other)}.",) if other else ()
        return (*chosen, *typed_order(self.job))

    def once(self, make: Callable[..., T], *what: Any) -> T:
        """What a function makes for this plan, made once; `what` is told apart by identity or value."""
        key = (make.__name__, *(id(one) if isinstance(one, Struct) else one for one in what))
        if key not in self.made:
            self.made[key] = make(self, *what)
        found: T = self.made[key]
        return found

    def given(self, note: Note) -> str:
        """The initials that were given for a stop note, at its own step or set-up only."""
        for initials in self.acknowledged:
            if (initials.note, initials.operation, initials.set_up) == (note.id, note.operation, note.set_up):
                return initials.by
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


def letters_of(plan: Plan) -> tuple[tuple[str, str], ...]:
    """The letters of the datums with the faces they lie on, short enough for a picture."""
    return tuple((plan.short(letter, 4, "datum letter"), face) for letter, face in plan.job.datums)


def on_sheet(course: Course) -> tuple[Point, ...]:
    """The points that stand on the sheet of a set-up; none where they have a card of their own."""
    return course.points if len(course.points) <= ON_THE_SHEET else ()


def courses(job: Job, settings: Mapping[str, Setting]) -> tuple[Course, ...]:
    """The set-ups of a job, each on the work that the ones before it left."""
    course = course_of(job, settings)
    work = course.stock
    found = []
    for set_up in job.set_ups:
        own = [cut for cut in course.cuts if cut.set_up == set_up.key]
        lie = own[0].before if own else lying(set_up, work, course.outline)
        work = own[-1].after.box if own else work
        found.append(Course(set_up=set_up, lie=lie, points=points_of(set_up, settings)))
    return tuple(found)
