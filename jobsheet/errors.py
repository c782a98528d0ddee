"""Every failure the program expects, each with a sentence ready to show.

JobsheetError
├── CalcError          a formula has no meaning for what was put in
├── QuantityError      what was typed cannot be read as what was asked for
├── DocumentError      a file cannot be used: all its problems, each with its line
├── ChangedOutside     the file on disk is not the one that was opened
├── CannotWrite        a file could not be written; nothing was lost
├── NoSuchEntry        a name that no catalogue, card or sample has
└── CommandError       an edit that makes no sense for this job

Only `gui/` and `cli/` turn one into a box or an exit code.
"""

from __future__ import annotations

from typing import NamedTuple


class JobsheetError(Exception):
    """The root of all expected failures; `str()` is the sentence for the user."""


class CalcError(JobsheetError):
    """A formula has no meaning for what was put in.

    Parameters
    ----------
    name : str
        The input that is at fault, as the formula calls it
    value : object
        What was put in
    must : str
        What it must be, such as "above zero"
    """

    def __init__(self, name: str, value: object, must: str) -> None:
        super().__init__(f"{name.replace('_', ' ')} is {value}; it must be {must}")
        self.name = name
        self.value = value
        self.must = must


class QuantityError(JobsheetError):
    """What was typed cannot be read; knows which part is at fault.

    Parameters
    ----------
    sentence : str
        What is wrong and what to write instead
    start, end : int
        The part of the text that is wrong, for the wavy line under it
    """

    def __init__(self, sentence: str, start: int = 0, end: int | None = None) -> None:
        super().__init__(sentence)
        self.start = start
        self.end = end

    def kept(self) -> QuantityError:
        """The same, without where it was raised: who keeps it would keep everything that
        stood there, a window with its job.
        """
        self.__traceback__ = self.__context__ = self.__cause__ = None
        return self


class Problem(NamedTuple):
    """One thing wrong in a file: where, and what to write."""

    line: int | None
    path: str
    sentence: str

    def __str__(self) -> str:
        """The problem as one line of text."""
        where = f"line {self.line}: " if self.line else ""
        path = f"{self.path}: " if self.path else ""
        return f"{where}{path}{self.sentence}"


#: So many problems of a file are said; of a file that is something else there are tens
#: of thousands, and one reads a few.
MOST_SAID = 198


class DocumentError(JobsheetError):
    """A file cannot be used; holds every problem found in it, not only the
    first, and says as many as one can read.

    Not `whole`: there are more, but nobody went on looking.
    """

    def __init__(self, name: str, problems: tuple[Problem, ...], *, whole: bool = True) -> None:
        # A line's end in a name or a text must not make a line of its own: it would be read as ours.
        lines = [f"  {' '.join(str(problem).split())}" for problem in problems[:MOST_SAID]]
        if len(problems) > MOST_SAID:
            least = "" if whole else "at least "
            lines.append(f"  and {least}{len(problems) - MOST_SAID} more")
        super().__init__("\n".join([f"{' '.join(name.split())} cannot be used:", *lines]))
        self.name = name
        self.problems = problems


class ChangedOutside(JobsheetError):
    """The file was changed by something else since it was opened; it is not overwritten."""


class CannotWrite(JobsheetError):
    """A file could not be written; what stood there still stands."""


class NoSuchEntry(JobsheetError):
    """A name that no catalogue or card has, with the nearest that there is."""


class CommandError(JobsheetError):
    """An edit that makes no sense for this job, such as moving a row that is gone."""


def begun_large(said: str) -> str:
    """A sentence with a large letter at its beginning; the name of a file keeps the one that it has."""
    named = "." in said.split(" ", maxsplit=1)[0].rstrip(".,:;")
    return said if named else f"{said[:1].upper()}{said[1:]}"


def as_sentence(words: object) -> str:
    """What an error or a text says, as a sentence that stands alone: begun large and ended once."""
    return begun_large(str(words)).rstrip(".") + "."
