"""Reads the data that is shipped with the program; every scalar stays text until a catalogue asks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jobsheet.paths import resources


def parsed(text: str) -> Any:
    """The content of a text of ours in YAML, with all scalars as text.

    What people write is read strictly and with its lines, by `strict_yaml`; this is for text
    that the tests have read. Text throughout: `No`, `12:30` and `017` mean what they say.
    """
    import yaml

    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    return yaml.load(text, Loader=loader)  # noqa: S506 - BaseLoader makes text, lists and mappings only


def load(path: Path) -> Any:
    """The content of one of our own YAML files."""
    return parsed(path.read_text(encoding="utf-8"))


def shipped(*names: str) -> Any:
    """The content of a file below resources/."""
    return load(resources().joinpath(*names))
