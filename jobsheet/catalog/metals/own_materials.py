"""A person's own materials: `materials/*.yaml` in their own folder join the shipped rows or refine them.

A row whose name the catalogue knows refines that row: what it does not give stays as it was, and a hazard
that the row had is kept whatever the file says. Any other row joins, and must give what every material needs.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.catalog.metals.material_files import conditions_of, material_from, row_called
from jobsheet.catalog.reading.own_files import OwnFile, Stamp, Way, read_own, stamp
from jobsheet.errors import DocumentError, Problem, QuantityError
from jobsheet.model.material import Material
from jobsheet.paths import own_folder
from jobsheet.units.grammar import nearest, read, read_number

HAZARDS = (
    "magnesium", "titanium", "beryllium", "lead", "iron dust", "graphite", "glass", "phenolic", "plated",
    "fluoroplastic", "unknown",
)  # fmt: skip
FAMILIES = (
    "steel", "stainless", "iron", "aluminium", "copper", "magnesium", "titanium", "nickel", "plastic", "other",
)  # fmt: skip
FEED_CLASSES = (
    "soft steel", "alloy steel", "hard steel", "stainless", "iron", "aluminium", "brass", "copper", "titanium",
    "nickel", "plastic",
)  # fmt: skip
WORKS = ("mill", "carbide mill", "drill", "carbide drill", "ream", "carbide ream", "tap")
_CHOICES: dict[str, tuple[str, ...]] = {
    "family": FAMILIES,
    "iso": ("P", "M", "K", "N", "S", "H", "plastic"),
    "feed class": FEED_CLASSES,
    "tap class": ("steel", "iron and aluminium", "brass"),
    "chips": ("long", "short"),
    "work hardens": ("yes", "no"),
    "dry by nature": ("yes", "no"),
}
#: A family that is a hazard of its own, whether or not the file says so.
_IMPLIED = {"magnesium": "magnesium", "titanium": "titanium", "iron": "iron dust"}
_TEXTS = ("title", "hardness", "note")
_LISTS = ("also", "hazards")
#: What a constant is measured in, and between which values a slip of the pen is not likely (estimate), in SI.
_CONSTANTS: dict[str, tuple[str | None, float, float]] = {
    "kc11": ("pressure", 10e6, 10e9),
    "mc": (None, 0.0, 0.9),
    "kd": (None, 100, 200_000),
    "kd torque": (None, 100, 200_000),
    "kd thrust": (None, 100, 200_000),
    "k second": (None, 0.05, 20),
    "kp": (None, 0.01, 20),
    "tap kc": ("pressure", 10e6, 20e9),
}
_SPEED = ("cutting speed", 0.2 / 60, 2000 / 60)
#: Speeds to start from, and the top of what is published; by kind of work.
_SPEEDS = ("speeds", "fastest")
_FIELDS = (*_CHOICES, *_TEXTS, *_LISTS, *_CONSTANTS, *_SPEEDS)


class Own(Struct, frozen=True):
    """What a person's files made: every folded name to its material, the refined rows, and what is wrong.

    kept holds, for each refined row, the hazards that the file left out and that stayed.
    """

    by_name: Mapping[str, Material]
    kept: Mapping[str, tuple[str, ...]]
    problems: tuple[tuple[str, tuple[Problem, ...]], ...]


_NOTHING = Own({}, {}, ())


def own_materials() -> Own:
    """The person's own materials as their files are now.

    Raises
    ------
    DocumentError
        With the file and everything that is wrong in it: a row that was meant to count must not be lost in
        silence.
    """
    folder = own_folder() / "materials"
    seen = stamp(folder)
    if not seen:
        return _NOTHING
    own = _made(folder, seen)
    for name, problems in own.problems:
        raise DocumentError(name, problems)
    return own


@lru_cache(maxsize=4)
def _made(folder: Path, seen: Stamp) -> Own:
    """All files of the folder in the order of their names; remembered until one of them changes."""
    maker = _Maker()
    for name, _, _ in seen:
        try:
            maker.take(read_own(folder / name))
        except DocumentError as error:
            maker.problems.append((error.name, error.problems))
    return maker.made()


class _Maker:
    def __init__(self) -> None:
        self.problems: list[tuple[str, tuple[Problem, ...]]] = []
        self._rows: dict[str, dict[str, Any]] = {}
        self._kept: dict[str, tuple[str, ...]] = {}
        self._names: dict[str, str] = {}

    def take(self, file: OwnFile) -> None:
        """Add one file's rows, or its problems."""
        problems = list(_wrong_file(file))
        if not problems:
            for name, fields in file.data["materials"].items():
                problems.extend(self._take_row(file, name, fields))
        if problems:
            self.problems.append((file.name, tuple(problems)))

    def _take_row(self, file: OwnFile, name: str, fields: Any) -> Iterator[Problem]:
        way = ("materials", name)
        wrong = list(_wrong_row(file, way, fields))
        yield from wrong
        if wrong:
            return
        own = _plain_row(fields)
        base_name, base = self._base(name)
        if base is None:
            own.setdefault("family", file.data.get("family", ""))
            lacks = [need for need in ("iso", "kc11", "mc") if need not in own]
            if "kd" not in own and not ("kd torque" in own and "kd thrust" in own):
                lacks.append("kd")
            if lacks:
                rows = " or ".join(conditions_of(name))
                hint = f"; to refine a row write {rows}" if rows else ""
                yield file.problem(way, f"a material of its own needs {', '.join(lacks)} too{hint}")
                return
        elif "hazards" in own:
            left_out = tuple(hazard for hazard in base.get("hazards", ()) if hazard not in own["hazards"])
            self._kept[base_name] = tuple(dict.fromkeys((*self._kept.get(base_name, ()), *left_out)))
        else:
            self._kept.setdefault(base_name, ())
        merged = _merged(base or {}, own)
        for other in (base_name, *merged.get("also", ())):
            if clash := self._other_owner(other, base_name):
                yield file.problem((*way, "also"), f"“{other}” is already a name of {clash}")
                return
        self._rows[base_name] = merged
        self._names.update({other.casefold(): base_name for other in (base_name, *merged.get("also", ()))})

    def _base(self, name: str) -> tuple[str, dict[str, Any] | None]:
        """The row that this name refines, one's own or shipped; the name itself and None where it joins."""
        if own := self._names.get(name.strip().casefold()):
            return own, self._rows[own]
        found = row_called(name)
        return found or (name.strip(), None)

    def _other_owner(self, name: str, mine: str) -> str:
        """Which other row already has that name; empty where none has."""
        own = self._names.get(name.casefold())
        if own and own != mine:
            return own
        found = row_called(name)
        return found[0] if found and found[0] != mine else ""

    def made(self) -> Own:
        """The materials, with every name that finds one."""
        rows = {name: material_from(name, fields, own=True) for name, fields in self._rows.items()}
        return Own(
            {folded: rows[name] for folded, name in self._names.items()},
            {name: kept for name, kept in self._kept.items() if row_called(name)},
            tuple(self.problems),
        )


def _merged(base: Mapping[str, Any], own: Mapping[str, Any]) -> dict[str, Any]:
    """A row with what a file says of it; names and hazards are added, never taken away."""
    row = {**base, **own}
    if "kd" in own:
        for half in ("kd torque", "kd thrust"):
            if half not in own:
                row.pop(half, None)
    for name in _LISTS:
        row[name] = list(dict.fromkeys((*base.get(name, ()), *own.get(name, ()))))
    row["speeds"] = {**base.get("speeds", {}), **own.get("speeds", {})}
    ends = {
        work: given for work, given in base.get("fastest", {}).items() if work not in own.get("speeds", {})
    }
    row["fastest"] = {
        **ends,
        **own.get("fastest", {}),
    }  # another start speed than the shipped one: its end does not hold
    implied = _IMPLIED.get(row["family"])
    if implied and implied not in row["hazards"]:
        row["hazards"].append(implied)
    return row


def _plain_row(fields: Mapping[str, Any]) -> dict[str, Any]:
    """A row as shipped files have it: every constant with source and trust, every list a list."""
    row: dict[str, Any] = {}
    for name, value in fields.items():
        if name in _CONSTANTS:
            row[name] = _whole(value)
        elif name in _SPEEDS:
            row[name] = {work: _whole(speed) for work, speed in value.items()}
        elif name in _LISTS:
            row[name] = [value] if isinstance(value, str) else list(value)
        else:
            row[name] = value
    return row


def _whole(given: Any) -> dict[str, str]:
    """A constant with its source: what is written without one is the person's own."""
    if isinstance(given, str):
        given = {"value": given}
    return {"source": "own file", "trust": "own", **given}


def _wrong_file(file: OwnFile) -> Iterator[Problem]:
    """What is wrong with a file before its rows are looked at."""
    if not isinstance(file.data, dict):
        yield file.problem((), "write materials: and the rows below it")
        return
    for name in file.data:
        if name not in ("family", "materials"):
            yield file.problem((name,), f"“{name}” is not known here; write family or materials")
    if not isinstance(file.data.get("materials"), dict):
        yield file.problem(("materials",), "write materials: and the rows below it, each with its name")
    if "family" in file.data:
        yield from _wrong_choice(file, ("family",), file.data["family"], FAMILIES)


def _wrong_row(file: OwnFile, way: Way, fields: object) -> Iterator[Problem]:
    """What is wrong with the fields of one row."""
    if not way[-1].strip() or not isinstance(fields, dict):
        yield file.problem(way, "write the material's name, and its fields below it")
        return
    for name, value in fields.items():
        here = (*way, name)
        if name in _CHOICES:
            yield from _wrong_choice(file, here, value, _CHOICES[name])
        elif name in _CONSTANTS:
            yield from _wrong_constant(file, here, value, *_CONSTANTS[name])
        elif name in _SPEEDS:
            yield from _wrong_speeds(file, here, value)
        elif name in _LISTS:
            yield from _wrong_list(file, here, value, HAZARDS if name == "hazards" else None)
        elif name in _TEXTS:
            if not isinstance(value, str):
                yield file.problem(here, "write one line of text")
        else:
            near = nearest(name, _FIELDS)
            hint = f"did you mean {near}?" if near else f"known are {', '.join(_FIELDS)}"
            yield file.problem(here, f"“{name}” is not known here; {hint}")


def _wrong_choice(file: OwnFile, way: Way, value: object, choices: tuple[str, ...]) -> Iterator[Problem]:
    if not isinstance(value, str) or value not in choices:
        near = nearest(value, choices) if isinstance(value, str) else None
        hint = f"did you mean {near}?" if near else f"write {', '.join(choices[:-1])} or {choices[-1]}"
        yield file.problem(way, f"“{value}” is not one of them; {hint}")


def _wrong_list(file: OwnFile, way: Way, value: object, choices: tuple[str, ...] | None) -> Iterator[Problem]:
    items = [value] if isinstance(value, str) else value
    if not isinstance(items, list) or not all(isinstance(item, str) and item.strip() for item in items):
        yield file.problem(way, "write a list, such as [lead, iron dust]")
        return
    for item in items if choices else ():
        yield from _wrong_choice(file, way, item, choices or ())


def _wrong_speeds(file: OwnFile, way: Way, value: object) -> Iterator[Problem]:
    if not isinstance(value, dict):
        yield file.problem(way, "write one line a kind of work, such as mill: 30 m/min")
        return
    for work, speed in value.items():
        if work in WORKS:
            yield from _wrong_constant(file, (*way, work), speed, *_SPEED)
        else:
            yield from _wrong_choice(file, (*way, work), work, WORKS)


def _wrong_constant(
    file: OwnFile, way: Way, given: object, measures: str | None, low: float, high: float
) -> Iterator[Problem]:
    """Whether a constant can be read and is of a likely size."""
    fields = {"value": given} if isinstance(given, str) else given
    if (
        not isinstance(fields, dict)
        or "value" not in fields
        or not set(fields) <= {"value", "source", "trust"}
    ):
        yield file.problem(way, "write {value: …, source: …, trust: …} or the value alone")
        return
    if not all(isinstance(part, str) for part in fields.values()):
        yield file.problem(way, "value, source and trust are each one line of text")
        return
    try:
        value = read(fields["value"], measures) if measures else _bare(fields["value"])
    except QuantityError as error:
        yield file.problem(way, str(error))
        return
    if not (math.isfinite(value) and low <= value <= high):
        yield file.problem(way, f"“{fields['value']}” is not a likely size; look for a slip of the pen")


def _bare(text: str) -> float:
    """A number without a unit."""
    value, rest = read_number(text)
    if rest.strip():
        raise QuantityError(f"“{text}” must be a number without a unit.")
    return value
