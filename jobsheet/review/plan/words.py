"""What people wrote in a plan, read leniently and only where it is plain: whole words, capitals as they come."""

from __future__ import annotations

import re

from jobsheet.holdings.registry import rests_of
from jobsheet.holdings.registry import words_of as holding_words_of
from jobsheet.model.job import Operation, SetUp
from jobsheet.remembered import remembered


@remembered(512)
def _pattern(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)


@remembered(512)
def _either(words: tuple[str, ...]) -> str:
    every = "|".join(re.escape(word).replace(r"\ ", r"[\s-]+") for word in words)
    return f"(?:{every})s?"


def says(pattern: str, *texts: str) -> bool:
    """Whether one of these texts has the words of a pattern."""
    return any(_pattern(pattern).search(text) for text in texts)


def said(text: str, *words: str) -> bool:
    """Whether one of these words stands in the text, also in the plural; a blank in a word also stands for a hyphen."""
    return bool(text) and says(_either(words), text)


def words_of(operation: Operation) -> tuple[str, ...]:
    """A step's own words: what it does, with what, its note."""
    fields = operation.fields
    found = (getattr(fields, name, "") for name in ("what", "with_what", "note"))
    return tuple(text for text in found if text)


def holding_words(set_up: SetUp) -> tuple[str, ...]:
    """All that a person wrote about how a set-up is held."""
    holding = set_up.holding
    found = (holding_words_of(holding), rests_of(holding), holding.note, set_up.note)
    return tuple(text for text in found if text)


def held_by(set_up: SetUp) -> str:
    """The same in one text."""
    return " ".join(holding_words(set_up))


def names_round_bar(text: str) -> bool:
    """Whether something soft or round lies between the work and the moving jaw."""
    return said(text, "round bar", "roller", "soft packing", "soft jaw", "copper packing", "aluminium packing", "lead packing") or (
        said(text, "card", "paper", "wood", "ball") and said(text, "moving jaw")
    )  # fmt: skip
