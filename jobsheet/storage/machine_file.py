"""Machine cards as files: the shipped ones and a person's own, by name."""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node, parse
from jobsheet.errors import DocumentError, Problem, QuantityError
from jobsheet.model.machine import Handle, Lever, Machine, Marked, SpeedRange, SpeedStep, Spindle, Table, Vice
from jobsheet.storage.card_bounds import number_in, outside
from jobsheet.storage.older_words import FIELDS
from jobsheet.storage.versions import OF_LISTS, what_is_wrong
from jobsheet.units.grammar import nearest, read
from jobsheet.units.lazily import pattern

_NUMBERED = pattern(r"\[\d+\]")
_MARK = pattern(r"^(.*?),\s*(plate|measured|guessed)$")


class _Card:
    """One level of a card: takes fields by name and keeps what is wrong with them."""

    def __init__(self, node: Node | None, path: str, problems: list[Problem], line: int) -> None:
        self.fields = {
            FIELDS.get(name, name): other for name, other in ((node.fields or {}) if node else {}).items()
        }
        self.line = node.line if node else line
        self.path = path
        self.problems = problems
        if node is not None and node.fields is None:
            self._problem(node.line, "", f"this is {node.what}; a group of fields belongs here")

    def _problem(self, line: int, name: str, sentence: str) -> None:
        path = ".".join(part for part in (self.path, name) if part)
        self.problems.append(Problem(line, path, sentence))

    def text(self, name: str, otherwise: str | None = None) -> str:
        node = self.fields.pop(name, None)
        if node is None:
            if otherwise is None:
                self._problem(self.line, name, "this field is missing")
            return otherwise or ""
        if node.text is None:
            self._problem(node.line, name, f"this is {node.what}; a text belongs here")
            return ""
        return node.text

    def flag(self, name: str) -> bool:
        node = self.fields.get(name)
        value = self.text(name, "no")
        if value not in ("yes", "no"):
            self._problem(node.line if node else self.line, name, f"“{value}” is neither yes nor no")
        return value == "yes"

    def _typed(self, name: str, *, required: bool) -> str:
        """What is typed in a figure's field; nothing is a problem where a figure must stand."""
        node = self.fields.get(name)
        value = self.text(name, None if required else "").strip()
        if required and not value and node is not None and node.text is not None:
            self._problem(node.line, name, "nothing is written here; write a figure")
        return value

    def size(self, name: str, measures: str, *, required: bool = True) -> float | None:
        node = self.fields.get(name)
        value = self._typed(name, required=required)
        if not value:
            return None
        try:
            number = read(value, measures)
        except QuantityError as error:
            self._problem(node.line if node else self.line, name, str(error))
            return None
        if number <= 0:
            self._problem(node.line if node else self.line, name, f"“{value}” must be above zero")
            return None
        return number if self._inside(node, name, value, number, measures) else None

    def _inside(self, node: Node | None, name: str, typed: str, number: float, measures: str) -> bool:
        """Whether a figure lies where it can lie; a problem where it does not."""
        group = _NUMBERED.sub("", self.path)
        place = group if group == "travel" else f"{group}.{name}" if group else name
        if sentence := outside(place, typed.strip(), number, measures):
            self._problem(node.line if node else self.line, name, sentence)
        return not sentence

    def format(self) -> None:
        """The format that the card says, refused where it is not one that is known here."""
        node = self.fields.get("format")
        written = self.text("format")
        if node is not None and node.text is not None and (sentence := what_is_wrong(written, OF_LISTS)):
            self._problem(node.line, "format", sentence)

    def marked(self, name: str, measures: str, *, required: bool = True) -> Marked | None:
        node = self.fields.get(name)
        value = self._typed(name, required=required)
        if not value:
            return None
        match = _MARK.match(value)
        if not match:
            self._problem(
                node.line if node else self.line,
                name,
                f"say where “{value}” comes from: write {value}, plate (or measured, or guessed)",
            )
            return None
        try:
            number = read(match[1], measures)
        except QuantityError as error:
            self._problem(node.line if node else self.line, name, str(error))
            return None
        return Marked(number, match[2]) if self._inside(node, name, match[1], number, measures) else None

    def part(self, name: str, *, required: bool = True) -> _Card | None:
        node = self.fields.pop(name, None)
        if node is None:
            if required:
                self._problem(self.line, name, "this group is missing")
            return None
        return _Card(node, f"{self.path}.{name}" if self.path else name, self.problems, self.line)

    def parts(self, name: str) -> list[_Card]:
        node = self.fields.pop(name, None)
        if node is None or node.items is None:
            self._problem(node.line if node else self.line, name, "a list belongs here")
            return []
        where = f"{self.path}.{name}" if self.path else name
        return [
            _Card(item, f"{where}[{index}]", self.problems, item.line)
            for index, item in enumerate(node.items)
        ]

    def parts_if(self, name: str) -> list[_Card]:
        """The entries of a list that may be left out."""
        return self.parts(name) if name in self.fields else []

    def end(self, known: tuple[str, ...]) -> None:
        for name, node in self.fields.items():
            near = nearest(name, known)
            self._problem(node.line, name, f"unknown field{f'; did you mean {near}?' if near else ''}")


def machine_from_text(text: str, name: str, card_name: str) -> Machine:
    """A machine from the text of its card.

    Raises
    ------
    DocumentError
        With every problem of the card, each with its line.
    """
    root = parse(text, name)
    problems: list[Problem] = []
    card = _Card(root, "", problems, 1)
    card.format()
    spindle = _spindle(card.part("spindle"))
    handles = tuple(handle for part in card.parts("handles") if (handle := _handle(part)) is not None)
    lever = _lever(card.part("quill lever", required=False))
    frame = card.marked("frame stiffness", "stiffness", required=False)
    drag = card.marked("gib drag", "force", required=False)
    travel = card.part("travel", required=False)
    travels = (
        tuple((axis, travel.size(axis, "length") or 0.0) for axis in list(travel.fields)) if travel else ()
    )
    vices = tuple(vice for part in card.parts_if("vices") if (vice := _vice(part)) is not None)
    texts = {name: card.text(name, "") for name in _TEXTS}
    title, kind = card.text("title"), card.text("kind")
    flags: dict[str, Any] = {name: card.flag(name) for name in ("invented", "quill")}
    noise, mass = card.size("noise", "sound", required=False), card.size("mass", "mass", required=False)
    daylight, table = _daylight(card), _table(card.part("table", required=False))
    card.end(_KNOWN)
    words: dict[str, Any] = {name.replace(" ", "_"): text for name, text in texts.items()}
    if problems or spindle is None:
        raise DocumentError(name, tuple(sorted(problems, key=lambda problem: problem.line or 0)))
    return Machine(
        name=card_name,
        title=title,
        kind=kind,
        spindle=spindle,
        handles=handles,
        lever=lever,
        noise=noise,
        travel=travels,
        frame=frame,
        drag=drag,
        vices=vices,
        table=table,
        daylight=daylight,
        mass=mass,
        **flags,
        **words,
    )


#: Fields of a card that are words.
_TEXTS = (
    "card date", "column", "stand", "vice", "stiffness class", "taper", "drawbar", "readout", "power feed",
    "trammed", "largest drill", "note", "assumed",
)  # fmt: skip
_KNOWN = (
    "title", "kind", "invented", "quill", "noise", "mass", "frame stiffness", "gib drag", "spindle", "handles",
    "quill lever", "travel", "daylight", "table", "vices", *_TEXTS,
)  # fmt: skip


def _daylight(card: _Card) -> tuple[float, float] | None:
    """The least and the greatest way from the spindle nose to the table [m]."""
    part = card.part("daylight", required=False)
    if part is None:
        return None
    low, high = part.size("least", "length"), part.size("greatest", "length")
    part.end(("least", "greatest"))
    if low is None or high is None:
        return None
    if low >= high:
        card.problems.append(Problem(part.line, "daylight", "the least must be less than the greatest"))
        return None
    return low, high


def _table(card: _Card | None) -> Table | None:
    if card is None:
        return None
    table = Table(
        length=card.size("length", "length", required=False),
        width=card.size("width", "length", required=False),
        slots=card.text("slots", ""),
        load=card.size("load", "mass", required=False),
    )
    card.end(("length", "width", "slots", "load"))
    return table


def _vice(card: _Card) -> Vice | None:
    name = card.text("name")
    width, depth = card.size("jaw width", "length"), card.size("jaw depth", "length")
    rest: dict[str, Any] = {
        "opening": card.size("opening", "length", required=False),
        "bed_height": card.size("bed height", "length", required=False),
        "mass": card.size("mass", "mass", required=False),
        "lead": card.size("screw lead", "length", required=False),
        "efficiency": card.marked("screw efficiency", "share", required=False),
        "usual_torque": card.size("usual torque", "torque", required=False),
    }
    card.end(
        (
            "name",
            "jaw width",
            "jaw depth",
            "opening",
            "bed height",
            "mass",
            "screw lead",
            "screw efficiency",
            "usual torque",
        )
    )
    return Vice(name=name, jaw_width=width, jaw_depth=depth, **rest) if width and depth else None


def _spindle(card: _Card | None) -> Spindle | None:
    if card is None:
        return None
    power = card.marked("power", "power")
    peak_line = card.fields["short peak"].line if "short peak" in card.fields else card.line
    peak = card.text("short peak")
    ranges = tuple(span for part in card.parts("ranges") if (span := _range(part)) is not None)
    drive, change = card.text("drive"), card.text("speed change")
    reverses, slips = card.flag("reverses"), card.flag("slips")
    card.end(("power", "short peak", "ranges", "drive", "speed change", "reverses", "slips"))
    try:
        short_peak = number_in(peak)
        wrong = outside("spindle.short peak", peak, short_peak, "share")
    except QuantityError as error:
        wrong = str(error)
    if wrong:
        card.problems.append(Problem(peak_line, "spindle.short peak", wrong))
        return None
    if not ranges and not card.problems:
        card.problems.append(
            Problem(card.line, "spindle.ranges", "a spindle needs at least one range of speeds")
        )
    if power is None or not ranges:
        return None
    return Spindle(
        drive=drive,
        change=change,
        power=power,
        short_peak=short_peak,
        ranges=ranges,
        reverses=reverses,
        slips=slips,
    )


def _range(card: _Card) -> SpeedRange | None:
    name = card.text("name", "")
    efficiency = card.marked("efficiency", "share")
    base = card.size("base speed", "spindle speed", required=False)
    cap = card.marked("cap", "torque", required=False)
    lowest = card.size("lowest", "spindle speed", required=False)
    highest = card.size("highest", "spindle speed", required=False)
    steps: list[SpeedStep] = []
    if "steps" in card.fields:
        for part in card.parts("steps"):
            speed = part.size("speed", "spindle speed")
            measured = part.size("measured", "spindle speed", required=False)
            position = part.text("position", "")
            part.end(("speed", "measured", "position"))
            if speed is not None:
                steps.append(SpeedStep(speed, f"{speed * 60:.0f}", position, measured))
    card.end(("name", "efficiency", "base speed", "cap", "lowest", "highest", "steps"))
    if lowest is not None and highest is not None and lowest >= highest:
        card.problems.append(
            Problem(card.line, f"{card.path}.lowest", "the lowest must be less than the highest")
        )
    if efficiency is None or (not steps and (lowest is None or highest is None)):
        if efficiency is not None:
            card.problems.append(
                Problem(card.line, card.path, "a range needs steps, or its lowest and highest speed")
            )
        return None
    return SpeedRange(
        name=name, steps=tuple(steps), lowest=lowest, highest=highest, efficiency=efficiency, base=base, cap=cap
    )  # fmt: skip


def _handle(card: _Card) -> Handle | None:
    name, dial = card.text("name"), card.text("dial")
    travel, line = card.size("a turn", "length"), card.size("a line", "length")
    backlash = card.size("backlash", "length", required=False)
    crank = card.size("crank radius", "length", required=False)
    efficiency = card.marked("screw efficiency", "share", required=False)
    counts = card.text("counts up", "")
    card.end(
        ("name", "dial", "a turn", "a line", "backlash", "crank radius", "screw efficiency", "counts up")
    )
    if travel is None or line is None:
        return None
    if dial not in ("mm", "in"):
        card.problems.append(
            Problem(card.line, f"{card.path}.dial", f"“{dial}” is not a dial's unit; write mm or in")
        )
        return None
    return Handle(
        name=name,
        travel=travel,
        line=line,
        dial=dial,
        backlash=backlash,
        crank=crank,
        efficiency=efficiency,
        counts_up=counts,
    )


def _lever(card: _Card | None) -> Lever | None:
    if card is None:
        return None
    length, travel, spring = (
        card.size("length", "length"),
        card.size("travel a turn", "length"),
        card.size("spring", "force"),
    )
    card.end(("length", "travel a turn", "spring"))
    if length is None or travel is None or spring is None:
        return None
    return Lever(length, travel, spring)
