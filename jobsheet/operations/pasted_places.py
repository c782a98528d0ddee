"""Lines of two numbers from anywhere, as a list of places: tab, blanks,
semicolon or comma stand between them.

Each line is cut where exactly one cut leaves two numbers. `14,5,12` has two such cuts and `14 12 6` has none
that is right: such a line is kept as it came, with a sentence that says what to write.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

#: What may stand between two numbers, the surest first: a comma alone may be a decimal one.
_BETWEEN = (
    pattern(r"\t+"),
    pattern(r"\s*;\s*"),
    pattern(r"\s*\|\s*"),
    pattern(r",\s+|\s+,\s*"),
    pattern(r"\s+"),
    pattern(r","),
)
_ENDS = pattern(r"\r\n?|\n")


class Pasted(Struct, frozen=True):
    """One line as it came: the texts of x and y, or what is wrong with it."""

    x: str
    y: str = ""
    problem: str = ""


def pasted(text: str, units: str) -> tuple[Pasted, ...]:
    """Every line that has something in it."""
    return tuple(_line(line.strip(" "), units) for line in _ENDS.split(text) if line.strip())


def is_list(text: str) -> bool:
    """Whether what is pasted is meant as lines or pairs, and not as a part of one number."""
    return bool(_ENDS.search(text.strip())) or "\t" in text.strip()


def _line(line: str, units: str) -> Pasted:
    line = line.strip().rstrip(";").rstrip()
    for between in _BETWEEN:
        cuts = [(line[: gap.start()].strip(), line[gap.end() :].strip()) for gap in between.finditer(line)]
        right = [cut for cut in cuts if all(_is_size(part, units) for part in cut)]
        if len(right) == 1:
            return Pasted(*right[0])
        if len(right) > 1:
            return Pasted(
                _kept(line),
                problem=f"“{line}” can be read in more than one way; write x, a comma, a blank and y.",
            )
    return Pasted(
        _kept(line), problem=f"“{line}” is not two numbers; write x, a comma, a blank and y, such as 14, 12."
    )


def _kept(line: str) -> str:
    """The line as one row can hold it: what would part it into several stands as a blank."""
    return " ".join(line.replace(";", " ").split())


def _is_size(text: str, units: str) -> bool:
    try:
        read(text, "length", units)
    except QuantityError:
        return False
    return True
