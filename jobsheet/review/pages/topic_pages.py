"""Pages of the help for what `jobsheet why` says: remarks, reminders, safety notes, choices of the trade."""

from __future__ import annotations

import re

from jobsheet.review.pages.explained import KINDS, Topic, topics
from jobsheet.review.pages.one_page import Page

_TOPICS = {KINDS[0]: "remark", KINDS[1]: "reminder", KINDS[2]: "note", KINDS[3]: "choice"}
_LINE = re.compile(r"^([A-Z][A-Za-z ,.]{1,24}): (.*)$")


def topic_pages() -> list[Page]:
    """What `jobsheet why` says."""
    made: dict[str, Page] = {}
    for topic in topics():
        id_ = f"{_TOPICS[topic.kind]}:{topic.id}"
        while id_ in made:  # laws of several places share a name
            id_ += "+"
        made[id_] = Page(
            id=id_, sort=_sort(topic), title=topic.title, lines=_parted(topic.lines), see=_severity(topic)
        )
    return list(made.values())


def _sort(topic: Topic) -> str:
    names = {
        KINDS[0]: f"remark, {topic.word}",
        KINDS[1]: "reminder",
        KINDS[2]: "safety note",
        KINDS[3]: "choice of the trade",
    }
    return names[topic.kind]


def _severity(topic: Topic) -> tuple[str, ...]:
    return (f"severity:{topic.word}",) if topic.kind == KINDS[0] else ()


def _parted(lines: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Lines with what they begin with apart; a line that goes on is joined to the one before it."""
    parted: list[tuple[str, str]] = []
    for line in lines:
        if match := _LINE.match(line):
            parted.append((match[1], match[2]))
        elif line and parted and not line[0].isupper():
            parted[-1] = (parted[-1][0], f"{parted[-1][1]} {line}")
        elif line:
            parted.append(("", line))
    return tuple(parted)
