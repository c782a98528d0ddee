"""What a kind of operation is: plain functions and a form, bound by name in one frozen record."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from msgspec import Struct

from jobsheet.model.figure import Figures
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole, Sweep
from jobsheet.operations.entry import Entry
from jobsheet.operations.reads import EVERYTHING
from jobsheet.operations.roles import Roles

#: The fields of one kind: every part of a kind is written for the same.
F = TypeVar("F", bound=Struct)


class Group(Struct, frozen=True):
    """Entries that stand together in the form."""

    title: str
    entries: tuple[Entry, ...]


class Dial(Struct, frozen=True):
    """One of the things to set at the machine, in the largest type of the window."""

    label: str
    number: str
    unit: str = ""
    note: str = ""
    problem: str = ""


class Aim(Struct, frozen=True, kw_only=True):
    """What a step's words may name: the faces of the stock as the work lies, and
    its size before the step [m].
    """

    up: str = ""
    near: str = ""
    far: str = ""
    left: str = ""
    right: str = ""
    extent: tuple[float, float, float] = (0.0, 0.0, 0.0)
    units: str = "mm"


def _no_other_words(_fields: object, _aim: Aim) -> tuple[str, ...]:
    return ()


def _nothing_taken(_fields: object) -> float:
    return 0.0


def _no_holes(_fields: object) -> tuple[Hole, ...]:
    return ()


def _no_outline(_fields: object) -> tuple[tuple[float, float], ...]:
    return ()


class Kind(Struct, Generic[F], frozen=True, kw_only=True):
    """One kind of operation, by its fields: a part that was written for the
    fields of another is a type error.

    `figures` reckons, `rows` words the sheet, `dials` says what to set, `sweep` says what metal goes,
    `outline` along which line the cutter's centre begins and goes in the set-up's own coordinates [m], for
    what lets it in, `holes` which round holes it leaves (for what follows at the same place), `takes_off` by
    how much it lowers the top of the work [m], `word` and `groups` are the words by which safety notes and
    reminders call it (its own, and those it shares), `roles` says what it is to others, by its fields where
    those decide, `words` names the step in a few words, `example` is what stands in a new one, as typed,
    `reads` what of its setting its figures, rows, dials and shapes depend on (`operations/reads.py`): where
    only other things change, nothing is reckoned anew. Limits say for themselves what they read.
    """

    name: str
    title: str
    icon: str
    fields: type[F]
    form: tuple[Group, ...]
    figures: Callable[[F, Setting], Figures]
    rows: Callable[[F, Figures, Setting], tuple[Row, ...]]
    dials: Callable[[F, Figures, Setting], tuple[Dial, ...]]
    sweep: Callable[[F, Setting], tuple[Sweep, ...]]
    words: Callable[[F], str]
    #: How a row says it, the longest first, up to three: face and size that are
    #: aimed at. Nothing: as `words` has it.
    says: Callable[[F, Aim], tuple[str, ...]] = _no_other_words
    example: dict[str, str]
    word: str
    groups: tuple[str, ...]
    roles: Roles | Callable[[F], Roles]
    holes: Callable[[F], tuple[Hole, ...]] = _no_holes
    takes_off: Callable[[F], float] = _nothing_taken
    outline: Callable[[F], tuple[tuple[float, float], ...]] = _no_outline
    reads: frozenset[str] | Callable[[F], frozenset[str]] = EVERYTHING
    #: Other words by which a person looks for it, beside its title and the cutters it takes.
    also: tuple[str, ...] = ()

    def title_of(self, fields: F) -> str:
        """Short title for the row: in the person's own words where there are any."""
        return getattr(fields, "what", "") or self.words(fields)

    def row_words(self, fields: F, aim: Aim) -> tuple[str, ...]:
        """How a row says it, the longest first; a person's own words are never put otherwise."""
        own = getattr(fields, "what", "")
        return (own,) if own else self.says(fields, aim) or (self.words(fields),)

    def looks_at(self, fields: F) -> frozenset[str]:
        """What it reads of its setting with these fields."""
        return self.reads if isinstance(self.reads, frozenset) else self.reads(fields)

    def plays(self, fields: F) -> Roles:
        """Its roles with these fields."""
        return self.roles if isinstance(self.roles, Roles) else self.roles(fields)

    def blank(self, units: str) -> F:
        """The fields of a new step, to be changed."""
        return fields_from(self.fields, self.entries, self.example, units)

    @property
    def entries(self) -> tuple[Entry, ...]:
        """Every entry of the form, in order."""
        return tuple(entry for group in self.form for entry in group.entries)

    def entry(self, name: str) -> Entry | None:
        """The entry of that name, or None."""
        for entry in self.entries:
            if entry.name == name:
                return entry
        return None


def fields_from(kind_fields: type[F], entries: tuple[Entry, ...], texts: dict[str, str], units: str) -> F:
    """Fields from texts as they are typed, for a kind's own blank form and for tests;
    what is left out keeps its default.
    """
    values = {entry.name: entry.read(texts.get(entry.name, ""), units) for entry in entries}
    return kind_fields(**{name: value for name, value in values.items() if value is not None})
