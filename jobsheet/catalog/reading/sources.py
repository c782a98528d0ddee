"""Where a number comes from, in words that can be printed beside it."""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.catalog.reading.data import shipped


@cache
def table() -> dict[str, Any]:
    """Every source by its key, from `resources/sources.yaml`."""
    data = shipped("sources.yaml")
    found: dict[str, Any] = data.get("sources", data)
    return found


#: What stands for a source that nobody can look up.
COMMON = "common practice, no source"


def words(key: str) -> str:
    """A source as a line of text for screen and sheet: publisher, title,
    edition, page, and whether it was read.

    A handbook that gives the same stands first. What nobody can look up is called common practice;
    `resources/sources.yaml` says where it was met.
    """
    row = table().get(key)
    if row is None:
        return key.replace("-", " ")
    if isinstance(row, str):
        return row
    if key == "common-practice" or row.get("private"):
        return COMMON
    parts = [
        str(row[name]) for name in ("author", "title", "year", "where", "page", "equation") if row.get(name)
    ]
    trust = row.get("trust") or row.get("mark")
    text = ", ".join(dict.fromkeys(parts)) or key
    said = f"{text} ({trust})" if trust else text
    return f"{words(row['first'])}; {said}" if row.get("first") else said
