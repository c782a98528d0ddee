"""What several verbs print: JSON with stable order, and columns that line up."""

from __future__ import annotations

import json
from typing import Any

import click


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
