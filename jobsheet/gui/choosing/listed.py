"""One thing of a list: what stands in its row, and what is taken with it."""

from __future__ import annotations

from msgspec import Struct


class Listed(Struct, frozen=True, kw_only=True):
    """`key` is what is taken; `title` stands in bold with `under` below it, `fact`
    beside them, `beside` at the right.

    `hit` and `under_hit` are the parts that were typed. `sign` is an icon with the
    token of its colour, before the fact.
    """

    key: str
    title: str
    under: str = ""
    fact: str = ""
    beside: str = ""
    sign: tuple[str, str] = ("", "")
    hit: tuple[int, int] = (0, 0)
    under_hit: tuple[int, int] = (0, 0)
    #: Why it cannot be taken; empty where it can.
    away: str = ""

    def spoken(self) -> str:
        """As a screen reader says it."""
        parts = (self.title, self.under, self.fact, self.beside, self.away)
        return ", ".join(part for part in parts if part)


def hit_in(text: str, words: tuple[str, ...]) -> tuple[int, int]:
    """Where the first of these words that stands in a text stands in it."""
    folded = text.casefold()
    for word in words:
        at = folded.find(word)
        if word and at >= 0:
            return at, at + len(word)
    return 0, 0


def holds_all(text: str, words: tuple[str, ...]) -> bool:
    """Whether every word begins some word of a text: `20 end` is in `end mill 20 mm, drawer 1`."""
    parts = text.casefold().replace(",", " ").replace("(", " ").split()
    return all(any(part.startswith(word) for part in parts) for word in words)


def words_of(typed: str) -> tuple[str, ...]:
    """What was typed, as words to look for."""
    return tuple(typed.casefold().replace(",", " ").split())
