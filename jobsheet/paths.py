"""Where things lie: what is shipped with the program, and the person's own folder."""

from __future__ import annotations

import os
import stat
import sys
from collections.abc import Callable
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


def no_file(path: Path) -> str:
    """What lies there in place of a file, as the end of a sentence; nothing
    where it is a file or there is nothing.

    Asked before anything is opened: a pipe would be waited for without end, a device is read without end, and
    writing would put a file where the system has something else.

    Raises
    ------
    OSError
        If it cannot be looked at.
    """
    try:
        mode = path.stat().st_mode
    except (FileNotFoundError, NotADirectoryError):
        return ""
    except ValueError:  # a name that no system has
        return "nothing that can be opened"
    if stat.S_ISREG(mode):
        return ""
    return (
        "a folder"
        if stat.S_ISDIR(mode)
        else next((words for is_one, words in _SPECIAL if is_one(mode)), "no file")
    )


_SPECIAL: tuple[tuple[Callable[[int], bool], str], ...] = (
    (stat.S_ISFIFO, "a pipe"), (stat.S_ISSOCK, "a socket"), (stat.S_ISCHR, "a device"), (stat.S_ISBLK, "a device"),
)  # fmt: skip


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
