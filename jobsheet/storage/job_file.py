"""A job as a file: reads it whole or says everything that is wrong with it; writes stable bytes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node, parse, read_file
from jobsheet.errors import DocumentError, JobsheetError, Problem, QuantityError
from jobsheet.finished.lines_in_file import finished_from
from jobsheet.holdings.all_holdings import NONE, holding_kind
from jobsheet.holdings.all_holdings import NOTE as HOLDING_NOTE
from jobsheet.holdings.placed import own_vice
from jobsheet.model.held_work import NOTHING, Holding
from jobsheet.model.job import Dismissed, Job, Operation, Part, Photograph, Revision, SetUp, Zero
from jobsheet.model.lying import beside, laid
from jobsheet.model.quantity import Pattern, Place, Places, Quantity
from jobsheet.model.stock import FACES, Stock
from jobsheet.operations.entry import Entry, place_from, read_place
from jobsheet.operations.registry import kind as kind_of
from jobsheet.remembered import remembered
from jobsheet.storage import layout, versions
from jobsheet.storage.disk import file_digest
from jobsheet.storage.job_writing import name_in_file
from jobsheet.storage.older_words import RULES
from jobsheet.storage.words.stock_reading import stock_from
from jobsheet.units.grammar import nearest
from jobsheet.units.lazily import pattern

_NUMBER = Entry(name="number", title="Number", asks="count", low="1", high="99999")
_KEY = pattern(r"^[a-z0-9][a-z0-9\-]{0,60}$")


@remembered(512)
def _plain(name: str) -> str:
    return name.strip().replace(" ", "_").replace("-", "_").lower()


#: After so many problems reading ends: whoever mends a file reads far fewer, and each takes a
#: fifth of a millisecond to be worded.
ENOUGH = 2000


class Reader:
    """Reads nodes into values and keeps every problem it meets."""

    def __init__(self, units: str, name: str = "this text") -> None:
        self.units = units
        self._name = name
        self.problems: list[Problem] = []
        #: Keys of set-ups and steps, and numbers of steps, each with its path and where it stands.
        self.keys: list[tuple[str, Node, str]] = []
        self.numbers: list[tuple[str, Node, int]] = []

    def problem(self, node: Node, path: str, sentence: str) -> None:
        """Keep what is wrong with a node; raises DocumentError where there is so much that this is no job at all."""
        self.problems.append(Problem(node.line, path, sentence))
        if len(self.problems) >= ENOUGH:
            raise DocumentError(self._name, tuple(self.problems), whole=False)

    def mapping(self, node: Node | None, path: str) -> dict[str, Node]:
        """The fields of a mapping by their plain names; nothing for what is not one."""
        if node is None:
            return {}
        if node.fields is None:
            if node.text == "" and not node.comment:
                return {}
            self.problem(
                node, path, f"this is {node.what}; a group of fields belongs here, such as name: value"
            )
            return {}
        found: dict[str, Node] = {}
        for name, value in node.fields.items():
            if (other := found.setdefault(_plain(name), value)) is not value:
                where = f"{path}.{name}" if path else name
                self.problem(
                    value, where, f"this stands in line {other.line} already, spelled otherwise; take one out"
                )
        return found

    def items(self, node: Node | None, path: str) -> list[Node]:
        """The entries of a list; nothing for what is not one."""
        if node is None:
            return []
        if node.items is None:
            if node.text == "":
                return []
            self.problem(
                node, path, f"this is {node.what}; a list belongs here: begin each entry with a dash"
            )
            return []
        return node.items

    def unknown(self, node: Node, path: str, known: list[str]) -> None:
        """A problem for every field that does not belong here."""
        for name, value in (node.fields or {}).items():
            if _plain(name) not in known:
                near = nearest(_plain(name), known)
                hint = (
                    f"did you mean {name_in_file(near)}?"
                    if near
                    else f"known are {', '.join(map(name_in_file, known))}"
                )
                self.problem(value, f"{path}.{name}" if path else name, f"unknown field; {hint}")

    def entries(
        self, node: Node | None, path: str, entries: tuple[Entry, ...], also: tuple[str, ...] = ()
    ) -> dict[str, Any]:
        """The values of a group of entries; what cannot be read becomes a problem and is left out."""
        fields = self.mapping(node, path)
        asked = node is not None and (node.fields is not None or (node.text == "" and not node.comment))
        if node is not None:
            self.unknown(node, path, [entry.name for entry in entries] + list(also))
        values: dict[str, Any] = {}
        for entry in entries:
            if (field := fields.get(entry.name)) is None and (entry.optional or not asked):
                continue
            where = f"{path}.{name_in_file(entry.name)}" if path else name_in_file(entry.name)
            if field is None and node is not None:
                self.problem(node, where, f"this field is missing; {entry.wanted(self.units)}")
            elif field is not None and (value := self.entry(field, where, entry)) is not None:
                values[entry.name] = value
        return values

    def entry(self, node: Node, path: str, entry: Entry) -> Any:
        """One value, or None with a problem kept."""
        if node.items is not None and entry.asks == "places":
            return self.places(node, path, entry)
        if node.text is None:
            if node.items is not None:
                pieces = ", ".join(item.text or "" for item in node.items)
                self.problem(node, path, f'this is a list; if it is one value, put it in quotes: "{pieces}"')
            else:
                self.problem(node, path, f"this is {node.what}; {entry.wanted(self.units)}")
            return None
        if node.comment and (node.text == "" or entry.asks in ("cutter", "hole size")):
            self.problem(
                node,
                path,
                'an unquoted # begins a comment, and nothing is left of it; write it in quotes, such as "#7"',
            )
            return None
        try:
            return entry.read(node.text, self.units)
        except QuantityError as error:
            self.problem(node, path, str(error))
            return None

    def places(self, node: Node, path: str, entry: Entry) -> Places | None:
        """Places written as a list: each is `[x, y]`, a text `x, y`, or a pattern in words."""
        before = len(self.problems)
        items = node.items or []
        if len(items) == 2 and all(item.text is not None and "," not in item.text for item in items):
            items = [node]  # one place alone: at: [14, 12]
        found: list[Place | Pattern] = []
        for index, item in enumerate(items):
            where = f"{path}[{index}]"
            try:
                if item.items is None:
                    found.append(read_place(item.text or "", 0, self.units))
                    continue
                texts = [part.text for part in item.items]
                if len(texts) == 2 and None not in texts:
                    found.append(place_from(texts[0] or "", texts[1] or "", self.units))
                    continue
                more = len(texts) > 2
                hint = (
                    ' If a comma is a decimal mark, put the size in quotes: ["6,35 mm", 10 mm].'
                    if more
                    else ""
                )
                self.problem(item, where, f"a place has two sizes, x and y; here are {len(texts)}.{hint}")
            except QuantityError as error:
                self.problem(item, where, str(error))
        if len(self.problems) == before and not found:
            self.problem(node, path, f"no place is written here; {entry.wanted(self.units)}")
        return Places(tuple(found)) if len(self.problems) == before else None


def job_from(root: Node, name: str) -> Job:
    """A job from its nodes.

    Raises
    ------
    DocumentError
        With every problem of the file.
    """
    from jobsheet.storage.card_files import find_card

    units_node = (root.fields or {}).get("units")
    units = units_node.text if units_node and units_node.text in ("mm", "in") else "mm"
    reader = Reader(units, name)
    fields = reader.mapping(root, "")
    if root.fields is None:
        raise DocumentError(name, tuple(reader.problems) or (Problem(root.line, "", "the file is empty"),))
    sections = (
        "format", "part", "stock", "datums", "finished", "dismissed", "plan_revisions", "photographs", "set_ups",
    )  # fmt: skip
    values = reader.entries(root, "", layout.JOB, sections)
    part = reader.entries(fields.get("part"), "part", layout.PART)
    if "stock" not in fields:
        reader.problem(
            root, "stock", "the stock is missing; write stock: with length, width and height below it"
        )
    stock = stock_from(reader, fields.get("stock"))
    datums = _datums(reader, fields.get("datums"))
    finished = finished_from(reader, fields.get("finished"))
    dismissed = _dismissed(reader, fields.get("dismissed"))
    revisions = _listed(reader, fields.get("plan_revisions"), "plan revisions", layout.REVISION, Revision)
    photographs: tuple[Photograph, ...] = ()
    # Most jobs have none: a start does not load their reader.
    if (node := fields.get("photographs")) is not None:
        from jobsheet.storage.photos.photographs_read import photographs_from

        photographs = photographs_from(reader, node)
    set_ups = tuple(set_ups_from(reader, fields.get("set_ups")))
    if "machine" in values:
        try:
            find_card(values["machine"])
        except JobsheetError as error:
            reader.problem(fields["machine"], "machine", str(error))
    _unique(reader)
    if reader.problems or stock is None:
        raise DocumentError(name, tuple(sorted(reader.problems, key=lambda problem: problem.line or 0)))
    return Job(
        part=Part(**part),
        stock=stock,
        datums=datums,
        finished=finished,
        dismissed=dismissed,
        revisions=tuple(revisions),
        photographs=photographs,
        set_ups=set_ups,
        **values,
    )


def _listed(
    reader: Reader, node: Node | None, where: str, entries: tuple[Entry, ...], made: type
) -> list[Any]:
    """The entries of a list of small groups; one that misses what it must say is left out, and the reader keeps why."""
    found = []
    must = {entry.name for entry in entries if not entry.optional}
    for index, item in enumerate(reader.items(node, where)):
        values = reader.entries(item, f"{where}[{index}]", entries)
        if must <= values.keys():
            found.append(made(**values))
    return found


def _dismissed(reader: Reader, node: Node | None) -> tuple[Dismissed, ...]:
    """Remarks that were set aside, each with its reason."""
    found = []
    if node is not None and node.items is None:
        reader.problem(node, "dismissed", "a list belongs here, of rule, about, reason")
    for index, item in enumerate((node.items or ()) if node is not None else ()):
        values = reader.entries(item, f"dismissed[{index}]", layout.DISMISSED)
        if "rule" in values and "reason" in values:
            values["rule"] = RULES.get(values["rule"], values["rule"])
            found.append(Dismissed(**values))
    return tuple(found)


def _datums(reader: Reader, node: Node | None) -> tuple[tuple[str, str], ...]:
    datums = []
    if node is not None:
        reader.mapping(node, "datums")
    for letter, value in ((node.fields or {}) if node else {}).items():
        if value.text not in FACES:
            near = nearest(value.text or "", FACES)
            hint = f"did you mean {near}?" if near else f"write one of {', '.join(FACES)}"
            reader.problem(value, f"datums.{letter}", f"a datum lies on a face of the stock; {hint}")
            continue
        datums.append((letter, value.text or ""))
    return tuple(datums)


def set_ups_from(reader: Reader, node: Node | None) -> list[SetUp]:
    """The set-ups of a list, with their steps."""
    found = []
    for index, item in enumerate(reader.items(node, "set-ups")):
        path = f"set-ups[{index}]"
        fields = reader.mapping(item, path)
        if item.fields is None:
            continue
        values = reader.entries(item, path, layout.SET_UP, ("key", "number", "holding", "zero", "operations"))
        key = _key(reader, path, fields, f"set-up-{index + 1}")
        reader.keys.append((path, fields.get("key", item), key))
        number = _number(reader, path, fields, index + 1)
        _laying(reader, fields, values, path)
        made = SetUp(
            key=key,
            number=number,
            holding=_holding(reader, fields.get("holding"), f"{path}.holding"),
            zero=Zero(**reader.entries(fields.get("zero"), f"{path}.zero", layout.ZERO)),
            operations=tuple(steps_from(reader, fields.get("operations"), f"{path}.operations")),
            **values,
        )
        found.append(laid(made))
    return found


def _laying(reader: Reader, fields: dict[str, Node], values: dict[str, Any], path: str) -> None:
    """A problem for each face that cannot be where it is said to be; what nobody says follows the face that is up."""
    up = values.get("up", "top")
    for name, where in (("operator", "towards you"), ("fixed_jaw", "on the fixed jaw")):
        if (face := values.get(name)) is not None and face not in beside(up):
            sentence = f"the {up} face is up here, so the {face} face cannot be {where}; write {', '.join(beside(up))}"
            reader.problem(fields[name], f"{path}.{name_in_file(name)}", sentence)


def _holding(reader: Reader, node: Node | None, path: str) -> Holding:
    """What holds the work: its kind, and that kind's facts."""
    fields = reader.mapping(node, path)
    named = fields.get("kind")
    if node is None or not fields:
        return NOTHING
    if named is None or not named.text or named.text == NONE:
        said = reader.entries(node, path, (HOLDING_NOTE,), ("kind",))
        return Holding(**said) if said else NOTHING
    try:
        kind = holding_kind(named.text)
    except JobsheetError as error:
        reader.problem(named, f"{path}.kind", str(error))
        return NOTHING
    before = len(reader.problems)
    values = reader.entries(node, path, kind.entries, ("kind",))
    return kind.fields(**values) if len(reader.problems) == before else NOTHING


def steps_from(reader: Reader, node: Node | None, where: str) -> list[Operation]:
    """The steps of a list; one that cannot be read is left out, and the reader keeps why."""
    found = []
    for index, item in enumerate(reader.items(node, where)):
        path = f"{where}[{index}]"
        fields = reader.mapping(item, path)
        if item.fields is None:
            continue
        kind_node = fields.get("kind")
        if kind_node is None or not kind_node.text:
            reader.problem(
                item, f"{path}.kind", "the kind of operation is missing; write kind: drill, for example"
            )
            continue
        try:
            kind = kind_of(kind_node.text)
        except JobsheetError as error:
            reader.problem(kind_node, f"{path}.kind", str(error))
            continue
        before = len(reader.problems)
        step = tuple(entry.name for entry in layout.STEP)
        values = reader.entries(item, path, kind.entries, ("key", "number", "kind", *step))
        said = {
            name: reader.entry(fields[name], f"{path}.{name}", entry)
            for entry in layout.STEP
            if (name := entry.name) in fields
        }
        key = _key(reader, path, fields, f"{kind.name}-{item.line}")
        number = _number(reader, path, fields)
        if len(reader.problems) == before:
            reader.keys.append((path, fields.get("key", item), key))
            reader.numbers.append((path, fields.get("number", item), number))
            found.append(
                Operation(key=key, number=number, kind=kind.name, fields=kind.fields(**values), **said)
            )
    return found


def _key(reader: Reader, path: str, fields: dict[str, Node], otherwise: str) -> str:
    """The key; a file written by hand may leave it out, and gets one that is made from its place."""
    node = fields.get("key")
    if node is None:
        return otherwise
    if node.text is None or not _KEY.match(node.text):
        reader.problem(
            node, f"{path}.key", "a key is a short word of small letters, digits and hyphens, such as drill-2"
        )
        return otherwise
    return node.text


def _number(reader: Reader, path: str, fields: dict[str, Node], otherwise: int = 0) -> int:
    node = fields.get("number")
    if node is None:
        return otherwise or max((last for *_, last in reader.numbers), default=0) // 10 * 10 + 10
    value = reader.entry(node, f"{path}.number", _NUMBER)
    return value if isinstance(value, int) else otherwise


def _unique(reader: Reader) -> None:
    """Keys must be unique: remarks, trials and undo hang on them. Numbers too: paper and file must agree."""
    first: dict[str | int, Node] = {}
    for name, given in (("key", reader.keys), ("number", reader.numbers)):
        for path, node, value in given:
            if (other := first.setdefault(value, node)) is not node:
                again = (
                    f"the {name} {value} stands twice, first in line {other.line}; give one another {name}"
                )
                reader.problem(node, f"{path}.{name}", again)


def read_job(path: Path | str) -> Job:
    """The job in a file, or inside a PDF that was printed from it.

    Raises
    ------
    DocumentError
        With every problem of the file, each with its line.
    """
    path = Path(path)
    return job_from_text(_text_of(path), path.name)


def _text_of(path: Path) -> str:
    """The job's text: of the file itself, or of the attachment of its sheets."""
    from jobsheet.storage import pdf_jobs

    return pdf_jobs.job_text(path) if pdf_jobs.is_pdf(path) else read_file(path)


def job_from_text(text: str, name: str) -> Job:
    """The job in a text, such as the one that a sheet carries inside; older formats are brought up to date."""
    return job_from(versions.up_to_date(parse(text, name), name), name)


def job_source(path: Path) -> bytes:
    """The job's file byte for byte, to go into its sheets: of printed sheets the one that lies inside, never the paper."""
    from jobsheet.storage import pdf_jobs

    return pdf_jobs.job_text(path).encode() if pdf_jobs.is_pdf(path) else path.read_bytes()


def job_digest(path: Path | str) -> str | None:
    """The digest of the file as it is, to know later whether it was changed outside."""
    return file_digest(Path(path))


def blank_job(machine: str, material: str = "S235") -> Job:
    """A new job: one set-up, nothing in it yet."""
    from jobsheet.storage.card_files import card_digest, find_card

    sizes: dict[str, Any] = {
        name: Quantity(value, text)
        for name, value, text in (("length", 0.08, "80"), ("width", 0.05, "50"), ("height", 0.012, "12"))
    }
    card = find_card(machine)
    return Job(
        material=material, stock=Stock(**sizes), machine=card.name, card_hash=card_digest(card.name),
        set_ups=(SetUp(key="set-up-1", number=1, holding=own_vice(card)),),
    )  # fmt: skip
