"""The cabinet as a file: the person's own `cabinet.yaml`, else the shipped one
of the workshop that a job names.

format: 1
name: The shed
cutters:
  - what: end mill 12 mm, 4 teeth, HSS
    place: drawer 1 no. 4
    count: 2
    out: at the grinder
drills:
  - what: drills 1 mm to 10 mm by 0.5 mm
    place: drawer 3
    missing: 3.5 mm

`what` is the line by which a job names the thing. What a section does not list is lacking; of a section that
is left out nothing is said. A numbered place holds one thing; a drawer without a number holds many.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node, parse, read_file
from jobsheet.catalog.tools.cabinet_lines import SECTIONS, Read, read_line
from jobsheet.catalog.tools.places import parted
from jobsheet.errors import DocumentError, Problem, QuantityError
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.paths import own_folder, resources
from jobsheet.storage.versions import OF_LISTS, what_is_wrong
from jobsheet.units.grammar import nearest

NAME = "cabinet.yaml"
HEAD = ("format", "name", "workshop", "invented", "note")
FIELDS = ("what", "place", "count", "out", "missing", "note")
#: As large a number of one thing as anybody counts.
MOST = 999


def own_path() -> Path:
    """Where the person's own cabinet lies, whether it is there or not."""
    return own_folder() / NAME


def cabinet_for(workshop: str) -> Cabinet | None:
    """The cabinet that concerns a job which names this workshop; None where there is none.

    The person's own goes before all: whoever has one asks what *their* cabinet has, also for a plan that came
    from elsewhere. Without it a shipped, invented one counts only for jobs that name its workshop.

    Raises
    ------
    DocumentError
        With every problem of the file, each with its line.
    """
    own = own_path()
    try:
        return _read(own, own.stat().st_mtime_ns, own=True)
    except OSError:
        pass
    if not workshop.strip():
        return None
    for path in shipped():
        cabinet = _read(path, path.stat().st_mtime_ns, own=False)
        if cabinet.workshop and cabinet.workshop.casefold() in workshop.casefold():
            return cabinet
    return None


def shipped() -> tuple[Path, ...]:
    """The cabinets that come with the program, all of them invented."""
    return tuple(sorted((resources() / "cabinets").glob("*.yaml")))


def read_cabinet(path: Path, *, own: bool = False) -> Cabinet:
    """A cabinet from its file.

    Raises
    ------
    DocumentError
        With every problem of the file, each with its line.
    """
    return cabinet_from_text(read_file(path), path.name, own=own)


@lru_cache(maxsize=8)
def _read(path: Path, _changed: int, *, own: bool) -> Cabinet:
    """Remembered for as long as the file is not changed."""
    return read_cabinet(path, own=own)


def cabinet_from_text(text: str, name: str, *, own: bool = False) -> Cabinet:
    """A cabinet from the text of its file.

    Raises
    ------
    DocumentError
        With every problem, each with its line and the place in the file.
    """
    reader = _Reader(parse(text, name))
    made = reader.cabinet(own=own)
    if reader.problems:
        raise DocumentError(name, tuple(sorted(reader.problems, key=lambda problem: problem.line or 0)))
    return made


class _Reader:
    """Takes a file apart and keeps what is wrong with it."""

    def __init__(self, root: Node) -> None:
        self.root = root
        self.problems: list[Problem] = []
        self._places: dict[tuple[str, str], tuple[int, str]] = {}
        self._lines: dict[tuple[str, str], int] = {}

    def problem(self, line: int, path: str, sentence: str) -> None:
        self.problems.append(Problem(line, path, sentence))

    def cabinet(self, *, own: bool) -> Cabinet:
        fields = self.root.fields
        if fields is None:
            self.problem(self.root.line, "", f"this is {self.root.what}; a cabinet begins with format: 1")
            return Cabinet(name="")
        for name, node in fields.items():
            if name not in HEAD and name not in SECTIONS:
                near = nearest(name, (*SECTIONS, *HEAD))
                hint = f"did you mean {near}?" if near else f"there are {', '.join(SECTIONS)}"
                self.problem(node.line, name, f"a cabinet has no such section; {hint}")
        written = self._text(fields, "format", "", 1)
        sentence = what_is_wrong(written, OF_LISTS)
        if sentence:
            line = fields["format"].line if "format" in fields else 1
            self.problem(line, "format", sentence if written else "this field is missing; write format: 1")
        things: list[Thing] = []
        for section in SECTIONS:
            if section in fields:
                things.extend(self._section(section, fields[section]))
        invented = self._text(fields, "invented", "no", 1)
        if invented not in ("yes", "no"):
            self.problem(fields["invented"].line, "invented", f"“{invented}” is neither yes nor no")
        return Cabinet(
            name=self._text(fields, "name", "", 1), workshop=self._text(fields, "workshop", "", 1), invented=invented == "yes",
            note=self._text(fields, "note", "", 1), own=own, sections=frozenset(fields) & frozenset(SECTIONS), things=tuple(things),
        )  # fmt: skip

    def _text(self, fields: dict[str, Node], name: str, path: str, line: int) -> str:
        node = fields.get(name)
        if node is None:
            return {"invented": "no", "count": "1"}.get(name, "")
        where = f"{path}.{name}" if path else name
        if node.text is None:
            self.problem(node.line or line, where, f"this is {node.what}; a text belongs here")
            return ""
        if node.comment:
            self.problem(
                node.line, where, 'an unquoted # begins a comment; put the text in quotes, such as "drill #7"'
            )
        return node.text.strip()

    def _section(self, section: str, node: Node) -> list[Thing]:
        if node.items is None:
            if node.text == "":
                return []
            self.problem(
                node.line,
                section,
                f"this is {node.what}; a list belongs here, each entry with what and place",
            )
            return []
        things: list[Thing] = []
        for row, item in enumerate(node.items):
            things.extend(self._entry(section, row, item))
        return things

    def _entry(self, section: str, row: int, node: Node) -> list[Thing]:
        path = f"{section}[{row}]"
        fields = node.fields
        if fields is None:
            self.problem(node.line, path, f"this is {node.what}; write what: and place: below each other")
            return []
        for name, inner in fields.items():
            if name not in FIELDS:
                near = nearest(name, FIELDS)
                self.problem(
                    inner.line, f"{path}.{name}", f"unknown field{f'; did you mean {near}?' if near else ''}"
                )
        text: dict[str, str] = {name: self._text(fields, name, path, node.line) for name in FIELDS}
        count = self._count(text["count"], fields, path)
        line = fields["what"].line if "what" in fields else node.line
        read: tuple[Read, ...] = ()
        try:
            read = read_line(section, text["what"], text["missing"])
        except QuantityError as error:
            self.problem(line, f"{path}.what", str(error).rstrip("."))
        place = text["place"]
        written = next(
            (other.cutter.place for other in read if other.cutter is not None and other.cutter.place), ""
        )
        if written:
            self.problem(line, f"{path}.what", f"the place has a field of its own; write place: {written}")
        elif not place:
            self.problem(
                node.line,
                f"{path}.place",
                "this field is missing; write where it lies, such as drawer 1 no. 4",
            )
        else:
            self._alone(place, text["what"], fields["place"].line, path)
        common: dict[str, Any] = {"section": section, "place": place, "row": row, "count": count}
        return [
            Thing(
                what=other.what, out=text["out"], note=text["note"], name=other.name, cutter=other.cutter, thread=other.thread,
                styles=other.styles, size=other.size, low=other.low, high=other.high, sizes=other.sizes, **common,
            )
            for other in read
        ]  # fmt: skip

    def _count(self, text: str, fields: dict[str, Node], path: str) -> int:
        if text.isascii() and text.isdigit() and len(text) < 9 and int(text) <= MOST:
            return int(text)
        line = fields["count"].line if "count" in fields else 1
        self.problem(
            line, f"{path}.count", f"“{text}” is not a number of things; write 2, or 0 where none is left"
        )
        return 1

    def _alone(self, place: str, what: str, line: int, path: str) -> None:
        """A numbered place holds one thing; the same line twice in one drawer is a slip of the pen."""
        key = parted(place)
        other = self._places.get(key)
        if key[1] and other is not None:
            self.problem(
                line,
                f"{path}.place",
                f"{place} holds {other[1]} already (line {other[0]}); one place, one thing: number them apart",
            )
            return
        same = self._lines.get((" ".join(key), what.casefold()))
        if same is not None:
            self.problem(
                line, f"{path}.what", f"this stands in {place} already (line {same}); write count: 2 there"
            )
        self._places[key] = (line, what)
        self._lines[(" ".join(key), what.casefold())] = line
