"""Readings that are kept under headings: what is said of each, written anew after a change that is meant."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import yaml

from jobsheet.errors import JobsheetError

Sections = Mapping[str, Callable[[], Iterable[str]]]


def reading(said: Callable[[], Iterable[str]]) -> list[str]:
    """What stands under a heading; a refusal is said too."""
    lines: list[str] = []
    try:
        lines.extend(said())
    except JobsheetError as error:
        lines.append(f"refused: {error}")
    return lines


def kept(file: Path) -> dict[str, list[str]]:
    """What was said."""
    return yaml.load(file.read_text(encoding="utf-8"), yaml.CBaseLoader)


def write(file: Path, sections: Sections) -> None:
    """Write all of it with what is said now."""
    lines = []
    for heading, said in sections.items():
        told = [f"  - {json.dumps(line, ensure_ascii=False)}" for line in reading(said)]
        lines += [f"{json.dumps(heading)}:", *told] if told else [f"{json.dumps(heading)}: []"]
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
