"""Results of lessons that somebody said to keep: one line each in the person's own
folder, by initials; gone in one press.

Nothing is kept by default, nothing is sent, and nothing of it stands in a job. What is not needed to see how
a class gets on is not written: no name, no answer.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct

from jobsheet.errors import CannotWrite, CommandError
from jobsheet.paths import own_folder
from jobsheet.storage.disk import write_file

#: So many letters are initials or a number, and no name.
MOST = 6
_HEAD = "# Results of lessons: day, initials, part, exercise, sheet, result. Delete this file when it is no longer needed.\n"


class LessonResult(Struct, frozen=True, kw_only=True):
    """One sheet as it was marked; `went` in a few words, such as `2 moves, holes-before-face`."""

    day: str
    initials: str
    part: str
    exercise: str
    sheet: int
    went: str

    def line(self) -> str:
        """As it is written."""
        parts = (self.day, self.initials, self.part, self.exercise, str(self.sheet), self.went)
        return "; ".join(" ".join(part.replace(";", ",").split()) for part in parts)


def place() -> Path:
    """Where they lie."""
    return own_folder() / "lesson-results.txt"


def kept_results() -> tuple[str, ...]:
    """The lines that are kept, the oldest first; nothing where nothing was ever kept.

    Raises
    ------
    CannotWrite
        If the file is there and cannot be read: then nothing may be written over it.
    """
    if not place().is_file():
        return ()
    try:
        text = place().read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or "it is not text in UTF-8"
        raise CannotWrite(f"{place().name} cannot be read: {why}.") from error
    return tuple(line for line in text.splitlines() if line and not line.startswith("#"))


def keep_result(result: LessonResult) -> None:
    """Write one line behind the others.

    Raises
    ------
    CommandError
        Without initials, or where they are a name.
    CannotWrite
        If the disk refuses.
    """
    initials = result.initials.strip()
    if len(initials.split()) != 1 or len(initials) > MOST:
        raise CommandError(f"Initials or a number of the class, at most {MOST} letters: no name is kept.")
    lines = (*kept_results(), result.line())
    try:
        place().parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{place().parent} cannot be made: {error.strerror or error}.") from None
    write_file(place(), _HEAD + "\n".join(lines) + "\n")


def delete_results() -> None:
    """Delete them all. Raises OSError where the disk refuses."""
    place().unlink(missing_ok=True)
