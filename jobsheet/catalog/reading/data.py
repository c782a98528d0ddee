"""Reads the data that is shipped with the program; every scalar stays text until a catalogue asks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading import remembered
from jobsheet.paths import resources


def parsed(text: str) -> Any:
    """The content of a text of ours in YAML, with all scalars as text.

    What people write is read strictly and with its lines, by `strict_yaml`; this is for text
    that the tests have read. Text throughout: `No`, `12:30` and `017` mean what they say.
    """
    known = remembered.recall(text, Plain)
    if known is not None and _is_text(known.content):
        return known.content
    import yaml

    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    content = yaml.load(text, Loader=loader)  # noqa: S506 - BaseLoader makes text, lists and mappings only
    remembered.learn(text, Plain, Plain(content))
    return content


class Plain(Struct, array_like=True, forbid_unknown_fields=True):
    """What a text of ours holds, as it is remembered."""

    content: Any


def _is_text(content: Any) -> bool:
    """Whether this is text all through, in lists and mappings, as the parser makes it."""
    if isinstance(content, dict):
        return all(type(name) is str and _is_text(value) for name, value in content.items())
    if isinstance(content, list):
        return all(map(_is_text, content))
    return type(content) is str


def load(path: Path) -> Any:
    """The content of one of our own YAML files."""
    return parsed(path.read_text(encoding="utf-8"))


def shipped(*names: str) -> Any:
    """The content of a file below resources/."""
    return load(resources().joinpath(*names))
