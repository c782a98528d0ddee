"""The shortest way to a card of a machine that one knows: what it is called, how its
speeds are changed, and its sizes.

Each answer is written into the card at once. Who says that speeds are changed in another way gets
another drive: nothing of the one before stays behind. What is not asked here stays as the class has
it, and counts as guessed or assumed.

Drives and efficiencies: handbook values as in the classes (belt 0.81, geared head 0.75, electronic 0.80);
that an electronic drive has its full power only near the top of a range: estimate.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.operations.entry import Entry
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.card_steps import assumed_without
from jobsheet.storage.short_speeds import numbers, spelt
from jobsheet.storage.typed_paper import Group, Items, Paper, Part, Path, entries_at, text_at, with_value

#: Ranges that are asked for, with their names.
NAMES = {1: ("speeds",), 2: ("low range", "high range"), 3: ("low range", "middle range", "high range")}
#: Full power from this share of the highest speed of an electronic range; estimate.
FULL_POWER_FROM = 0.9


class Drive(Struct, frozen=True, kw_only=True):
    """What is assumed of a drive by the way its speeds are changed."""

    words: str
    stepped: bool
    efficiency: str
    peak: str
    slips: str
    #: What a step is set by.
    by: str = ""


DRIVES = {
    "step belt": Drive(words="induction, belts", stepped=True, efficiency="0.81", peak="1.8", slips="no", by="belts"),
    "gears": Drive(words="induction, geared head", stepped=True, efficiency="0.75", peak="1.8", slips="no", by="levers"),
    "variable belt": Drive(words="induction, variable belt", stepped=False, efficiency="0.80", peak="1.8", slips="no"),
    "electronic": Drive(words="electronic drive", stepped=False, efficiency="0.80", peak="1.3", slips="yes"),
}  # fmt: skip

_SPINDLE: Path = ("spindle",)
_RANGES: Path = ("spindle", "ranges")
#: Questions that stand in the card as they are: where, and what is no longer assumed once they are answered.
_PLAIN: dict[str, tuple[tuple[Path, ...], str]] = {
    "title": ((("title",),), ""),
    "dial": ((("handles", 0, "dial"), ("handles", 1, "dial"), ("handles", 2, "dial")), "handles"),
    "x": ((("travel", "x"),), "room"),
    "y": ((("travel", "y"),), "room"),
    "greatest": ((("daylight", "greatest"),), "room"),
    "jaw width": ((("vices", 0, "jaw width"),), "vice"),
    "opening": ((("vices", 0, "opening"),), "vice"),
}
#: A turn of a handle with the lines of its dial: the handles that share them.
_TURNS = {"table": (0, 1), "down": (2,)}


def change_of(paper: Paper) -> str:
    """How the speeds of the card's machine are changed."""
    said = text_at(paper, ("spindle", "speed change"))
    return said if said in DRIVES else "step belt"


def unit_of(paper: Paper) -> str:
    """What a bare length means: what the dials are in."""
    return text_at(paper, ("handles", 0, "dial")) or "mm"


def questions(paper: Paper) -> tuple[Entry, ...]:
    """What is asked, by the way the speeds are changed: of another way nothing is asked."""
    drive = DRIVES[change_of(paper)]
    names = [text_at(paper, (*_RANGES, index, "name")) for index in range(len(entries_at(paper, _RANGES)))]
    several = len(names) > 1
    asked: list[Entry] = []
    for index, name in enumerate(names):
        of = f" of the {name}" if several else ""
        if drive.stepped:
            hint = "as on its chart, such as 200, 350, 600"
            asked.append(_entry(f"speeds {index}", f"Speeds{of}", "text", hint))
        else:
            asked.append(_entry(f"lowest {index}", f"Lowest{of or ' speed'}", "spindle speed"))
            asked.append(_entry(f"highest {index}", f"Highest{of or ' speed'}", "spindle speed"))
    down = text_at(paper, ("handles", 2, "name")) or "quill"
    return (
        *asked,
        _entry("power", "Motor gives out", "power", "from its plate"),
        Entry(name="dial", title="Dials in", asks="choice", choices=("mm", "in")),
        _entry("turn table", "Table, one turn", "length", "x and y"),
        _entry("lines table", "Lines on its dial", "count"),
        _entry("turn down", f"{down[:1].upper()}{down[1:]}, one turn", "length"),
        _entry("lines down", "Lines on that dial", "count"),
        _entry("x", "Table goes in x", "length"),
        _entry("y", "Table goes in y", "length"),
        _entry("greatest", "Nose to table, most", "length"),
        _entry("jaw width", "Vice, width of its jaws", "length"),
        _entry("opening", "Vice opens to", "length"),
    )


def _entry(name: str, title: str, asks: str, hint: str = "") -> Entry:
    if asks == "count":
        return Entry(name=name, title=title, asks=asks, hint=hint, low="1", high="1000")
    return Entry(name=name, title=title, asks=asks, hint=hint)


def answer(paper: Paper, name: str) -> str:
    """What the card says to a question."""
    if name in _PLAIN:
        return text_at(paper, _PLAIN[name][0][0])
    if name == "power":
        return text_at(paper, ("spindle", "power")).partition(",")[0]
    what, _, which = name.partition(" ")
    if what in ("turn", "lines"):
        handle: Path = ("handles", _TURNS[which][0])
        turn, line = text_at(paper, (*handle, "a turn")), text_at(paper, (*handle, "a line"))
        return turn if what == "turn" else _lines(turn, line)
    place: Path = (*_RANGES, int(which))
    if what == "speeds":
        steps = range(len(entries_at(paper, (*place, "steps"))))
        return ", ".join(
            text_at(paper, (*place, "steps", index, "speed")).removesuffix(" rpm") for index in steps
        )
    return text_at(paper, (*place, what))


def answered(paper: Paper, name: str, text: str) -> Paper:
    """The card with the answer to a question written in.

    Raises
    ------
    QuantityError
        If it cannot be read; the card stays as it is.
    """
    entry = next((entry for entry in questions(paper) if entry.name == name), None)
    if entry is not None and entry.asks != "text":
        unit = unit_of(paper)
        entry.read(text, unit)
        text = entry.with_unit(text, unit)  # in a card a bare number would be millimetres
    if name in _PLAIN:
        paths, word = _PLAIN[name]
        for path in paths:
            paper = _with(paper, path, text)
        return _known(paper, word)
    if name == "power":
        return _with(paper, ("spindle", "power"), f"{text}, plate")
    what, _, which = name.partition(" ")
    if what in ("turn", "lines"):
        return _known(_turned(paper, what, which, text), "handles")
    place: Path = (*_RANGES, int(which))
    if what == "speeds":
        drive = DRIVES[change_of(paper)]
        found = numbers(text)
        steps = Items(
            tuple(Part(_step(drive, paper, place, rpm, index)) for index, rpm in enumerate(found, 1))
        )
        return _known(_with(paper, (*place, "steps"), steps), "speeds")
    paper = _with(paper, (*place, what), text)
    if what == "highest" and change_of(paper) == "electronic":
        paper = _with(paper, (*place, "base speed"), _full_power(text))
    return _known(paper, "speeds")


def changed(paper: Paper, change: str, count: int = 1) -> Paper:
    """The card with another way of changing speeds, in so many ranges; the speeds
    of the one before give the bounds.
    """
    drive = DRIVES[change]
    known = sorted(_speeds(paper)) or [100.0, 2000.0]
    low, high = known[0], known[-1]
    names = NAMES[count]
    ranges = []
    for index, name in enumerate(names):
        parts = [("name", name), ("efficiency", f"{drive.efficiency}, guessed")]
        bottom, top = (
            spelt(low * (high / low) ** (index / (count + 1))),
            spelt(high / 2 ** (count - 1 - index)),
        )
        if drive.stepped:
            fitting = [rpm for at, rpm in enumerate(known) if at * count // len(known) == index] or [
                low,
                high,
            ]
            place: Path = (*_RANGES, index)
            steps = Items(tuple(
                Part(_step(drive, None, place, f"{rpm:g}", at, name if count > 1 else "")) for at, rpm in enumerate(fitting, 1)
            ))  # fmt: skip
            ranges.append(Group((*(Part(text, key) for key, text in parts), Part(steps, "steps"))))
            continue
        if change == "electronic":
            parts.append(("base speed", _full_power(top)))
        parts += [("lowest", f"{bottom} rpm"), ("highest", f"{top} rpm")]
        ranges.append(Group(tuple(Part(text, key) for key, text in parts)))
    for field, text in (
        ("drive", drive.words),
        ("speed change", change),
        ("short peak", drive.peak),
        ("slips", drive.slips),
    ):
        paper = _with(paper, (*_SPINDLE, field), text)
    return _with(paper, _RANGES, Items(tuple(Part(group) for group in ranges)))


def _step(drive: Drive, paper: Paper | None, place: Path, rpm: str, index: int, name: str = "") -> Group:
    """One speed of a chart, with what it is set by."""
    if paper is not None and len(entries_at(paper, _RANGES)) > 1:
        name = text_at(paper, (*place, "name"))
    by = f"{name}, {drive.by} {index}" if name else f"{drive.by} {index}"
    return Group((Part(f"{rpm} rpm", "speed"), Part(by, "position")), flow=True)


def _speeds(paper: Paper) -> list[float]:
    """All speeds that the card names."""
    speeds = []
    for index in range(len(entries_at(paper, _RANGES))):
        place: Path = (*_RANGES, index)
        texts = [text_at(paper, (*place, field)) for field in ("lowest", "highest")]
        texts += [
            text_at(paper, (*place, "steps", at, "speed"))
            for at in range(len(entries_at(paper, (*place, "steps"))))
        ]
        for text in texts:
            try:
                speeds += [float(number) for number in numbers(text.removesuffix(" rpm"))] if text else []
            except QuantityError:
                continue
    return speeds


def _full_power(highest: str) -> str:
    """Where an electronic range has its full power from."""
    try:
        (top,) = numbers(highest.removesuffix("rpm").strip())
    except (QuantityError, ValueError):
        return ""
    return f"{spelt(float(top) * FULL_POWER_FROM)} rpm"


def _turned(paper: Paper, what: str, which: str, text: str) -> Paper:
    """A turn of a handle, or the lines of its dial; one line is one by the other."""
    lines = text if what == "lines" else answer(paper, f"lines {which}")
    turn = text if what == "turn" else answer(paper, f"turn {which}")
    unit = unit_of(paper)
    for index in _TURNS[which]:
        handle: Path = ("handles", index)
        if not entries_at(paper, ("handles",))[index:]:
            continue
        paper = _with(paper, (*handle, "a turn"), turn)
        if (line := _line(turn, lines, unit)) is not None:
            paper = _with(paper, (*handle, "a line"), line)
    return paper


_LENGTH = Entry(name="turn", title="One turn", asks="length")


def _line(turn: str, lines: str, unit: str) -> str | None:
    """A turn divided by the lines of its dial, in the unit of the dial."""
    try:
        way, count = _LENGTH.read(turn, unit), float(lines)
    except (QuantityError, ValueError):
        return None
    scale = 25.4e-3 if unit == "in" else 1e-3
    return f"{float(f'{way.value / count / scale:.6g}'):g} {unit}" if count >= 1 else None


def _lines(turn: str, line: str) -> str:
    """How many lines a dial has."""
    try:
        ratio = _LENGTH.read(turn, "mm").value / _LENGTH.read(line, "mm").value
    except (QuantityError, ZeroDivisionError):
        return ""
    return str(round(ratio)) if abs(ratio - round(ratio)) < 0.01 else ""


def _with(paper: Paper, path: Path, value: str | Items) -> Paper:
    return with_value(paper, path, value, LAYOUT.orders(path))


def _known(paper: Paper, word: str) -> Paper:
    """What was answered is no longer assumed."""
    return _with(paper, ("assumed",), assumed_without(paper, word)) if word else paper
