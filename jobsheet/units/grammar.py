"""Numbers and units as people write them: a strict grammar, one reading or a sentence.

    quantity  =  number [blank] [unit]
    number    =  [sign] ( whole [-or blank] fraction | fraction | decimal )
    decimal   =  digits [ "." digits ] | digits "," digits   (a comma is a decimal mark)

`1,000` is refused: it is a thousand in one country and one in another. Nothing is guessed, rounded
or clamped; what cannot be read is answered with a sentence that says what to write.
"""

from __future__ import annotations

import math
import re

from jobsheet.errors import QuantityError
from jobsheet.remembered import remembered
from jobsheet.units.lazily import pattern
from jobsheet.units.table import BY_SPELLING, KINDS, bare_unit, unit

_NUMBER = pattern(
    r"""\s*(?P<sign>[+\-−]?)\s*
        (?: (?P<whole>\d+)\s*[-\s]\s*(?P<mixed>\d+\s*[/⁄]\s*\d+)
          | (?P<fraction>\d+\s*[/⁄]\s*\d+)
          | (?P<vulgar>\d*\s*-?\s*[½¼¾⅛⅜⅝⅞])
          | (?P<decimal>(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+\-]?\d+)?)
        )\s*""",
    re.VERBOSE,
)
_THOUSANDS = pattern(r"^[+\-−]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$")
_VULGAR = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8}
#: Longest text that is read at all; people write some ten characters.
LONGEST = 200
#: Sizes beyond these are slips of the pen in any unit, in SI (from a picometre to the size of the earth).
LARGEST = 1e12
_EXAMPLES = {
    ("length", "mm"): "12 mm or 0.5 in",
    ("length", "in"): "0.5 in, 1/2 in or 12 mm",
    ("feed per tooth", "mm"): "0.05 mm",
    ("feed per turn", "mm"): "0.1 mm",
    ("feed", "mm"): "120 mm/min",
    ("cutting speed", "mm"): "25 m/min",
    ("spindle speed", "mm"): "560 rpm",
    ("angle", "mm"): "90°",
    ("torque", "mm"): "20 N·m",
    ("time", "mm"): "5 min",
    ("force", "mm"): "100 N",
}


def example(measures: str, system: str = "mm") -> str:
    """What to write for such a quantity, as a short example."""
    known = _EXAMPLES.get((measures, system)) or _EXAMPLES.get((measures, "mm"))
    if known:
        return known
    first = bare_unit(measures, system)
    return f"12 {first.symbol}" if first else "0.5"


def _fraction(text: str, whole_text: str, start: int) -> float:
    """The value of `3/8`; a fraction over zero has no value."""
    top, bottom = re.split(r"[/⁄]", text)
    if int(bottom) == 0:
        raise QuantityError(f"“{whole_text.strip()}” divides by zero.", start, start + len(text))
    return int(top) / int(bottom)


def read_number(text: str) -> tuple[float, str]:
    """A number and the rest of the text behind it, which is the unit.

    Raises
    ------
    QuantityError
        If no number stands at the beginning, or it is not finite, or its comma has two readings.
    """
    if len(text) > LONGEST:
        raise QuantityError(f"This is too long to be a number: write at most {LONGEST} characters.")
    match = _NUMBER.match(text)
    if not match:
        raise QuantityError(f"“{text.strip()}” does not begin with a number.", 0, len(text))
    sign = -1.0 if match["sign"] in ("-", "−") else 1.0
    if match["mixed"]:
        if int(match["mixed"].replace("⁄", "/").split("/")[0]) >= int(
            match["mixed"].replace("⁄", "/").split("/")[1] or 1
        ):
            raise QuantityError(
                f"“{match.group().strip()}” is not a mixed number: its fraction is one or more.",
                0,
                match.end(),
            )
        value = int(match["whole"]) + _fraction(match["mixed"], text, match.start("mixed"))
    elif match["fraction"]:
        value = _fraction(match["fraction"], text, match.start("fraction"))
    elif match["vulgar"]:
        digits = match["vulgar"][:-1].strip(" -")
        value = (int(digits) if digits else 0) + _VULGAR[match["vulgar"][-1]]
    else:
        value = _decimal(match["decimal"], match.start("decimal"), text)
    if not math.isfinite(value) or abs(value) > LARGEST:
        raise QuantityError(f"“{match.group().strip()}” is too large to be a size.", 0, match.end())
    return sign * value, text[match.end() :]


def _decimal(digits: str, start: int, text: str) -> float:
    """The value of `6.35` or `6,35`; `1,000` has two readings and gets none."""
    rest = text[start + len(digits) :]
    if "," in digits or rest[:1] in (",", "."):
        joined = re.match(r"[\d.,]+", text[start:])
        assert joined is not None
        if _THOUSANDS.match(joined.group()):
            plain = joined.group().replace(",", "")
            raise QuantityError(
                f"“{joined.group()}” can be read in two ways: write {plain}, or {joined.group().replace(',', '.')}.",
                start,
                start + len(joined.group()),
            )
        if joined.group().count(",") + joined.group().count(".") > 1:
            raise QuantityError(
                f"“{joined.group()}” has more than one decimal mark.", start, start + len(joined.group())
            )
    try:
        return float(digits.replace(",", "."))
    except (ValueError, OverflowError) as error:
        raise QuantityError(f"“{digits}” is not a number.", start, start + len(digits)) from error


@remembered(1024)
def read(text: str, measures: str, system: str = "mm") -> float:
    """The SI value of a quantity as it was typed.

    Parameters
    ----------
    text : str
        Such as `25 thou`, `1-1/4 in`, `6,35 mm` or a bare number
    measures : str
        What is asked for, a key of `KINDS`
    system : str
        `mm` or `in`: the unit that a bare number takes

    Returns
    -------
    value : float
        In the SI unit of what is measured

    Raises
    ------
    QuantityError
        With a sentence that says what to write.
    """
    if not text.strip():
        raise QuantityError(f"Nothing is written here; write {example(measures, system)}.")
    try:
        number, rest = read_number(text)
    except QuantityError as error:
        if "begin with a number" in str(error):
            name = KINDS[measures][0]
            raise QuantityError(
                f"“{text.strip()}” is not {name}; write {example(measures, system)}.", 0, len(text)
            ) from None
        raise
    spelling = " ".join(rest.split())
    if not spelling:
        bare = bare_unit(measures, system)
        return number * (bare.size if bare else 1.0)
    found = unit(measures, spelling)
    if found is None:
        raise _unit_problem(text, rest, spelling, measures, system)
    value = number * found.size
    if not math.isfinite(value) or abs(value) > LARGEST:
        raise QuantityError(f"“{text.strip()}” is too large to be {KINDS[measures][0]}.", 0, len(text))
    return value


def _unit_problem(text: str, rest: str, spelling: str, measures: str, system: str) -> QuantityError:
    """Why the unit cannot be used, and the nearest text that could be meant."""
    start = len(text) - len(rest.lstrip())
    number = text[:start].strip()
    wrong = {kind for kind, spelled in BY_SPELLING if spelled == spelling}
    if wrong:
        name = next(words for kind, (words, _) in KINDS.items() if kind in wrong)
        return QuantityError(
            f"“{spelling}” is {name}, but {KINDS[measures][0]} is asked for; write {example(measures, system)}.",
            start,
            len(text),
        )
    spellings = [spelled for kind, spelled in BY_SPELLING if kind == measures]
    near = nearest(spelling, spellings)
    hint = f"Did you mean {number} {near}?" if near else f"Write {example(measures, system)}."
    return QuantityError(f"“{spelling}” is no unit here. {hint}", start, len(text))


def nearest(word: str, choices: list[str] | tuple[str, ...]) -> str | None:
    """The choice that was most likely meant, or None: for "did you mean"."""
    return _nearest(word, tuple(choices))


@remembered(64)
def _nearest(word: str, choices: tuple[str, ...]) -> str | None:
    """The same slip stands in every step that was copied from one."""
    folded = {choice.casefold(): choice for choice in choices}
    if word.casefold() in folded:
        return folded[word.casefold()]
    slips = [
        c for c in choices if len(c) == len(word) and sum(a != b for a, b in zip(c, word, strict=True)) == 1
    ]
    if len(word) > 1 and slips:
        # A slip of one letter is the likeliest, and rarely the first one.
        return max(slips, key=lambda choice: choice[0] == word[0])
    import difflib  # late: only what is misspelt needs it

    return next(iter(difflib.get_close_matches(word, list(choices), n=1, cutoff=0.6)), None)
