"""Words that people write in a plan, read leniently: whole words, any case, also in the plural."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

from jobsheet.model.job import SetUp


@lru_cache(maxsize=512)
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    either = "|".join(re.escape(word).replace(r"\ ", r"[\s-]+") for word in words)
    return re.compile(rf"\b(?:{either})s?\b", re.IGNORECASE)


def said(text: str, *words: str) -> bool:
    """Whether one of these words stands in the text; a blank in a word also stands for a hyphen."""
    return bool(text) and _pattern(words).search(text) is not None


def words_of(fields: Any) -> str:
    """All that a person wrote in words of one step."""
    return " ".join(
        text
        for text in (getattr(fields, name, "") for name in ("what", "with_what", "note", "edges"))
        if isinstance(text, str) and text
    )


def held_by(set_up: SetUp) -> str:
    """All that a person wrote about how a set-up is held."""
    held = set_up.holding
    return " ".join(text for text in (held.device, held.packing, held.stop, held.note, set_up.note) if text)


def names_round_bar(text: str) -> bool:
    """Whether something soft or round lies between the work and the moving jaw."""
    return said(text, "round bar", "roller", "soft packing", "soft jaw", "copper packing", "aluminium packing", "lead packing") or (
        said(text, "card", "paper", "wood", "ball") and said(text, "moving jaw")
    )  # fmt: skip
