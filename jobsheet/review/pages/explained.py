"""What can be asked why: remarks, reminders, safety notes and choices of the
trade, each in words of its own.
"""

from __future__ import annotations

import inspect
from collections.abc import Mapping
from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.catalog.reading.sources import COMMON
from jobsheet.catalog.trade.opinions import Opinion, opinions
from jobsheet.errors import NoSuchEntry
from jobsheet.review.engine import rules
from jobsheet.review.notes import legal, notes, reminders
from jobsheet.units.grammar import nearest

#: The kinds, as their headings stand; each has a page in resources/help.
KINDS = ("Remarks", "Reminders", "Safety notes", "Choices of the trade")
_ONE = {KINDS[1]: "A reminder", KINDS[2]: "A safety note", KINDS[3]: "A choice of the trade"}
_PLAIN = {
    "CP": COMMON,
    "MEM": "from memory",
    "common practice": COMMON,
}
_WHERE = {
    "sheet": "once on a sheet", "set-up": "at the head of a set-up", "tick": "as a box to tick before a set-up",
    "step": "beside a step", "trainee": "beside a step, in a trainee's job",
}  # fmt: skip
_LEVELS = {
    "stop": "read and initialled by a person before cutting",
    "warn": "beside the step or at the head of the set-up",
    "note": "once on a sheet",
    "law": "on the page of safety notes, where the country is chosen",
}


class Topic(Struct, frozen=True, kw_only=True):
    """One thing to explain: its id, a word for how much it weighs or where it
    stands, a title, and its lines.
    """

    id: str
    kind: str
    word: str
    title: str
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """As it is printed in the shell: the title, what it is, and a short answer."""
        what = f"A remark: {self.word}." if self.kind == KINDS[0] else f"{_ONE[self.kind]}."
        return "\n".join([self.title, what, "", *self.lines])


def plain(words: str) -> str:
    """Words as they are compared: small letters, no hyphens, single blanks; a vise is a vice."""
    return " ".join(words.casefold().replace("vise", "vice").replace("-", " ").split())


def called(words: str) -> Topic:
    """The one that is called so: by title or id, else the only one whose title has all these words.

    Raises
    ------
    NoSuchEntry
        With those that it could be, or the nearest title.
    """
    asked = plain(words)
    for topic in topics():
        if asked in (plain(topic.title), plain(topic.id)):
            return topic
    having = [
        topic for topic in topics() if all(word in plain(topic.title).split() for word in asked.split())
    ]
    if len(having) == 1:
        return having[0]
    if having:
        several = "; ".join(f"“{one.title}”" for one in having[:5])
        raise NoSuchEntry(f"“{words}” could be any of these, say more of one: {several}")
    by_words = {plain(topic.title): topic.title for topic in topics()} | {
        plain(topic.id): topic.title for topic in topics()
    }
    near = nearest(asked, tuple(by_words))
    hint = f"did you mean “{by_words[near]}”?" if near else "jobsheet why --list names them all"
    raise NoSuchEntry(f"there is no remark, reminder, safety note or choice called “{words}”; {hint}")


@cache
def topics() -> tuple[Topic, ...]:
    """All of them, by kind, in the order of their data."""
    return (*_remarks(), *_reminders(), *_notes(), *_figures(), *(_choice(opinion) for opinion in opinions()))


def _remarks() -> list[Topic]:
    return [
        Topic(
            id=rule.id, kind=KINDS[0], word=rule.severity, title=rule.title,
            lines=tuple(inspect.cleandoc(rule.explanation).splitlines()),
        )
        for rule in rules()
    ]  # fmt: skip


def _reminders() -> list[Topic]:
    named = shipped("reminders.yaml")["sources"]
    return [
        Topic(
            id=row.id, kind=KINDS[1], word=row.where, title=row.text,
            lines=(f"Stands: {_WHERE[row.where]}", f"When: {row.trigger}", f"Source: {_sources(row.source, named)}"),
        )
        for row in reminders.rows()
    ]  # fmt: skip


def _notes() -> list[Topic]:
    data = shipped("notes.yaml")
    named = data["sources"] | dict.fromkeys(data["makers"], "a maker or seller")
    found = []
    for row in notes.rows():
        lines = [f"Stands: {_LEVELS[row.level]}", f"When: {row.trigger}"]
        if row.initials:
            lines.append(f"Initials of: {row.initials}")
        lines.append(f"Source: {_sources(row.source, named)}")
        text = row.text.replace("*", "")
        found.append(Topic(id=row.id, kind=KINDS[2], word=row.level, title=text, lines=tuple(lines)))
    return found


def _figures() -> list[Topic]:
    named = shipped("legal.yaml")["sources"]
    return [
        Topic(
            id=row.id, kind=KINDS[2], word="law", title=f"{row.subject}, {row.place}",
            lines=(
                row.figure or f"{legal.DEFERRED} {row.see}",
                f"Law or adviser: {row.law.replace('MEM', 'from memory')}",
                f"Read: {row.read.replace('MEM', 'from memory')}",
                f"Stands: {_LEVELS['law']}, with {' or '.join(row.notes)}",
                f"Source: {_sources(row.source, named)}",
            ),
        )
        for row in legal.figures()
    ]  # fmt: skip


def _choice(opinion: Opinion) -> Topic:
    return Topic(
        id=opinion.id, kind=KINDS[3], word=opinion.default, title=opinion.question,
        lines=(
            f"One opinion: {opinion.one} ({opinion.one_source})",
            f"The other: {opinion.other} ({opinion.other_source})",
            f"Until you choose: {opinion.default}",
            f"Why: {opinion.why}",
            f"To choose, in workshop.yaml: {opinion.id.replace('-', ' ')}: {' | '.join(opinion.choices)}",
        ),
    )  # fmt: skip


def _sources(keys: str, named: Mapping[str, Any]) -> str:
    """The keys of a row in words, each once; what can be looked up first."""
    words = dict.fromkeys(_PLAIN.get(key) or str(named[key]).replace("*", "") for key in keys.split("; "))
    sources = [word for word in words if word != COMMON]
    if COMMON not in words:
        return "; ".join(sources)
    return "; ".join((*sources, "common practice")) if sources else COMMON
