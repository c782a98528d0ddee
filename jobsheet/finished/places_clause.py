"""Where a feature lies, as a line says it: single places, a pattern in words, a pitch
circle, or how far a middle line is in.

at 20, 15; 60, 15                     at 40 from C, 22 from A
at 20, 15; 60, 15 from B, A           at row of 5 from 10, 10, step 15
on PCD 60 around 50, 30, first at 30
"""

from __future__ import annotations

import math
import re

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.finished.clauses import Said, as_size
from jobsheet.finished.scanned import LENGTH, NUMBER, Scanned
from jobsheet.model.finished import OnCircle
from jobsheet.model.quantity import Pattern, Place, Places, Quantity
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

_AT = pattern(r"(?:at|centres?\s+at|@)(?=\s|$)", re.IGNORECASE)
_IN_WORDS = pattern(
    r"(?P<words>(?:row of|grid of|circle of|circle on)\b.*?)"
    r"(?=\s*,?\s*(?:\b(?:from\s+(?:the\s+)?(?:datum\s+)?(?:top|bottom|front|rear|left|right|base|back|[A-Za-z]\b)"
    r"|into\b|in\s+the\b|within\b|Ra\b|Ra\d)|\(|;|$))",
    re.IGNORECASE,
)
_COORDINATE = pattern(rf"(?P<length>[+\-−]?\s?{LENGTH})(?:\s*(?:±|\+/-|\+-)\s*(?P<either>{LENGTH}))?")
_FROM = pattern(r"from\b", re.IGNORECASE)
_NEXT = pattern(r"\s*,\s+|\s*\|\s*")
_ANOTHER = pattern(r"\s*(?:;|\n)\s*(?=[+\-−]?\s?[\d.,])")
_CIRCLE = pattern(
    rf"(?:on\s+(?:a\s+)?)?(?:PCD|pitch\s+circle(?:\s+of)?|BCD|PC)\s*(?:Ø|⌀)?\s*(?P<length>{LENGTH})",
    re.IGNORECASE,
)
_AROUND = pattern(r"(?:around|about|centre(?:d)?\s+(?:at|on)|middle)\b", re.IGNORECASE)
_FIRST = pattern(
    rf"(?:first|start(?:ing|s)?)(?:\s+(?:hole|one))?(?:\s+(?:at|on))?\s+(?P<angle>[+\-−]?{NUMBER})\s*(?:°|deg(?:rees?)?\b)?",
    re.IGNORECASE,
)
_BARE_IN_PATTERN = re.compile(
    r"(?<![\d.,])\d+(?:[.,]\d+)?(?![\d.,]*\s*(?:°|deg|mm|in\b|thou|\"|[x×]\s*\d+\s+from))"
)


class Counted(Struct, frozen=True):
    """One number of a place: how far, how far out it may be [m], and from which
    face, where that stands beside it.
    """

    far: Quantity
    either: float | None
    face: str


def places(line: Scanned, said: Said) -> bool:
    """`at ...`, or a pattern by itself."""
    start = line.at
    worded = line.take(_AT)
    match = line.take(_IN_WORDS)
    if match is not None:
        _no_places_yet(line, said, start)
        said["places"] = Places((_in_words(line, match),))
        said["places_end"] = line.at
        return True
    if worded is None:
        return False
    _list(line, said, start)
    return True


def _in_words(line: Scanned, found: re.Match[str]) -> Pattern:
    """A pattern that was written in words."""
    from jobsheet.operations.patterns import read_pattern

    words, start = found["words"].rstrip(" ,"), found.start("words")
    try:
        made = read_pattern(words, line.units)
    except QuantityError as error:
        raise line.error(str(error), start, start + len(words)) from None
    counts = [(match.start(), match.end()) for match in re.finditer(r"\bof \d+(?:\s*[x×]\s*\d+)?", words)]
    line.bare += [
        start + match.end()
        for match in _BARE_IN_PATTERN.finditer(words)
        if not any(low <= match.start() < high for low, high in counts)
    ]
    return made


def _list(line: Scanned, said: Said, start: int) -> None:
    """Single places with semicolons between; or one number alone, for a middle line."""
    places: list[tuple[Counted, Counted]] = []
    while True:
        x = coordinate(line)
        if x is None:
            raise line.error("Write a place here: x, a comma, a blank and y, such as 20, 15.")
        gap = _NEXT.match(line.text, line.at)
        y = None
        if gap is not None and _COORDINATE.match(line.text, gap.end()):
            line.at = gap.end()
            y = coordinate(line)
        if y is None:
            _alone(line, said, x, start, bool(places))
            return
        places.append((x, y))
        another = _ANOTHER.match(line.text, line.at)
        if another is None:
            break
        line.at = another.end()
    _no_places_yet(line, said, start)
    said["places"] = Places(tuple(Place(x.far, y.far) for x, y in places))
    said["places_end"] = line.at
    eithers = [counted.either for pair in places for counted in pair if counted.either is not None]
    if eithers:
        said["within"] = min(eithers)
    faces = {(x.face, y.face) for x, y in places}
    if faces != {("", "")}:
        _faces_beside(line, said, faces, start)


def _faces_beside(line: Scanned, said: Said, faces: set[tuple[str, str]], start: int) -> None:
    """Faces that stand beside the numbers: of every place the same two."""
    x, y = next(iter(faces)) if len(faces) == 1 else ("", "")
    if not x or not y:
        raise line.error(
            "Say of every number from which face it counts, such as at 40 from C, 22 from A, or behind the places from C, A.",
            start,
            line.at,
        )
    said["counted"] = (x, y)


def _alone(line: Scanned, said: Said, x: Counted, start: int, others: bool) -> None:
    """One number: how far in a middle line runs; of a hole a number is missing."""
    if others or said["what"] not in ("slot", "keyway", "T-slot", "dovetail"):
        raise line.error(
            "A place has two numbers: x, a comma, a blank and y, such as 20, 15.", start, line.at
        )
    said["across"] = as_size(x.far)
    if x.either is not None:
        said["within"] = x.either
    at = line.at
    if line.take(_FROM) and (named := line.take_face()) and not named[1]:
        said["across_from"] = named[0]
    else:
        line.at = at


def coordinate(line: Scanned) -> Counted | None:
    """One number of a place, with the face beside it."""
    match = line.take(_COORDINATE)
    if match is None:
        return None
    far = line.length(match, "length")
    either = line.length(match, "either").value if match["either"] else None
    at = line.at
    face = ""
    if line.take(_FROM):
        named = line.take_face()
        # `from B, A` behind the last place names both of its faces, and `from left edge` where a slot begins.
        more = re.match(
            r"\s*(?:,|\band\b)\s*(?:the\s+)?(?:[A-Za-z]\b|top|bottom|front|rear|left|right)(?!\s*\d)",
            line.text[line.at :],
        )
        another = re.match(r"\s*,\s+[+\-−]?\s?[\d.,]", line.text[line.at :])
        last = not another
        if named is None or named[1] or (more and not another) or (last and not _beside_before(line, at)):
            line.at = at
        else:
            face = named[0]
    return Counted(far, either, face)


def _beside_before(line: Scanned, at: int) -> bool:
    """Whether the number before this one in its place has a face beside it: `40 from C, 22 from A`."""
    before = re.split(r"[;\n]|\bat\b", line.text[:at])[-1]
    return re.search(r"\bfrom\b", before, re.IGNORECASE) is not None


def on_circle(line: Scanned, said: Said) -> bool:
    """`on PCD 60 around 50, 30, first at 30`."""
    start = line.at
    match = line.take(_CIRCLE)
    if match is None:
        return False
    _no_places_yet(line, said, start)
    diameter = line.length(match, "length")
    if diameter.value <= 0:
        raise line.error(
            "The diameter of a pitch circle must be above nought.", match.start("length"), line.at
        )
    middle, first = None, 0.0
    for _ in range(2):
        if line.take(_AROUND):
            middle = _middle(line)
        elif angle := line.take(_FIRST):
            text = angle["angle"].replace("−", "-")
            first = read(f"{text} °", "angle", line.units) % (2 * math.pi)
    said["circle"] = OnCircle(diameter=diameter, first=first, middle=middle)
    said["places_end"] = line.at
    return True


def _middle(line: Scanned) -> Place:
    """The middle of a pitch circle."""
    x = coordinate(line)
    gap = _NEXT.match(line.text, line.at)
    if x is not None and gap is not None:
        line.at = gap.end()
        if (y := coordinate(line)) is not None:
            return Place(x.far, y.far)
    raise line.error("Write the middle of the circle: x, a comma, a blank and y, such as 50, 30.")


def _no_places_yet(line: Scanned, said: Said, start: int) -> None:
    if said.get("places") is not None or said.get("circle") is not None:
        raise line.error("The places are said twice; take one out.", start, line.at)
