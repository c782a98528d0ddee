"""Cutters as people write them in one line: what it is, its size, and what else is known of it.

face mill 50 mm, 4 teeth, carbide, marked 12000 rpm, drawer 2 no. 7
spot drill 10 mm, 90°, drawer 3 no. 1
drill #7, drawer 3
taps M6, taper and plug, drawer 5
"""

from __future__ import annotations

import math
import re
from functools import cache

from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import read_thread
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Cutter
from jobsheet.units.grammar import nearest, read
from jobsheet.units.lazily import pattern
from jobsheet.units.show import trimmed

#: What it may be called -> kind. Trade words only.
KINDS: dict[str, str] = {
    "face mill": "face mill", "fly cutter": "fly cutter", "shell mill": "face mill",
    "end mill": "end mill", "slot drill": "slot drill", "chamfer mill": "chamfer mill",
    "drill": "drill", "twist drill": "drill", "stub drill": "drill", "spot drill": "spot drill",
    "spotting drill": "spot drill", "centre drill": "centre drill", "center drill": "centre drill",
    "core drill": "core drill", "reamer": "reamer", "machine reamer": "reamer", "counterbore": "counterbore",
    "countersink": "countersink", "tap": "tap", "taps": "tap", "hand tap": "tap", "hand taps": "tap",
    "edge finder": "edge finder", "boring head": "boring head", "boring bar": "boring head",
    "slitting saw": "slitting saw",
}  # fmt: skip
MATERIALS = {
    "hss": "HSS", "high-speed steel": "HSS", "cobalt": "cobalt", "hss-co": "cobalt", "hss-e": "cobalt",
    "carbide": "carbide", "solid carbide": "carbide", "carbide inserts": "carbide",
}  # fmt: skip
#: Teeth that count for the feed where nothing is written: two lips of a drill (common practice).
_USUAL_TEETH = {"drill": 2, "spot drill": 2, "centre drill": 2, "slot drill": 2, "fly cutter": 1}
#: Point angles where nothing is written (common practice): jobber drill 118°, spot drill and countersink 90°.
_USUAL_POINT = {
    "drill": 118,
    "spot drill": 90,
    "countersink": 90,
    "chamfer mill": 90,
    "centre drill": 60,
    "core drill": 118,
}
TAP_STYLES = (
    "spiral point",
    "spiral flute",
    "bottoming",
    "taper, plug and bottoming",
    "taper and plug",
    "taper",
    "plug",
    "form",
)
_PLACE = pattern(r"^(drawer|shelf|box|rack|cabinet|place|case|bench|tray|stand)\b", re.IGNORECASE)
_TEETH = pattern(r"^(\S+)\s*(?:-?\s*)(teeth|tooth|flutes?|inserts?|edges?|cutting edges?)$", re.IGNORECASE)
_ANGLE = pattern(r"^(?:point\s+)?([\d.,]+)\s*(?:°|deg|degrees)(?:\s+point)?$", re.IGNORECASE)
#: `entering 45°` (of the edge to the finished face) and `rake 10°` (effective; below zero is negative).
_NAMED_ANGLE = pattern(
    r"^(?P<name>entering|rake)\s+(?P<angle>[+\-−]?[\d.,]+)\s*(?:°|deg|degrees)$", re.IGNORECASE
)
_NOSE = pattern(r"^(?:nose|corner radius)\s+(.+)$", re.IGNORECASE)
#: What holds it: `in a collet`.
_HELD = pattern(r"^in (?:a |an |the )?(.+)$", re.IGNORECASE)
HOLDERS = (
    "drill chuck",
    "collet",
    "end-mill holder",
    "arbor",
    "tapping head",
    "depth-releasing tapping head",
)
#: Holders that slip where a tap binds, and those that let it go at its depth besides.
SLIPPING, RELEASING = HOLDERS[-2:], HOLDERS[-1:]
STATES = ("sharp", "used", "dull")
_HELIX = pattern(r"^helix\s+([\d.,]+\s*(?:°|deg)?)$|^([\d.,]+\s*(?:°|deg)?)\s+helix$", re.IGNORECASE)
_OUT = pattern(r"^(.+?)\s+(?:out|stick-?out)(?: of the holder)?$|^(?:out|stick-?out)\s+(.+)$", re.IGNORECASE)
_FLUTES = pattern(
    r"^(?:flutes?|cutting length)\s+(.+?)(?:\s+long)?$|^(.+?)\s+(?:flute|cutting) length$", re.IGNORECASE
)
_MARKED = pattern(r"^(?:marked|highest|max(?:imum)?\.?)\s+(.+)$", re.IGNORECASE)
_SPLIT = pattern(r",\s+|;\s*|\s+·\s+")


#: Bare numbers from here on name drills where sizes are inches: drills of one to three inches are made
#: (common practice, no source).
NUMBERED = 4


def read_cutter(text: str, system: str = "mm") -> Cutter:
    """A cutter from its one line.

    Raises
    ------
    QuantityError
        If its kind or size is missing, or a part of the line is not understood.
    """
    # A set of taps is named with a comma of its own; a letter of the same length keeps all places right.
    text, typed = re.sub(r"(taper), (plug and bottoming)", "\\1\x1f \\2", text, flags=re.IGNORECASE), text
    parts: list[tuple[str, int]] = []
    position = 0
    for piece in _SPLIT.split(text):
        start = text.index(piece, position)
        position = start + len(piece)
        if piece.strip():
            parts.append((piece.strip().replace("\x1f", ","), start + len(piece) - len(piece.lstrip())))
    if not parts:
        raise QuantityError("No cutter is written here; write, for example, end mill 12 mm, 4 teeth.")
    kind, size, at = _kind_and_size(*parts[0])
    known: dict[str, object] = {}
    if kind == "tap":
        thread = read_thread(size) if size else None
        known["diameter"] = thread.major if thread else None
    elif size:
        known["diameter"] = _diameter(kind, size, at, text, system)
    extra: list[str] = []
    for piece, start in parts[1:]:
        _take(piece, start, kind, system, known, extra)
    known.setdefault("teeth", _USUAL_TEETH.get(kind))
    if "point_angle" not in known and kind in _USUAL_POINT:
        known["point_angle"] = math.radians(_USUAL_POINT[kind])
    return Cutter(kind=kind, text=typed, size=size, extra=tuple(extra), **known)  # type: ignore[arg-type]


@cache
def _named() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """The kinds as they are written, the longest first, each with what it looks like in a text."""
    longest = sorted(KINDS, key=len, reverse=True)
    return tuple((name, pattern(rf"(?<![a-z]){re.escape(name)}s?(?![a-z])")) for name in longest)


def _kind_and_size(piece: str, start: int) -> tuple[str, str, int]:
    """The kind and the text of the size, which may stand on either side of it."""
    folded = piece.casefold()
    for name, named in _named():
        where = named.search(folded) if name in folded else None
        if where:
            before, behind = piece[: where.start()].strip(), piece[where.end() :].strip()
            return KINDS[name], " ".join(part for part in (before, behind) if part), start
    words = re.sub(r"[\d.,/#\"]+|\b(mm|in|thou)\b", " ", folded).split()
    near = nearest(" ".join(words), tuple(KINDS)) if words else None
    hint = f"Did you mean {near}?" if near else "Write, for example, end mill 12 mm, 4 teeth."
    raise QuantityError(f"“{piece}” names no kind of cutter. {hint}", start, start + len(piece))


def _diameter(kind: str, size: str, start: int, text: str, system: str) -> float:
    """The cutting diameter [m]; named sizes only where drills are meant. `16 H7` is a reamer's bore."""
    drills = kind in ("drill", "core drill", "spot drill")
    if drills and system == "in" and size.isdecimal() and int(size) >= NUMBERED:
        said = f"A drill of {size} in is not meant: write #{size} for the drill of that number, or {size} mm."
        raise QuantityError(said, start, start + len(text.split(",", maxsplit=1)[0]))
    try:
        if drills:
            value = read_drill_size(size, system)
        else:
            value = read(
                re.sub(r"\s*[A-Za-z]{1,2}\d{1,2}$", "", size) if kind == "reamer" else size, "length", system
            )
    except QuantityError as error:
        raise QuantityError(str(error), start, start + len(text.split(",", maxsplit=1)[0])) from None
    if value <= 0:
        raise QuantityError(
            f"A cutter of “{size}” does not exist: its diameter must be above zero.", start, len(text)
        )
    return value


def _take(piece: str, start: int, kind: str, system: str, known: dict[str, object], extra: list[str]) -> None:
    """One more part of the line: what it says is added to `known`."""
    end = start + len(piece)
    folded = piece.casefold()
    if kind == "tap" and folded in TAP_STYLES:  # before teeth: a spiral flute is no number of flutes
        known["style"] = folded
    elif _PLACE.match(piece):
        known["place"] = piece
    elif match := _TEETH.match(piece):
        if not match[1].isdigit() or not 1 <= int(match[1]) <= 60:
            raise QuantityError(f"“{piece}”: a cutter has a whole number of teeth, from 1 up.", start, end)
        known["teeth"] = int(match[1])
    elif folded in MATERIALS:
        known["material"] = MATERIALS[folded]
    elif folded in ("split point", "thinned point"):
        known["split_point"] = True
    elif match := _MARKED.match(piece):
        known["marked_speed"] = read(
            match[1].replace(" ", "", 1) if re.match(r"^\d{1,3} \d{3}\b", match[1]) else match[1],
            "spindle speed",
            system,
        )
    elif match := _HELD.match(piece):
        known["holder"] = _holder(match[1], piece, start)
    elif folded in STATES:
        known["state"] = folded
    elif match := _NAMED_ANGLE.match(piece):
        known[match["name"].casefold()] = _named_angle(match, piece, start, system)
    elif match := _NOSE.match(piece):
        known["nose"] = read(match[1], "length", system)
    elif match := _HELIX.match(piece):
        known["helix"] = read((match[1] or match[2]).replace("deg", "°"), "angle", system)
    elif match := _ANGLE.match(piece):
        angle = read(f"{match[1]}°", "angle", system)
        if not 0 < angle < math.pi:
            raise QuantityError(f"“{piece}”: a point angle lies between 0° and 180°.", start, end)
        known["point_angle"] = angle
    elif match := _FLUTES.match(piece):
        known["flutes"] = read(match[1] or match[2], "length", system)
    elif match := _OUT.match(piece):
        known["stick_out"] = read(match[1] or match[2], "length", system)
    elif (kind == "edge finder" and "tip" in folded) or (
        kind == "counterbore" and folded.startswith("pilot")
    ):
        extra.append(piece)
    else:
        words = (
            "4 teeth",
            "carbide",
            "HSS",
            "cobalt",
            "90°",
            "helix 30°",
            "entering 45°",
            "rake 10°",
            "nose 0.8 mm",
            *STATES,
            "in a collet",
            "45 mm out",
            "marked 12000 rpm",
            "drawer 2 no. 7",
            "split point",
            *TAP_STYLES,
        )
        near = nearest(piece, words)
        hint = (
            f"Did you mean {near}?"
            if near
            else "Write teeth, material, angle, how far out, marked speed or place."
        )
        raise QuantityError(f"“{piece}” is not understood of a cutter. {hint}", start, end)


def _holder(name: str, piece: str, start: int) -> str:
    """What holds the cutter."""
    if name.casefold() in HOLDERS:
        return name.casefold()
    near = nearest(name, HOLDERS)
    hint = f"Did you mean in a {near}?" if near else f"Write in a {', '.join(HOLDERS)}."
    raise QuantityError(f"“{piece}” names no holder. {hint}", start, start + len(piece))


def _named_angle(match: re.Match[str], piece: str, start: int, system: str) -> float:
    """An entering angle from above 0° to 90°, or a rake between −45° and 45° [rad]."""
    angle = read(f"{match['angle']}°", "angle", system)
    entering = match["name"].casefold() == "entering"
    low, high = (1e-6, math.pi / 2) if entering else (-math.pi / 4, math.pi / 4)
    if not low <= angle <= high * (1 + 1e-9):
        words = (
            "an entering angle lies above 0° and up to 90°"
            if entering
            else "a rake lies between −45° and 45°"
        )
        raise QuantityError(f"“{piece}”: {words}.", start, start + len(piece))
    return angle


def understood(cutter: Cutter) -> str:
    """What was read, for the line under the field."""
    parts = []
    if cutter.diameter is not None:
        parts.append(f"{trimmed(cutter.diameter * 1e3, 3)} mm")
    if cutter.teeth and cutter.kind not in ("drill", "spot drill", "centre drill"):
        parts.append("1 tooth" if cutter.teeth == 1 else f"{cutter.teeth} teeth")
    if cutter.kind not in ("edge finder", "tap"):
        parts.append(cutter.material)
    if cutter.point_angle is not None:
        parts.append(f"{trimmed(math.degrees(cutter.point_angle), 1)}°")
    if cutter.stick_out is not None:
        parts.append(f"{trimmed(cutter.stick_out * 1e3, 1)} mm out")
    if cutter.marked_speed is not None:
        parts.append(f"marked {trimmed(cutter.marked_speed * 60, 0)} rpm")
    if cutter.entering is not None:
        parts.append(f"entering {trimmed(math.degrees(cutter.entering), 1)}°")
    if cutter.rake is not None:
        parts.append(f"rake {trimmed(math.degrees(cutter.rake), 1)}°")
    if cutter.nose is not None:
        parts.append(f"nose {trimmed(cutter.nose * 1e3, 2)} mm")
    if cutter.holder:
        parts.append(f"in {cutter.holder}")
    if cutter.state:
        parts.append(cutter.state)
    if cutter.style:
        parts.append(cutter.style)
    parts.extend(cutter.extra)
    return ", ".join(parts)


def short_name(cutter: Cutter) -> str:
    """How a row names it: `face mill 50`, `drill #7`, `taps M6`."""
    kind = "taps" if cutter.kind == "tap" else cutter.kind
    size = re.sub(r"\s*mm$", "", cutter.size)
    return f"{kind} {size}".strip()
