"""Along which faces a feature runs: a slot from an edge or between two points, a
step on a side, a chamfer round edges.
"""

from __future__ import annotations

import re

from jobsheet.finished.clauses import Said
from jobsheet.finished.places_clause import coordinate
from jobsheet.finished.scanned import Scanned
from jobsheet.model.quantity import Place, Places
from jobsheet.model.stock import FACES
from jobsheet.units.lazily import pattern

_FROM = pattern(r"from\b", re.IGNORECASE)
_OPEN = pattern(r"open\s+(?:at|to|on)\b", re.IGNORECASE)
_TO = pattern(r"to\b", re.IGNORECASE)
_AND = pattern(r"(?:to|and)\b", re.IGNORECASE)
_BETWEEN = pattern(r"between\b(?!\s+cent)", re.IGNORECASE)
_ALONG = pattern(r"(?:(?:at|on|along|of)\s+)?(?:the\s+)?(?=\w)", re.IGNORECASE)
_BEGINS = re.compile(r"[+\-−]?\s?[\d.,]")
_EDGES = pattern(
    r"(?:(?:on|at|round|around)\s+)?(?P<all>all(?:\s+round)?(?:\s+(?:the\s+)?(?P<face>top|bottom|front|rear|left|right))?(?:\s+edges?)?)\b",
    re.IGNORECASE,
)
_LEAD = pattern(r"(?:on|at|round|around|along|of)\b", re.IGNORECASE)
_EDGE_WORD = pattern(r"edges?\b", re.IGNORECASE)
PAIR = re.compile(
    r"\s*(left|right|front|rear|back|top|bottom|[A-Z])\b\s+to\s+(?:the\s+)?(left|right|front|rear|back|top|bottom|[A-Z])\b",
    re.IGNORECASE,
)


def run(line: Scanned, said: Said) -> bool:
    """`from left edge`, `left to right`, `from 25, 30 to 75, 30`."""
    start = line.at
    line.gap()
    if PAIR.match(line.text, line.at):
        one = line.take_face()
        line.take(_TO)
        two = line.take_face()
        if one and two:
            return _opens(line, said, (one[0], two[0]), start)
    lead = line.take(_FROM) or line.take(_OPEN) or line.take(_BETWEEN)
    if lead is None:
        return False
    line.gap()
    if _BEGINS.match(line.text, line.at):
        return _between(line, said, start)
    face = line.take_face()
    if face is None or (
        face[1] not in ("edge", "end", "side") and lead[0].casefold() == "from" and not _goes_on(line)
    ):
        line.at = start
        return False
    faces: tuple[str, ...] = (face[0],)
    if line.take(_TO) and (other := line.take_face()):
        faces += (other[0],)
    return _opens(line, said, faces, start)


def _goes_on(line: Scanned) -> bool:
    """Whether `to right` follows: then a face alone is an edge."""
    return re.match(r"\s*to\s+(?:the\s+)?[A-Za-z]", line.text[line.at :]) is not None


def _opens(line: Scanned, said: Said, faces: tuple[str, ...], start: int) -> bool:
    if said.get("opens"):
        raise line.error("Where it is open is said twice; take one out.", start, line.at)
    said["opens"] = faces
    return True


def _between(line: Scanned, said: Said, start: int) -> bool:
    """Two points: the centres of the ends of a closed slot."""
    places = []
    for _ in range(2):
        x = coordinate(line)
        gap = re.compile(r"\s*,\s+").match(line.text, line.at)
        if x is None or gap is None:
            raise line.error("Write both ends: x, y to x, y, such as from 25, 30 to 75, 30.", start)
        line.at = gap.end()
        y = coordinate(line)
        if y is None:
            raise line.error("Write both ends: x, y to x, y, such as from 25, 30 to 75, 30.", start)
        places.append(Place(x.far, y.far))
        if len(places) == 1 and not line.take(_AND):
            raise line.error("Write the other end too, such as from 25, 30 to 75, 30.", start)
    if said.get("places") is not None:
        raise line.error("The places are said twice; take one out.", start, line.at)
    said["places"] = Places(tuple(places))
    said["places_end"] = line.at
    said["two_ends"] = True
    return True


def sides(line: Scanned, said: Said) -> bool:
    """`right end`, `at the front`: the side on which a step lies."""
    start = line.at
    line.take(_ALONG)
    face = line.take_face()
    if face is None or (said.get("opens") and not face[1]):
        line.at = start
        return False
    if face[0] in said.get("opens", ()):
        raise line.error(f"The {face[0]} is said twice; take one out.", start, line.at)
    said["opens"] = (*said.get("opens", ()), face[0])
    return True


def whole_edges(line: Scanned, said: Said) -> bool:
    """`all edges`, `all round the top`, `top edges`."""
    start = line.at
    if match := line.take(_EDGES):
        said["edges"] = (match["face"].casefold(),) if match["face"] else ("all",)
        return True
    line.take(_LEAD)
    face = line.take_face()
    if face is None:
        line.at = start
        return False
    line.take(_EDGE_WORD)
    said["edges"] = (*(one for one in said.get("edges", ()) if one in FACES), face[0])
    return True
