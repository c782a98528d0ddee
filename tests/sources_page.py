"""Writes `tests/SOURCES.md`: every outside number that the tests check us against, and what we get.

`python -m tests.sources_page` writes it anew; `tests/test_sources_page.py` fails
while it is not the present one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby
from pathlib import Path

import pytest
import yaml

from .cutting.published import PARTS, ROWS
from .cutting.row import Row

PAGE = Path(__file__).with_name("SOURCES.md")
SOURCES = yaml.safe_load((PAGE.parents[1] / "resources" / "sources.yaml").read_text("utf-8"))["sources"]

MARKS = {
    "read": "the number was read on the page of its source",
    "part remembered": "the page was read, but an input or the answer is from memory",
    "remembered": "the book is named from memory and was not read again",
    "derived": "not an outside number: worked out in our own notes, apart from the program",
}
OUTSIDE = ("read", "part remembered", "remembered")
HEAD = """# What the formulas are checked against

Written by `python -m tests.sources_page`; do not edit. Every line is a test of `tests/cutting/test_published.py`.
*Ours* is what the program gives, *within* how far the two may be apart: mostly half a unit of the last printed digit.
A line that does not agree says why, and its test fails when it begins to.
"""


def agrees(row: Row) -> bool:
    """Whether our number is the published one."""
    return bool(row.calc() == pytest.approx(row.published, abs=row.tolerance, rel=1e-9))


def count(rows: tuple[Row, ...], mark: str) -> tuple[int, int]:
    """How many rows are of this mark, and how many of them agree."""
    found = [row for row in rows if row.mark == mark]
    return len(found), sum(agrees(row) for row in found)


def _number(value: float) -> str:
    """Four digits; less than a millionth of anything here is nothing."""
    return f"{0.0 if abs(value) < 1e-6 else value:.4g}"


def _source(key: str) -> str:
    source = SOURCES[key]
    words = f"{source['author']}: {source['title']}"
    words += f", {source['year']}" if "year" in source else ""
    return words + (f"; {source['where']}" if "where" in source else "")


def _line(row: Row) -> str:
    unit = f" {row.unit}" if row.unit else ""
    verdict = "yes" if row.ours is None else "no"
    if row.note:
        verdict += f": {row.note}"
    cells = (
        row.id,
        row.what,
        f"{SOURCES[row.source]['title']} ({row.source})",
        row.mark,
        f"{row.published:.6g}{unit}",
        _number(row.calc()),
        f"{row.tolerance:.2g}",
        verdict,
    )
    return "| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |"


def _counts(title: str, columns: tuple[str, ...], cells: Callable[[str], tuple[str, ...]]) -> Iterator[str]:
    yield f"| {title} | {' | '.join(columns)} |"
    yield "| --- " * (len(columns) + 1) + "|"
    for mark, meaning in MARKS.items():
        yield f"| *{mark}*: {meaning} | {' | '.join(cells(mark))} |"


def _part(rows: tuple[Row, ...]) -> Iterator[str]:
    yield "| Check | What | Source | How known | Published | Ours | Within | Agrees |"
    yield "| --- | --- | --- | --- | --- | --- | --- | --- |"
    yield from map(_line, rows)


def page() -> str:
    """The whole page."""
    lines = [HEAD]
    lines.append(
        "Counts are given apart for each way a number is known, and never as one total: the first figure is how many"
    )
    lines.append("numbers, the second how many of them come out.\n")
    columns = tuple(title.partition(",")[0].partition(":")[0] for title in PARTS)
    lines += _counts(
        "How known",
        columns,
        lambda mark: tuple("{}, {} agree".format(*count(rows, mark)) for rows in PARTS.values()),
    )
    heads = {
        name: next(group).mark
        for name, group in groupby(PARTS[next(iter(PARTS))], key=lambda row: row.id.split()[0])
    }
    apart = ", ".join(f"{list(heads.values()).count(mark)} {mark}" for mark in MARKS)
    lines.append(f"\nThe worked examples are {len(heads)} in number, most with several numbers: {apart}.\n")
    for title, rows in PARTS.items():
        lines += [f"## {title}\n", *_part(rows), ""]
    lines += ["## The sources\n", "| Key | Source |", "| --- | --- |"]
    lines += [f"| {key} | {_source(key)} |" for key in SOURCES if key in {row.source for row in ROWS}]
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
