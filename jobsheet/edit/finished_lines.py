"""Edits of the lines that say what the part shall be: typed like any field, moved,
struck, and pasted several at once.

A line is a field `line_1`, `line_2` … of the owner `job:finished`; the one behind the last is empty and
becomes a line when it is typed into. What is typed is kept whether it can be read yet or not, so that no line
is ever a draft. Over them stand the letters of the datums, which are read at once: every line may name them.
"""

from __future__ import annotations

import re

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.finished.lines_in_file import DATUMS, FEATURE, MOST, SIZES
from jobsheet.model.finished import Finished
from jobsheet.model.job import Job
from jobsheet.operations.entry import Entry

OWNER = "job:finished"
_LINE = "line_"
_BREAK = re.compile(r"[\n\r\u2028\u2029]+")


def entries_of_lines(finished: Finished) -> tuple[Entry, ...]:
    """The fields: the letters of the datums, the sizes, each line, and an empty one behind them."""
    count = min(len(finished.features) + 1, MOST)
    return (DATUMS, SIZES, *(_entry(number) for number in range(1, count + 1)))


def entry_of_line(name: str) -> Entry:
    """The entry of one of these fields.

    Raises
    ------
    CommandError
        If there is no such field.
    """
    if name in (DATUMS.name, SIZES.name):
        return DATUMS if name == DATUMS.name else SIZES
    number = name.removeprefix(_LINE)
    if name.startswith(_LINE) and number.isdigit() and 1 <= int(number) <= MOST:
        return _entry(int(number))
    raise CommandError(f"There is no field {name} in {OWNER}.")


def _entry(number: int) -> Entry:
    return replace(FEATURE, name=f"{_LINE}{number}", title=f"Feature {number}")


def line_number(name: str) -> int:
    """The number of a line's field; 0 for the sizes."""
    return int(name.removeprefix(_LINE)) if name.startswith(_LINE) else 0


def name_of_line(number: int) -> str:
    """The name of the field of a line; 0 is that of the sizes."""
    return f"{_LINE}{number}" if number else SIZES.name


def value_of_line(job: Job, name: str) -> str:
    """What stands in one of these fields."""
    if name == DATUMS.name:
        from jobsheet.finished.datums_line import datums_text  # late: a start paints none of these fields

        return datums_text(job.datums)
    number, finished = line_number(name), job.finished
    if not number:
        return finished.sizes
    return finished.features[number - 1] if number <= len(finished.features) else ""


def with_field(job: Job, name: str, text: str) -> Job:
    """The job with one of these fields as typed.

    Raises
    ------
    QuantityError
        If the letters of the datums cannot be read: they are no line that could wait.
    """
    if name == DATUMS.name:
        from jobsheet.finished.datums_line import read_datums

        return replace(job, datums=read_datums(text))
    return replace(job, finished=_with_line(job.finished, name, text))


def _with_line(finished: Finished, name: str, text: str) -> Finished:
    """The lines with one of them as typed; several lines pasted into one become several."""
    number = line_number(name)
    if not number:
        return replace(finished, sizes=" ".join(_BREAK.split(text)))
    pieces = [piece for piece in _BREAK.split(text) if piece.strip()] or [text]
    lines = list(finished.features)
    lines[number - 1 : number] = pieces
    while lines and not lines[-1].strip():
        lines.pop()
    return replace(finished, features=tuple(lines[:MOST]))


class MoveLine(Struct, frozen=True):
    """A line goes up or down by so many places."""

    number: int
    by: int
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"move feature {self.number}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        lines = list(job.finished.features)
        to = self.number + self.by
        if not 1 <= self.number <= len(lines) or not 1 <= to <= len(lines):
            raise CommandError("There is no further line there.")
        lines.insert(to - 1, lines.pop(self.number - 1))
        return replace(job, finished=replace(job.finished, features=tuple(lines)))


class StrikeLine(Struct, frozen=True):
    """A line is struck out."""

    number: int
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"strike feature {self.number}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        lines = list(job.finished.features)
        if not 1 <= self.number <= len(lines):
            raise CommandError("There is no such line.")
        del lines[self.number - 1]
        return replace(job, finished=replace(job.finished, features=tuple(lines)))
