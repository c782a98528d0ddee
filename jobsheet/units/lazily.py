"""Regular expressions that are made when they are first used: most texts of a job need a few of them."""

from __future__ import annotations

import re
from typing import Any, cast


class _Pattern:
    """Stands for a pattern until something is asked of it."""

    def __init__(self, pattern: str, flags: int) -> None:
        self._given = (pattern, flags)

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):
            raise AttributeError(name)
        found = getattr(re.compile(*self._given), name)
        self.__dict__[name] = found
        return found


def pattern(text: str, flags: int = 0) -> re.Pattern[str]:
    """The same as `re.compile`, later."""
    return cast("re.Pattern[str]", _Pattern(text, flags))
