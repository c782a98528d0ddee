"""Pages of the help for limits, their verdicts, and how bad a remark is: from `resources/limits.yaml`."""

from __future__ import annotations

from jobsheet.catalog.reading.data import shipped
from jobsheet.review.pages.one_page import Page


def limit_pages() -> list[Page]:
    """One for each limit."""
    verdicts = tuple(f"verdict:{word}" for word in shipped("limits.yaml")["verdicts"])
    captions = (
        ("asks", "What is asked"),
        ("against", "Against what"),
        ("mend", "What makes it lighter"),
        ("source", "Source"),
    )
    return [
        Page(
            id=f"limit:{name}", sort="limit", title=row["title"],
            lines=tuple((caption, row[key]) for key, caption in captions), see=verdicts,
        )
        for name, row in shipped("limits.yaml")["limits"].items()
    ]  # fmt: skip


def verdict_pages() -> list[Page]:
    """One for each verdict."""
    return [
        Page(
            id=f"verdict:{word}",
            sort="verdict",
            title=word,
            lines=(("It means", row["means"]), ("Do", row["do"])),
        )
        for word, row in shipped("limits.yaml")["verdicts"].items()
    ]


def severity_pages() -> list[Page]:
    """One for each word that says how bad a remark is."""
    rows = shipped("limits.yaml")["severities"].items()
    return [
        Page(id=f"severity:{word}", sort="how bad a remark is", title=word, lines=(("", said),))
        for word, said in rows
    ]
