"""Days in a question: `October`, `October 2026`, `2026-10`, `2026-10-14`: when a job
was made last, when it was planned.
"""

from __future__ import annotations

import re

from msgspec import Struct

MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december",
)  # fmt: skip
_ISO = re.compile(
    r"(?<![\w-])(?P<year>(?:19|20)\d\d)-(?P<month>0[1-9]|1[0-2])(?:-(?P<day>[0-3]\d))?(?![\w-])"
)
_NAMED = re.compile(rf"\b(?P<name>{'|'.join(MONTHS)})\b(?:\s+(?P<year>(?:19|20)\d\d)\b)?", re.IGNORECASE)


class When(Struct, frozen=True):
    """As it was said, and the pattern that a day of the index then has; `_`
    stands for any sign, `%` for any more.
    """

    said: str
    pattern: str


def asked_when(text: str) -> tuple[tuple[When, ...], str]:
    """The days of a question, and the rest of it. `may` is a month where it is
    written large or a year follows.
    """
    found: list[When] = []

    def iso(match: re.Match[str]) -> str:
        found.append(When(match[0], f"{match[0]}%"))
        return " "

    def named(match: re.Match[str]) -> str:
        name, year = match["name"], match["year"]
        if name == "may" and not year:
            return match[0]
        month = MONTHS.index(name.casefold()) + 1
        found.append(When(match[0], f"{year or '____'}-{month:02d}%"))
        return " "

    left = _NAMED.sub(named, _ISO.sub(iso, text))
    return tuple(found), left
