"""A chart of speeds as one line of numbers."""

from __future__ import annotations

from jobsheet.errors import QuantityError
from jobsheet.units.lazily import pattern

_BETWEEN = pattern(r"[\s,;/]+")
_NUMBER = pattern(r"[0-9]{1,5}(\.[0-9]+)?")
#: No spindle of a manual machine has more steps, or turns quicker; common practice, no source.
MOST, QUICKEST = 40, 60_000


def numbers(text: str) -> tuple[str, ...]:
    """The speeds of a line [rpm], rising. Raises QuantityError with the place
    of the one that cannot be read.
    """
    found = []
    at = 0
    for word in _BETWEEN.split(text.strip()):
        at = text.find(word, at)
        plain = word.removesuffix("rpm")
        if not plain:
            continue
        if not _NUMBER.fullmatch(plain) or not 0 < float(plain) <= QUICKEST:
            raise QuantityError(
                f"“{word[:20]}” is no speed; write the numbers of the chart, such as 200, 350, 600.",
                at,
                at + len(word),
            )
        found.append(plain)
        at += len(word)
    if not found:
        raise QuantityError("Write the numbers of the chart, such as 200, 350, 600.", 0, len(text))
    if len(found) > MOST:
        raise QuantityError(f"More than {MOST} speeds; give each range its own line.", 0, len(text))
    return tuple(sorted(found, key=float))


def spelt(rpm: float) -> str:
    """A speed that is only estimated: two figures of it count."""
    return f"{float(f'{rpm:.2g}'):g}"
