"""What the index needs of a job's file, line by line: an order of magnitude quicker than a
strict read, and of broken ones as well.

The strict reader judges files; this one only finds words and sizes in them, so that it never refuses.
"""

from __future__ import annotations

import re

from msgspec import Struct

from jobsheet.remembered import remembered
from jobsheet.shelf.size_words import sizes

_LINE = re.compile(
    r"^(?P<indent> *)(?P<dash>- )?(?:(?P<key>[a-z][a-z0-9 -]*):(?: +(?P<value>.*))?|(?P<item>.*))$"
)
#: Keys whose numbers are sizes that somebody looks for; places, speeds and minutes are not.
_SIZED = frozenset(
    (
        "cutter",
        "thread",
        "hole",
        "to",
        "width",
        "depth",
        "length",
        "height",
        "diameter",
        "sizes",
        "features",
        "across",
        "pitch",
        "cut",
        "words",
    )
)
#: Numbers after these are places, tolerances and counts.
_NO_SIZES = frozenset(("at", "from", "within", "drawer", "no", "teeth", "broken"))
#: Keys that say nothing to a person.
_SILENT = frozenset(
    ("key", "card hash", "format", "units", "up", "operator", "fixed jaw", "along", "content")
)
_PART = ("number", "name", "revision", "drawing")
#: More of one file than this is not read for words [characters].
MOST_TEXT = 200_000


class SizeAt(Struct, frozen=True):
    """A size in a file: its word before, the kind of its step, and the line it stands in."""

    micrometres: int
    before: str
    kind: str
    line: str


class Scanned(Struct, frozen=True, kw_only=True):
    """A job as it is found: its title block, all of its words, and its sizes."""

    number: str = ""
    name: str = ""
    revision: str = ""
    drawing: str = ""
    machine: str = ""
    material: str = ""
    planned_on: str = ""
    plan: int = 0
    #: What a second file of the same plan has in common with it, whatever was done to either
    #: since; empty where too little is said.
    began: str = ""
    #: The first revision of the plan, as it was written; two plans that both
    #: have one began there or not at all.
    first: str = ""
    steps: int = 0
    text: str = ""
    sizes: tuple[SizeAt, ...] = ()


def scanned(text: str) -> Scanned:
    """Everything that is found in a job's text. Never raises."""
    header: dict[str, str] = {}
    words: list[str] = []
    found: list[SizeAt] = []
    units, top, kind, plan, steps, last, first = "mm", "", "", 0, 0, "", ""
    for line in text[:MOST_TEXT].splitlines():
        match = _LINE.match(line)
        if match is None or not line.strip() or line.lstrip().startswith("#"):
            continue
        indent, key, said, item = match.group("indent", "key", "value", "item")
        key = key or ""
        if key in _SILENT and indent:
            last = key
            continue
        value = _plain((said if key else item) or "")
        if not indent and key:
            top, kind = key, ""
            if key == "units":
                units = "in" if value == "in" else "mm"
        if key == "kind":
            kind = value
            steps += bool(value) and top == "set-ups" and len(indent) >= 6
        elif key == "number" and top == "plan revisions" and value.isdigit():
            plan = max(plan, int(value))
        elif key in ("changed", "who", "when") and top == "plan revisions" and plan == 1:
            first += f"{value}\n"
        if key and (not indent or top == "part") and value:
            header.setdefault(key if top != "part" else f"part {key}", value)
        last = key or last
        if not value or key in _SILENT:
            continue
        words.append(value)
        if last in _SIZED:
            shown = f"{last}: {value}" if key else value
            found += [SizeAt(size, before or last, kind, shown) for size, before in _sized(value, units)]
    began = [header.get(key, "") for key in ("part number", "machine", "planned on", "planned by")]
    return Scanned(
        began="\n".join(began).casefold() if began[0] and any(began[2:]) else "", first=first,
        **{name: header.get(f"part {name}", "") for name in _PART}, machine=header.get("machine", ""),
        material=header.get("material", ""), planned_on=header.get("planned on", ""), plan=plan, steps=steps,
        text="\n".join(words), sizes=tuple(dict.fromkeys(found)),
    )  # fmt: skip


@remembered(8192)
def _sized(value: str, units: str) -> tuple[tuple[int, str], ...]:
    """The sizes of a value, each with its word; the same cutters and depths stand in many jobs."""
    return tuple(
        (size.micrometres, size.before) for size in sizes(value, units) if size.before not in _NO_SIZES
    )


def _plain(value: str) -> str:
    """A value without its quotes, as a person reads it."""
    value = value.strip()
    if len(value) > 1 and value[0] == value[-1] and value[0] in "\"'":
        value = value[1:-1].replace('\\"', '"').replace("''", "'")
    return value.strip("[]") if value.startswith("[") else value
