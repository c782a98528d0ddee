"""Sizes in a line of text, each with the word before it: `drill 6.8` in a job and
`drill 6.80 mm` in a question are the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.remembered import remembered

MM_IN = 25.4
#: Numbers as people write them: `6.8`, `6,8`, `1/4`, `1 1/4`, `1-1/4`, `#7`; not the
#: tail of a word (`M8`, `H7`, `HM-103`).
_TOKEN = re.compile(
    r"(?P<numbered>#\d{1,2}\b)"
    r"|(?P<mixed>(?<![\w./-])\d{1,3}[ -]\d{1,3}/\d{1,3}(?![\w./-]))"
    r"|(?P<fraction>(?<![\w./-])\d{1,3}/\d{1,3}(?![\w./]|-\d))"
    r"|(?P<number>(?<![\w./#-])\d{1,5}(?:[.,]\d{1,4})?(?![\w/]|[.,]\d))"
    r"|(?P<word>[^\W\d_][\w]*)"
)
#: Signs of a diameter are no letters of a word.
_ROUND = str.maketrans("Øø⌀", "   ")
_UNIT = re.compile(r"\s*(mm|inches|inch|in|\")(?!\w)", re.IGNORECASE)
#: A size is the same as another within so many micrometres (lessons-and-shelf section 6).
NEAR = 5
#: No workpiece is larger [µm].
MOST = 100_000_000


class Size(Struct, frozen=True):
    """A length in micrometres and the word before it, in small letters; `exact` where
    its unit was said or can only be one.
    """

    micrometres: int
    before: str
    exact: bool
    start: int
    end: int


def sizes(text: str, units: str = "mm") -> Iterator[Size]:
    """Every size of a line, with the word that stands before it.

    Parameters
    ----------
    units : str
        `mm` or `in`, of a number without one; a fraction and a numbered drill are inches anyhow
    """
    before = ""
    text = text.translate(_ROUND)
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind == "word":
            before = before if match[0] in "xX×" else match[0].casefold()
            continue
        unit = _UNIT.match(text, match.end())
        said = unit[1].lower() if unit else ""
        millimetres = _millimetres(kind or "", match[0], said or units)
        if millimetres is not None and 0 < millimetres * 1000 <= MOST:
            exact = bool(said) or kind != "number"
            end = unit.end() if unit else match.end()
            yield Size(round(millimetres * 1000), before, exact, match.start(), end)


def _millimetres(kind: str, text: str, unit: str) -> float | None:
    inches = unit != "mm"
    if kind == "number":
        return float(text.replace(",", ".")) * (MM_IN if inches else 1.0)
    if kind == "numbered":
        return _drill(text)
    whole, _, fraction = text.replace("-", " ").rpartition(" ")
    over, _, under = fraction.partition("/")
    if int(under) == 0:
        return None
    value = (int(whole) if whole else 0) + int(over) / int(under)
    return value * (1.0 if unit == "mm" and kind == "mixed" else MM_IN)


@remembered(256)
def _drill(text: str) -> float | None:
    from jobsheet.catalog.tools.drills import read_drill_size

    try:
        return float(read_drill_size(text, "in")) * 1000
    except JobsheetError:
        return None
