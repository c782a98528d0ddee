"""One thing a person fills in: its title, what it asks for, its bounds, and how it is read and shown.

The job file, the form, the sheet and the documentation all come from these.
"""

from __future__ import annotations

import math
import re
from typing import Any

from msgspec import Struct

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.cutters import understood as cutter_understood
from jobsheet.errors import DocumentError, NoSuchEntry, QuantityError
from jobsheet.model.quantity import Depth, Pattern, Place, Places, Quantity, Several, Tolerances
from jobsheet.units.grammar import example, nearest, read
from jobsheet.units.lazily import pattern
from jobsheet.units.show import plain, trimmed
from jobsheet.units.table import INCH, KINDS, bare_unit

_THROUGH = pattern(r"^\s*(through|thru)\s*$", re.IGNORECASE)
#: A number as people write one, without a unit; what stands between x and y of a place: a comma alone may be decimal.
_BARE = pattern(r"^[\s\d.,/½¼¾⅛⅜⅝⅞+\-−]+$")
_COORDINATES = pattern(r",\s+|\s*\|\s*")
_YES = {"yes": True, "true": True, "no": False, "false": False}
#: Text longer than this is a slip (a pasted page), not a step.
LONGEST_TEXT = 2000
#: No file of ours can hold these as they are, or no sheet print them: control characters, line and paragraph
#: separators, halves of a pair, and the two that no text has.
_CONTROL = pattern("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u2028\\u2029\\ud800-\\udfff\\ufffe\\uffff]")


class Entry(Struct, frozen=True, kw_only=True):
    """One field of an operation or of the job's header.

    `asks` is a key of `units.table.KINDS` or one of `text`, `choice`, `count`, `flag`, `cutter`, `thread`, `hole size`, `depth`, `places`, `size`, `measure`, `material`, `machine`, `several` (some of its choices),
    `surfaces`, `faces`. `low` and `high` are written as people write them; `older`: choices as they were spelled once, each with how it is today.
    """

    name: str
    title: str
    asks: str
    low: str | None = None
    high: str | None = None
    hint: str = ""
    choices: tuple[str, ...] = ()
    older: tuple[tuple[str, str], ...] = ()
    optional: bool = False
    lines: int = 1

    def read(self, text: str, units: str) -> Any:
        """The value of what was typed; None for an optional entry left empty.

        Raises
        ------
        QuantityError
            With a sentence that says what to write.
        """
        if not text.strip():
            if self.asks == "text" and self.optional:
                return ""
            if self.optional:
                return None
            raise QuantityError(f"{self.title} is empty; {self.wanted(units)}.")
        _refuse_control(self, text)
        return _READERS.get(self.asks, _read_quantity)(self, text, units)

    def text(self, value: Any) -> str:
        """The value as it was typed and is saved."""
        if value is None:
            return ""
        if isinstance(value, str):
            return value
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, int):
            return str(value)
        return str(value.text)

    def understood(self, value: object, units: str) -> str:
        """What was understood, for the line under the field."""
        if value is None or isinstance(value, (str, bool, int)):
            return self.hint
        return _understood(self, value, units)

    def unit(self, units: str) -> str:
        """The unit that a bare number takes here, or nothing."""
        asks = "length" if self.asks in ("depth", "places", "size", "measure", "hole size") else self.asks
        if asks not in KINDS:
            return ""
        unit = bare_unit(asks, units)
        return unit.symbol if unit else ""

    def with_unit(self, text: str, units: str) -> str:
        """The text with the unit that a bare number takes here; anything else stands as it is."""
        unit = self.unit(units)
        return f"{text.rstrip()} {unit}" if unit and _BARE.match(text) else text

    def wanted(self, units: str) -> str:
        """What to write, as the end of a sentence."""
        samples = {
            "cutter": f"write, for example, {self.choices[0] if self.choices else 'end mill'} 12 mm",
            "thread": "write, for example, M6 or 5/16-18 UNC",
            "hole size": "write, for example, 5 mm, #7 or H",
            "depth": "write a depth or through",
            "places": "write x and y, such as 14, 12; 66, 12",
            "size": "write, for example, 40 ±0.03 or 16 H7",
            "measure": "write, for example, 40 ±0.03, micrometer, before unclamping",
            "tolerances": "write, for example, square 0.03; finish 1.6; gauge micrometer",
            "count": "write a whole number",
            "flag": "write yes or no",
            "choice": f"choose {' or '.join(self.choices)}",
            "several": f"write one or several of {', '.join(self.choices)}, separated by commas",
            "text": f"write, for example, {self.hint[8:]}" if self.hint[:4] == "such" else "write something",
            "material": "write its trade or standard name, such as S235",
            "machine": "write the name of its card, such as bench-mill-b-1",
            "face": "write the side it means, such as top",
            "faces": "write, for example, top, bottom",
            "surfaces": "write, for example, black, ends sawn",
        }
        return samples.get(self.asks) or f"write, for example, {example(self.asks, units)}"


def _bounded(entry: Entry, value: float, text: str, measures: str) -> float:
    """The value, refused outside the entry's bounds; never moved into them."""
    if not math.isfinite(value):
        raise QuantityError(f"“{text.strip()}” is not a finite number.", 0, len(text))
    if entry.low is not None and value < read(entry.low, measures) * (1 - 1e-12):
        raise QuantityError(
            f"{entry.title} must be at least {entry.low}; “{text.strip()}” is less.", 0, len(text)
        )
    if entry.high is not None and value > read(entry.high, measures) * (1 + 1e-12):
        raise QuantityError(
            f"{entry.title} can be at most {entry.high}; “{text.strip()}” is more.", 0, len(text)
        )
    return value


def _read_quantity(entry: Entry, text: str, units: str) -> Quantity:
    return Quantity(_bounded(entry, read(text, entry.asks, units), text, entry.asks), text)


def _read_text(entry: Entry, text: str, _units: str) -> str:
    if len(text) > LONGEST_TEXT:
        raise QuantityError(
            f"{entry.title} is longer than {LONGEST_TEXT} characters; keep it short enough to read at the bench."
        )
    return text


def _refuse_control(entry: Entry, text: str) -> None:
    """What is accepted here is saved, and what is saved must be there when the file is opened again."""
    if match := _CONTROL.search(text):
        raise QuantityError(
            f"{entry.title} has a character (U+{ord(match[0]):04X}) that cannot be printed (at {match.start() + 1}); take it out.",
            match.start(),
            match.end(),
        )


def _read_choice(entry: Entry, text: str, _units: str) -> str:
    wanted = dict(entry.older).get(text.strip().casefold(), text.strip())
    if found := [choice for choice in entry.choices if choice.casefold() == wanted.casefold()]:
        return found[0]
    near = nearest(wanted, entry.choices)
    hint = f"Did you mean {near}?" if near else f"Choose one of: {', '.join(entry.choices)}."
    raise QuantityError(f"“{wanted}” is not one of the choices. {hint}", 0, len(text))


def _read_several(entry: Entry, text: str, _units: str) -> Several:
    items: list[str] = []
    start = 0
    known = {choice.casefold(): choice for choice in entry.choices}
    for piece in re.split(r"[,;]", text):
        if wanted := " ".join(piece.split()):
            choice = known.get(wanted.casefold())
            if choice is None:
                at = start + len(piece) - len(piece.lstrip())
                near = nearest(wanted, entry.choices)
                hint = f"Did you mean {near}?" if near else f"Choose of: {', '.join(entry.choices)}."
                raise QuantityError(f"“{wanted}” is not one of the choices. {hint}", at, at + len(wanted))
            if choice not in items:
                items.append(choice)
        start += len(piece) + 1
    if not items:
        raise QuantityError(f"{entry.title} is empty; {entry.wanted('mm')}.", 0, len(text))
    return Several(tuple(items), text.strip())


def _read_count(entry: Entry, text: str, _units: str) -> int:
    wanted = text.strip()
    if not wanted.isascii() or not wanted.isdigit() or len(wanted) > 9:
        raise QuantityError(f"“{wanted}” is not a whole number; write 4.", 0, len(text))
    value = int(wanted)
    if entry.low is not None and value < int(entry.low):
        raise QuantityError(f"{entry.title} must be at least {entry.low}.", 0, len(text))
    if entry.high is not None and value > int(entry.high):
        raise QuantityError(f"{entry.title} can be at most {entry.high}.", 0, len(text))
    return value


def _read_flag(_entry: Entry, text: str, _units: str) -> bool:
    found = _YES.get(text.strip().casefold())
    if found is None:
        raise QuantityError(f"“{text.strip()}” is neither yes nor no.", 0, len(text))
    return found


def _read_thread(_entry: Entry, text: str, _units: str) -> Any:
    from jobsheet.catalog.tools.threads import read_thread

    return read_thread(text)


def _read_size(_entry: Entry, text: str, units: str) -> Any:
    from jobsheet.catalog.trade.tolerances import read_size

    return read_size(text, units)


def _read_measure(_entry: Entry, text: str, units: str) -> Any:
    from jobsheet.catalog.tools.measuring import read_measure

    return read_measure(text, units)


#: What may be asked, and in what: a length in the job's units, a finish in micrometres, words.
_ASKED = ("square", "parallel", "flat", "position", "finish", "gauge")
_FINISH = pattern(r"^(?:Ra\s*)?(.+)$", re.IGNORECASE)


def _read_tolerances(_entry: Entry, text: str, units: str) -> Tolerances:
    """`square 0.03; flat 0.02; finish 1.6; gauge micrometer`: each a word and its value, separated by semicolons."""
    asked: dict[str, Any] = {}
    start = 0
    for piece in text.split(";"):
        words = piece.strip()
        if words:
            name, _, value = words.partition(" ")
            name = name.casefold()
            at = start + len(piece) - len(piece.lstrip())
            if name not in _ASKED or not value.strip():
                near = nearest(name, _ASKED)
                hint = (
                    f"did you mean {near}?"
                    if near and near != name
                    else f"write {', '.join(_ASKED)}, each with its value."
                )
                raise QuantityError(
                    f"“{words}” is nothing that can be asked here; {hint}", at, at + len(words)
                )
            asked[name] = _asked_value(name, value.strip(), units, at + len(words) - len(value.strip()))
        start += len(piece) + 1
    return Tolerances(text=text, **asked)


def _asked_value(name: str, value: str, units: str, start: int) -> Any:
    if name == "gauge":
        return value
    try:
        if name == "finish":
            match = _FINISH.match(value)
            bare = (match[1] if match else value).replace(",", ".")
            # Roughness is given in micrometres everywhere, whatever the drawing's lengths are in.
            return float(bare) * 1e-6 if bare.replace(".", "", 1).isdigit() else read(bare, "length", units)
        return read(value.lstrip("±+- "), "length", units)
    except QuantityError as error:
        raise QuantityError(str(error), start, start + len(value)) from None


def _read_hole(entry: Entry, text: str, units: str) -> Quantity:
    from jobsheet.catalog.tools.drills import read_drill_size

    return Quantity(_bounded(entry, read_drill_size(text, units), text, "length"), text)


def _read_cutter(_entry: Entry, text: str, units: str) -> Any:
    cutter = read_cutter(text, units)
    if _entry.choices and cutter.kind not in _entry.choices:
        raise QuantityError(
            f"A {cutter.kind} does not do this; write a {' or a '.join(_entry.choices)}.",
            0,
            len(text.split(",", maxsplit=1)[0]),
        )
    return cutter


def _read_depth(entry: Entry, text: str, units: str) -> Depth:
    if _THROUGH.match(text):
        return Depth(None, text)
    try:
        value = read(text, "length", units)
    except QuantityError as error:
        said = f"{str(error).rstrip('.')}, or through.".replace("?, or", "? Or write")
        raise QuantityError(said, error.start, error.end) from None
    return Depth(_bounded(entry, value, text, "length"), text)


def _read_places(entry: Entry, text: str, units: str) -> Places:
    items: list[Place | Pattern] = []
    start = 0
    for piece in re.split(r"[;\n]", text):
        if piece.strip():
            items.append(read_place(piece, start, units))
        start += len(piece) + 1
    if not items:
        raise QuantityError(f"{entry.title} is empty; write x and y, such as 14, 12; 66, 12.")
    return Places(tuple(items))


def read_place(piece: str, start: int, units: str) -> Place | Pattern:
    """One place `x, y`, or one pattern in words.

    Raises
    ------
    QuantityError
        With the part of the whole text that is wrong; `start` is where this piece begins.
    """
    from jobsheet.operations.patterns import is_pattern, read_pattern

    if is_pattern(piece):
        try:
            return read_pattern(piece, units)
        except QuantityError as error:
            raise QuantityError(str(error), start, start + len(piece)) from None
    parted = list(_COORDINATES.finditer(piece.strip()))
    if len(parted) != 1:
        raise QuantityError(
            f"“{piece.strip()}” is not one place; write x, a comma, a blank and y, such as 14, 12"
            " (places are separated by semicolons).",
            start,
            start + len(piece),
        )
    text, first = piece.strip(), start + len(piece) - len(piece.lstrip())
    gap = parted[0]
    return Place(
        _coordinate(text[: gap.start()], units, first),
        _coordinate(text[gap.end() :], units, first + gap.end()),
    )


def place_from(x: str, y: str, units: str) -> Place:
    """A place from the texts of its two coordinates."""
    return Place(_coordinate(x, units, 0), _coordinate(y, units, 0))


def _coordinate(text: str, units: str, start: int) -> Quantity:
    """One coordinate; what is wrong in it is pointed at in the whole text, in which it begins at `start`."""
    try:
        return Quantity(read(text, "length", units), text.strip())
    except QuantityError as error:
        end = start + (len(text) if error.end is None else error.end)
        raise QuantityError(str(error), start + error.start, end) from None


def _read_material(_entry: Entry, text: str, _units: str) -> str:
    from jobsheet.catalog.metals.materials import find

    try:
        find(text)
    except (NoSuchEntry, DocumentError) as error:
        raise QuantityError(str(error), 0, len(text)) from None
    return text


def _read_surfaces(_entry: Entry, text: str, _units: str) -> Any:
    from jobsheet.catalog.trade.surfaces import read_surfaces

    return read_surfaces(text)


def _read_faces(_entry: Entry, text: str, _units: str) -> Any:
    from jobsheet.catalog.trade.surfaces import read_faces

    return read_faces(text)


_READERS = {
    "text": _read_text, "machine": _read_text, "material": _read_material, "choice": _read_choice, "count": _read_count, "flag": _read_flag,
    "thread": _read_thread, "size": _read_size, "measure": _read_measure, "hole size": _read_hole, "cutter": _read_cutter,
    "depth": _read_depth, "places": _read_places, "tolerances": _read_tolerances, "several": _read_several,
    "surfaces": _read_surfaces, "faces": _read_faces,
}  # fmt: skip


def _length(value: float) -> str:
    return f"{trimmed(value * 1e3, 3)} mm = {plain(value / INCH, 4)} in"


def _limits(value: Any, units: str) -> str:
    if value.low == value.high:
        return _length(value.nominal)
    factor, decimals, unit = (1e3, 3, "mm") if units == "mm" else (1 / INCH, 4, "in")
    return f"{plain(value.low * factor, decimals)} to {plain(value.high * factor, decimals)} {unit}"


def _measured(value: Any, units: str) -> str:
    """Limits and how they are measured; an instrument that would do where none is named."""
    from jobsheet.catalog.tools.measuring import how_in_words, suggested

    fit = "" if value.instrument or value.goes else suggested(value)
    parts = (
        _limits(value, units) if value.sized else "",
        how_in_words(value),
        f"{fit} reads to a quarter of it" if fit else "",
    )
    return "; ".join(part for part in parts if part)


def _understood(entry: Entry, value: Any, units: str) -> str:
    """The line under the field, for each kind of value."""
    if entry.asks == "cutter":
        return cutter_understood(value)
    if entry.asks == "thread":
        return f"{trimmed(value.major * 1e3, 3)} mm, pitch {trimmed(value.pitch * 1e3, 4)} mm"
    if entry.asks == "size":
        return _limits(value, units)
    if entry.asks == "measure":
        return _measured(value, units)
    if entry.asks in ("several", "faces"):
        return ", ".join(value.items)
    if entry.asks == "surfaces":
        from jobsheet.catalog.trade.surfaces import surfaces_in_words

        return surfaces_in_words(value)
    if entry.asks == "places":
        return "1 place" if len(value) == 1 else f"{len(value)} places"
    if entry.asks == "depth" and value.value is None:
        return "out at the other side"
    if entry.asks == "hole size":
        from jobsheet.catalog.tools.drills import name_in

        name = name_in(value.text)
        both = f"{plain(value.value / INCH, 4)} in = {trimmed(value.value * 1e3, 3)} mm"
        return f"{name} = {both}" if name else _length(value.value)
    if entry.asks in ("length", "depth", "feed per tooth", "feed per turn"):
        return _length(value.value)
    return (
        f"{trimmed(value.value / _UNDERSTOOD[entry.asks][0], 3)} {_UNDERSTOOD[entry.asks][1]}"
        if entry.asks in _UNDERSTOOD
        else ""
    )


_UNDERSTOOD = {
    "cutting speed": (1 / 60, "m/min"), "spindle speed": (1 / 60, "rpm"), "feed": (1e-3 / 60, "mm/min"),
    "torque": (1.0, "N·m"), "time": (60.0, "min"), "force": (1.0, "N"), "angle": (math.pi / 180, "°"),
}  # fmt: skip
