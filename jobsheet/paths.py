"""Where things lie: what is shipped with the program, and the person's own folder."""

from __future__ import annotations

import os
import sys
from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _shipped(name: str) -> Path:
    """A folder inside the installed package, or beside it in a checkout."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


@cache
def resources() -> Path:
    """The shipped data: catalogues, machine cards, notes, fonts and icons."""
    return _shipped("resources")


@cache
def sample_jobs() -> Path:
    """The shipped sample jobs, all of them invented."""
    return _shipped("sample_jobs")


def own_folder() -> Path:
    """The person's own settings and cards; not made until something is written there.

    Not remembered, so that a changed environment (a test, a second user) is seen at once.
    """
    if override := os.environ.get("JOBSHEET_HOME"):
        return Path(override)
    home = Path.home()
    if sys.platform == "win32":
        return Path(os.environ.get("APPDATA", home / "AppData" / "Roaming")) / "jobsheet"
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / "jobsheet"
    return Path(os.environ.get("XDG_CONFIG_HOME", home / ".config")) / "jobsheet"
