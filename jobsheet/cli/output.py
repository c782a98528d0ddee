"""What several verbs print and write: JSON with stable order, columns that line up,
and never a PDF over something else.
"""

from __future__ import annotations

import contextlib
import os
import sys
from pathlib import Path

import click

from jobsheet.errors import CannotWrite
from jobsheet.units.lazily import pattern

#: What a terminal acts upon or turns round: control characters, separators,
#: marks of direction, halves of a pair.
_UNPRINTED = pattern(
    "[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff\\ufeff\\ufffe\\uffff]"
)


def printable(text: str) -> str:
    """A text without what a terminal would act upon: each such sign shows as one that is none."""
    return _UNPRINTED.sub("\ufffd", text)


def say(text: str = "", *, err: bool = False) -> None:
    """Print a line. Everything that the command line prints goes through here:
    texts of files act on no terminal.

    Raises
    ------
    CannotWrite
        Where it cannot go where it should, as to a full disk; a reader that has left is no such thing.
    """
    try:
        click.echo(printable(text), err=err)
    except BrokenPipeError:
        raise
    except OSError as error:
        if err:
            return  # nowhere is left where it could be said
        _give_up_output()
        raise CannotWrite(
            f"Not all of it could be printed ({error.strerror}): make room, or have it written elsewhere."
        ) from error


def _give_up_output() -> None:
    """What was not printed is let go, else it would be tried, and complained of, once more at the end."""
    with contextlib.suppress(OSError, ValueError, AttributeError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


def as_json(value: object) -> None:
    """Print a value as JSON; numbers that are not finite never get this far."""
    import json  # late: words alone need it not

    text = json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False)
    # Escaped, not taken out: whoever reads JSON gets the very text.
    say(_UNPRINTED.sub(lambda match: f"\\u{ord(match[0]):04x}", text))


def columns(
    rows: list[tuple[str, ...]], indent: str = "", under: list[tuple[str, ...]] | None = None
) -> None:
    """Print rows with their columns lined up; the last one is left as long as it
    is. `under` stands below each row.
    """
    if not rows:
        return
    widths = [max(len(row[index]) for row in rows) for index in range(len(rows[0]) - 1)]
    for row, notes in zip(rows, under or [()] * len(rows), strict=True):
        cells = [cell.ljust(width) for cell, width in zip(row[:-1], widths, strict=True)]
        say((indent + "  ".join([*cells, row[-1]])).rstrip())
        for note in notes:
            say(f"{indent}    {note}")


def refuse_to_overwrite(target: Path, jobs: tuple[str, ...] = (), start: bytes = b"%PDF") -> None:
    """A slip of the shell must not turn a job, or anything but an older export, into an
    export; asked before the work is done.
    """
    from jobsheet.storage.exporting_files import refuse_other

    try:
        same = any(target.resolve() == Path(job).resolve() for job in jobs)
    except (OSError, ValueError, RuntimeError):
        same = False
    if same:
        raise CannotWrite(f"{target.name} is the job itself; choose another name for the export.")
    refuse_other(target, start)
