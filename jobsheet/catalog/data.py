"""Reads the data that is shipped with the program; every scalar stays text until a catalogue asks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jobsheet.paths import resources


def load(path: Path) -> Any:
    """The content of one of our own YAML files, with all scalars as text.

    What people write goes through `storage/`, which is strict and knows lines; this is for files
    that the tests have read. Text throughout: `No`, `12:30` and `017` mean what they say.
    """
    import yaml

    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    with path.open(encoding="utf-8") as stream:
        return yaml.load(stream, Loader=loader)  # noqa: S506 - BaseLoader makes text, lists and mappings only


def shipped(*names: str) -> Any:
    """The content of a file below resources/."""
    return load(resources().joinpath(*names))
