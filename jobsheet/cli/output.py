"""What several verbs print and write: JSON with stable order, columns that line up, and never a PDF over something else."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from jobsheet.errors import CannotWrite


def as_json(value: Any) -> None:
    """Print a value as JSON; numbers that are not finite never get this far."""
    click.echo(json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False))


def columns(
    rows: list[tuple[str, ...]], indent: str = "", under: list[tuple[str, ...]] | None = None
) -> None:
    """Print rows with their columns lined up; the last one is left as long as it is. `under` stands below each row."""
    if not rows:
        return
    widths = [max(len(row[index]) for row in rows) for index in range(len(rows[0]) - 1)]
    for row, notes in zip(rows, under or [()] * len(rows), strict=True):
        cells = [cell.ljust(width) for cell, width in zip(row[:-1], widths, strict=True)]
        click.echo((indent + "  ".join([*cells, row[-1]])).rstrip())
        for note in notes:
            click.echo(f"{indent}    {note}")


def refuse_to_overwrite(target: Path, jobs: tuple[str, ...] = ()) -> None:
    """A slip of the shell must not turn a job, or anything but an older PDF, into a PDF."""
    if any(target.resolve() == Path(job).resolve() for job in jobs):
        raise CannotWrite(f"{target.name} is the job itself; choose another name for the sheets.")
    if target.is_file() and target.stat().st_size:
        with target.open("rb") as stream:
            if not stream.read(5).startswith(b"%PDF"):
                raise CannotWrite(
                    f"{target.name} is there already and is no PDF; choose another name for the sheets."
                )
