"""Who typed in what happened last time, by role: it stands there again. A file
that is broken is as good as none.
"""

from __future__ import annotations

from jobsheet.paths import own_folder

NAME = "last-role.txt"
#: More than a role has, in letters.
LONGEST = 80


def last_role() -> str:
    """The role of last time; empty before the first."""
    try:
        return " ".join((own_folder() / NAME).read_text(encoding="utf-8").split())[:LONGEST]
    except (OSError, UnicodeDecodeError):
        return ""


def keep_role(role: str) -> None:
    """For the next time; a folder that cannot be written to is no reason to stop."""
    if role == last_role():
        return
    try:
        own_folder().mkdir(parents=True, exist_ok=True)
        (own_folder() / NAME).write_text(f"{role}\n", encoding="utf-8")
    except OSError:
        return
