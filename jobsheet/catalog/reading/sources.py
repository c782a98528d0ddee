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


def words(key: str) -> str:
    """A source as a line of text for screen and sheet: author, title, year, page, and whether it was read.

    Who makes tools or machines is not named there; `resources/sources.yaml` has the name.
    """
    if key == "common-practice":
        return "common practice, no source"
    row = table().get(key)
    if row is None:
        return key.replace("-", " ")
    if isinstance(row, str):
        return row
    parts = [
        str(row[name]) for name in ("author", "title", "year", "where", "page", "equation") if row.get(name)
    ]
    if row.get("maker"):
        parts[0] = "a maker"
    trust = row.get("trust") or row.get("mark")
    text = ", ".join(dict.fromkeys(parts)) or key
    return f"{text} ({trust})" if trust else text
