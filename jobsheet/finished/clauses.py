"""What can stand behind a feature's size, each clause by itself: depth, mouth, places, faces, length, finish.

Every reader takes what stands next in the line, if it is its own, and notes it; it says whether it was.
"""

from __future__ import annotations

import math
import re
from typing import Any

from jobsheet.finished.scanned import LENGTH, Scanned
from jobsheet.model.finished import Mouth
from jobsheet.model.quantity import Quantity, Size
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

#: What a line says so far, by the names of `Feature`.
Said = dict[str, Any]

_THROUGH = pattern(r"(?:right\s+)?(?:through|thru)(?:\s+all)?\b", re.IGNORECASE)
_BLIND = pattern(r"(?:blind|depth|deep)\b\s*:?", re.IGNORECASE)
_BY = pattern(r"[x×X*]")
_DEEP = pattern(r"deep\b", re.IGNORECASE)
#: `25/30`: the thread and the hole below it.
_PAIR = pattern(
    r"(?P<one>\d+(?:[.,]\d+)?)(?P<first>\s?mm)?\s*/\s*(?P<two>\d+(?:[.,]\d+)?)(?P<unit>\s?(?:mm|in\b|\"))?"
)
_MOUTH = pattern(
    r"(?P<mouth>counter\s?bored?|c'?bored?|c/bore|cb|⌴|spot\s?-?faced?|s/?f|counter\s?s(?:i|u)nk|c'?sk|⌵)"
    r"(?=[\s\d⌀Ø]|$)\s*(?:to\b)?",
    re.IGNORECASE,
)
_ANGLE = pattern(r"(?P<angle>\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees?)?\b)?(?!\s?(?:mm|in\b|thou))", re.IGNORECASE)
_LONG = pattern(r"(?:long|length)\b", re.IGNORECASE)
_LONG_FIRST = pattern(r"length\b\s*:?", re.IGNORECASE)
_OVER_ALL = pattern(r"(?:over\s?-?all|o/a)\b", re.IGNORECASE)
_BETWEEN = pattern(r"(?:between\s+centres|centre\s+to\s+centre|c/c|between\s+centers)\b", re.IGNORECASE)
_RADIUS = pattern(rf"(?:R|radius)\s*(?P<length>{LENGTH})(?=[\s,;)]|$)", re.IGNORECASE)
_RA = pattern(r"Ra\b\s*(?P<ra>\d+(?:[.,]\d+)?)(?:\s?(?:µm|um))?(?![\d.,])", re.IGNORECASE)
_WITHIN = pattern(rf"(?:(?:position\s+)?within\b|±)\s*(?P<length>{LENGTH})", re.IGNORECASE)
_NOTE = pattern(r"\((?P<note>[^()]*)\)")
_INTO = pattern(r"(?:into|in|on|from)\b(?=\s)", re.IGNORECASE)
_SHAFT = pattern(r"(?:on\s+(?:a\s+)?)?shaft\b", re.IGNORECASE)


def through(line: Scanned, said: Said) -> bool:
    """`through`."""
    if not line.take(_THROUGH):
        return False
    if said.get("depth"):
        raise line.error("It cannot be so deep and go through; take one out.")
    said["through"] = True
    return True


def depth(line: Scanned, said: Said) -> bool:
    """`16 deep`, `x 16`, `blind 16`, `x 25/30`."""
    start = line.at
    worded = line.take(_BLIND)
    by = None if worded else line.take(_BY)
    if said["what"] == "tapped hole" and (worded or by) and _thread_and_hole(line, said):
        return True
    size = line.take_size("depth")
    behind = size is not None and line.take(_DEEP)
    if size is None or not (worded or by or behind):
        if worded:
            raise line.error("Say how deep, such as 16 deep.", start)
        line.at = start
        return False
    _once(line, said, "depth", size, start)
    if said.get("through"):
        raise line.error("It cannot be so deep and go through; take one out.", start, line.at)
    return True


def _thread_and_hole(line: Scanned, said: Said) -> bool:
    """`25/30` behind a thread: 25 of thread in a hole of 30; in inches, or with
    a unit of them, it is a fraction.
    """
    start = line.at
    pair = line.take(_PAIR)
    inches = pair is not None and (
        (pair["unit"] or "").strip() in ("in", '"')
        or (line.units == "in" and not (pair["unit"] or pair["first"]))
    )
    if pair is None or inches:
        line.at = start
        return False
    unit = (pair["unit"] or pair["first"] or "").strip()
    values = [read(f"{pair[name]} {unit}", "length", line.units) for name in ("one", "two")]
    if values[1] < values[0]:
        raise line.error(
            f"The hole is less deep than the thread: write the thread first, such as {pair['two']}/{pair['one']}.",
            start,
            line.at,
        )
    if not unit:
        line.bare += [pair.end("one"), pair.end("two")]
    texts = [f"{pair[name]} {unit}".strip() for name in ("one", "two")]
    said["depth"], said["hole_depth"] = (
        Size(value, value, value, text) for value, text in zip(values, texts, strict=True)
    )
    line.take(_DEEP)
    return True


def mouth(line: Scanned, said: Said) -> bool:
    """`counterbore 11 x 6.5`, `spot face 14`, `csk 12.6 x 90`."""
    start = line.at
    match = line.take(_MOUTH)
    if match is None:
        return False
    what = _mouth_kind(match["mouth"])
    size = line.take_size("hole")
    if size is None:
        raise line.error(f"Say how wide the {what} is.", start)
    deep = angle = None
    by = line.take(_BY)
    if what == "countersink":
        degrees = line.take(_ANGLE)
        angle = math.radians(float(degrees["angle"].replace(",", "."))) if degrees else None
        if angle is None or not 0.5 < angle < 3:
            raise line.error(
                "Say the angle of the countersink: 90 or 82 degrees, such as csk 12.6 x 90.", start
            )
    else:
        deep = line.take_size("depth") if by or _is_depth(line) else None
        line.take(_DEEP)
        if deep is None and (what == "counterbore" or by):
            raise line.error(f"Say how deep the {what} is, such as {what} 11 x 6.5.", start)
    _once(line, said, "mouth", Mouth(what=what, size=size, depth=deep, angle=angle), start)
    return True


def _is_depth(line: Scanned) -> bool:
    """Whether `6.5 deep` stands next."""
    line.gap()
    return re.match(rf"{LENGTH}\s*deep\b", line.text[line.at :], re.IGNORECASE) is not None


def _mouth_kind(word: str) -> str:
    plain = word.casefold()
    if plain.startswith("s"):
        return "spot face"
    return "countersink" if "s" in plain or plain == "⌵" else "counterbore"


def length(line: Scanned, said: Said) -> bool:
    """`32 long`, `length 32`, with `over all` or `between centres` behind it."""
    start = line.at
    first = line.take(_LONG_FIRST)
    size = line.take_size("length")
    if size is None or not (first or line.take(_LONG)):
        line.at = start
        return False
    _once(line, said, "length", size, start)
    over_all(line, said)
    return True


def over_all(line: Scanned, said: Said) -> bool:
    """How a length counts."""
    if line.take(_OVER_ALL):
        said["over_all"] = True
    elif line.take(_BETWEEN):
        said["over_all"] = False
    else:
        return False
    return True


def radius(line: Scanned, said: Said) -> bool:
    """`R5`."""
    match = line.take(_RADIUS)
    if match is None:
        return False
    value = line.length(match, "length")
    _once(line, said, "radius", Size(value.value, value.value, value.value, value.text), match.start())
    return True


def finish(line: Scanned, said: Said) -> bool:
    """`Ra 1.6`: in micrometres, whatever the lengths are in."""
    match = line.take(_RA)
    if match is None:
        return False
    _once(line, said, "finish", float(match["ra"].replace(",", ".")) * 1e-6, match.start())
    return True


def within(line: Scanned, said: Said) -> bool:
    """`within 0.05` or `±0.05` by itself: how far the places may be out."""
    match = line.take(_WITHIN)
    if match is None:
        return False
    value = line.length(match, "length").value
    if value <= 0:
        raise line.error("How far a place may be out is above nought.", match.start(), line.at)
    _once(line, said, "within", value, match.start())
    return True


def note(line: Scanned, said: Said) -> bool:
    """Words of the person's own, in brackets: nothing reads them."""
    match = line.take(_NOTE)
    if match is None:
        return False
    said["note"] = match["note"].strip()
    return True


def shaft(line: Scanned, said: Said) -> bool:
    """`shaft 25`: what a keyway is cut into."""
    start = line.at
    if not line.take(_SHAFT):
        return False
    size = line.take_size("shaft")
    if size is None:
        raise line.error("Say the diameter of the shaft, such as shaft 25.", start)
    _once(line, said, "shaft", size, start)
    return True


def entered(line: Scanned, said: Said) -> bool:
    """`from top`, `into the front face`, `in B`: the face that a feature is cut into. Two
    faces are what its places count from.
    """
    start = line.at
    lead = line.take(_INTO)
    if lead is None:
        return False
    face = line.take_face()
    if face is None:
        line.at = start
        return False
    name, part = face
    at = line.at
    second = line.take_face() if lead[0].casefold() == "from" else None
    if second is not None:
        _once(line, said, "counted", (name, second[0]), start)
        return True
    line.at = at
    if part in ("edge", "end", "side"):
        line.at = start
        return False
    _once(line, said, "face", name, start)
    said["face_at"] = (start, line.at, lead[0].casefold(), part)
    return True


def _once(line: Scanned, said: Said, name: str, value: object, start: int) -> None:
    """Note what is said; said twice it is no one's guess which holds."""
    if said.get(name) is not None:
        what = name.replace("_", " ")
        raise line.error(f"The {what} is said twice; take one out.", start, line.at)
    said[name] = value


def as_size(value: Quantity) -> Size:
    """A length without limits as a size."""
    return Size(value.value, value.value, value.value, value.text)
