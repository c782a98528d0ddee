"""How a size is measured, in the line in which it is asked:
`11.5 ±0.1, micrometer, at both ends, before unclamping`.
"""

from __future__ import annotations

import re
from typing import Any

from jobsheet.catalog.tools.cutter_words import reading
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Measured, Size
from jobsheet.units.grammar import nearest, read
from jobsheet.units.lazily import pattern

INSTRUMENTS = (
    "calliper", "micrometer", "inside micrometer", "depth micrometer", "bore gauge", "plug gauge", "gap gauge", "thread gauge",
    "indicator", "square", "depth gauge", "other",
)  # fmt: skip
#: As one was spelled once, and as it is today: read for ever, never written again.
OLDER = {"caliper": "calliper"}
BEFORE, AFTER = "before unclamping", "after unclamping"
#: Measured, cut and measured once more until it is there; checked by a gauge with two ends.
BETWEEN, GO = "between cuts", "go and no-go"
#: A comma with a blank behind it parts; a comma inside a number does not.
PARTS = pattern(r"[^;,]+(?:,(?!\s|$)[^;,]*)*")
_WHERE = pattern(r"^(?:at|on|from|across|over|in|near)\b", re.IGNORECASE)
#: Words that mean more than one place.
_SPREAD = pattern(
    r"^(?:at|on|in|over|across|near)\s+(?:the\s+)?(?:(?:all|both|each|either|every|two|three|four|five|six|eight|several|\d+)\b"
    r"|(?:whole\s+)?(?:length|width|corners|ends)\b)",
    re.IGNORECASE,
)
_ASKED = pattern(r"^(square|place)\s+(?:to\s+(\S+)\s+)?[±⌀]?\s*(.*\d.*)$", re.IGNORECASE)
_BETWEEN = pattern(r"^(?:between (?:the )?(?:cuts|passes)|measure[, -]+cut[, -]+measure)$", re.IGNORECASE)
_GO = pattern(r"^(?:go|no-go|go(?: and |/|-)no-?go|go and not go)$", re.IGNORECASE)
_OTHER = {
    **OLDER,
    "callipers": "calliper",
    "calipers": "calliper",
    "mike": "micrometer",
    "clock": "indicator",
    "bench square": "square",
}
#: Instruments from the coarse to the fine, for what is suggested: how finely
#: each reads is `cutter_words.reading`.
_BY_READING = ("calliper", "micrometer")
#: A gauge reads to a quarter of the limits (common practice, no source).
SHARE = 0.25


def read_measure(text: str, units: str = "mm") -> Measured:
    """What is measured, and how: a size, then in any order the instrument, where, when, how
    it is checked, squareness and place.

    The size may be left out where squareness or the place of a hole is asked.

    Raises
    ------
    QuantityError
        With the part that cannot be read.
    """
    size: Size | None = None
    said: dict[str, Any] = {}
    asks: list[tuple[str, float, str]] = []
    for part in PARTS.finditer(text):
        words = part[0].strip()
        at = part.start() + len(part[0]) - len(part[0].lstrip())
        if not words:
            continue
        if match := _ASKED.match(words):
            asks.append((match[1].casefold(), _value(match[3], units, at), match[2] or ""))
        elif (found := _how(words)) is not None:
            name, value = found
            if said.get(name, value) != value:
                raise QuantityError(
                    f"“{words}” and “{said[name]}” cannot both be; take one out.", at, at + len(words)
                )
            said[name] = value
            if name == "where":
                said["spread"] = _SPREAD.match(words) is not None
        elif size is None and not said and not asks:
            size = read_size(words, units)
        else:
            near = nearest(words.casefold(), (*INSTRUMENTS, BEFORE, AFTER, BETWEEN, GO))
            hint = (
                f"Did you mean {near}?"
                if near
                else f"Write, for example, micrometer, at both ends, {BEFORE}."
            )
            raise QuantityError(f"“{words}” is no way of measuring. {hint}", at, at + len(words))
    if size is None and not asks:
        raise QuantityError(
            "No size is written here; begin with it, such as 12 ±0.1, micrometer.", 0, len(text)
        )
    if size is None:
        return Measured(0.0, 0.0, 0.0, text, asks=tuple(asks), **said)
    return Measured(size.nominal, size.low, size.high, text, size=size.text.strip(), asks=tuple(asks), **said)


def instrument_named(words: str) -> str:
    """The instrument that a part of the line names, as one of `INSTRUMENTS`; nothing where it names none."""
    plain = " ".join(words.casefold().split())
    plain = _OTHER.get(plain, plain)
    return plain if plain in INSTRUMENTS else ""


def _how(words: str) -> tuple[str, Any] | None:
    """What a part says of measuring, as a field and its value."""
    if instrument := instrument_named(words):
        return "instrument", instrument
    plain = " ".join(words.casefold().split())
    if plain in (BEFORE, AFTER):
        return "when", plain
    if _BETWEEN.match(words):
        return "between", True
    if _GO.match(words):
        return "goes", True
    return ("where", words) if _WHERE.match(words) else None


def _value(text: str, units: str, at: int) -> float:
    try:
        return read(text, "length", units)
    except QuantityError as error:
        raise QuantityError(str(error), at, at + len(text)) from None


def suggested(size: Size) -> str:
    """An instrument that reads finely enough for the limits of a size: the
    coarsest that reads to a quarter of them.

    Common practice, no source. Nothing where no limits are asked, and
    `indicator over gauge blocks` where a micrometer is too coarse.
    """
    width = size.high - size.low
    if width <= 0:
        return ""
    for name in _BY_READING:
        reads = reading(name)
        if reads is not None and reads <= SHARE * width + 1e-12:
            return name
    return "indicator over gauge blocks"


def how_in_words(measured: Measured) -> str:
    """How it is measured, without the size: `micrometer, at both ends, before unclamping`."""
    asked = [f"{name} {f'to {to} ' if to else ''}{value * 1e3:g} mm" for name, value, to in measured.asks]
    return ", ".join(
        one
        for one in (
            measured.instrument, measured.where, measured.when, BETWEEN if measured.between else "", GO if measured.goes else "", *asked,
        )
        if one
    )  # fmt: skip
