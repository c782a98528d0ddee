"""Who writes: the person, the computer, and whether the program that said so has ended."""

from __future__ import annotations

import getpass
import os
import platform
from collections.abc import Sequence
from pathlib import Path


def computer() -> str:
    """The computer by its name, in signs that a file's name may have."""
    kept = (sign for sign in platform.node() if sign.isalnum() or sign in {"-", "_"})
    return "".join(kept)[:40] or "computer"


def person() -> str:
    """Who works at it, as the system knows them."""
    try:
        return " ".join(getpass.getuser().split())[:40] or "Somebody"
    except (OSError, KeyError, ImportError):
        return "Somebody"


def has_ended(said: Sequence[str]) -> bool:
    """Whether the program of a lock (person, computer, number, time) has ended; False
    where that cannot be known from here.
    """
    if os.name == "nt" or len(said) != 4 or said[1] != computer() or not said[2].isdigit():
        return False
    try:
        os.kill(int(said[2]), 0)
    except ProcessLookupError:
        return True
    except (OSError, OverflowError):
        return False
    try:  # one that was killed is in the list until whoever began it has asked; proc(5): Z and X
        state = Path(f"/proc/{said[2]}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()
    except (OSError, ValueError):
        return False
    return state[:1] in (["Z"], ["X"])
