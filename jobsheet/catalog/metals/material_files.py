"""The shipped files of materials, row by row, so that finding one name reads one row.

A window paints before a material is known, so the way to `S235` must be short: a file is cut into its rows as
text, and only a row whose text holds the wanted name is read as YAML.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading import data  # by its module: a start stands something in for `parsed`
from jobsheet.model.material import Material, Sourced
from jobsheet.paths import resources
from jobsheet.remembered import remembered
from jobsheet.units.grammar import read, read_number
from jobsheet.units.lazily import pattern

#: The order in which the files are searched until a name is found: steel is what most jobs are of.
GROUPS = ("steel", "stainless", "iron", "aluminium", "copper", "light", "heat-resisting", "plastic")
_ROW = pattern(r"^ {2}(?=[^\s#])", re.MULTILINE)
_ROWS_BEGIN = "\nmaterials:\n"


class _File(Struct, frozen=True):
    """One file: what stands above its rows, and the rows as text, plain and folded for searching."""

    head: dict[str, Any]
    rows: tuple[str, ...]
    folded: tuple[str, ...]


@cache
def _file(group: str) -> _File:
    text = (resources() / "materials" / f"{group}.yaml").read_text(encoding="utf-8")
    head, _, body = text.partition(_ROWS_BEGIN)
    rows = tuple(f"  {piece}" for piece in _ROW.split(body) if piece.strip())
    return _File(data.parsed(head) or {}, rows, tuple(row.casefold() for row in rows))


@cache
def _row(group: str, index: int) -> tuple[str, dict[str, Any]]:
    """A row's name and its fields, with the file's family where the row has none of its own."""
    held = _file(group)
    ((name, fields),) = data.parsed(held.rows[index]).items()
    return name, {"family": held.head.get("family", ""), **fields}


def all_rows(group: str) -> tuple[tuple[str, dict[str, Any]], ...]:
    """Every row of a file: name and fields, all scalars text."""
    return tuple(_row(group, index) for index in range(len(_file(group).rows)))


@remembered(512)
def row_called(name: str) -> tuple[str, dict[str, Any]] | None:
    """The shipped row of that name or other name, whatever the case of its letters; None if there is none."""
    wanted = name.strip().casefold()
    if not wanted:
        return None
    for group in GROUPS:
        for index, text in enumerate(_file(group).folded):
            if wanted in text:
                found, fields = _row(group, index)
                if wanted in (other.casefold() for other in (found, *fields.get("also", ()))):
                    return found, fields
    return None


def conditions_of(name: str) -> tuple[str, ...]:
    """The rows that a name can mean which does not say its condition: `4140`. Empty for any other name."""
    wanted = name.strip().casefold()
    for group in GROUPS:
        for open_name, rows in _file(group).head.get("conditions", {}).items():
            if open_name.casefold() == wanted:
                return tuple(rows)
    return ()


def _sourced(given: Any, measures: str | None) -> Sourced:
    """A constant as a file has it: `{value: 1450 MPa, source: …, trust: …}`."""
    # A bare number is read as the reader of one's own files reads it: what
    # passed there must be a number here.
    value = read(given["value"], measures) if measures else read_number(given["value"])[0]
    return Sourced(value, given["source"], given["trust"])


def material_from(name: str, row: Any, *, own: bool = False) -> Material:
    """One row as a material. Raises KeyError, ValueError or QuantityError where the row is wrong."""
    speeds = tuple((work, _sourced(given, "cutting speed")) for work, given in row.get("speeds", {}).items())
    return Material(
        name=name,
        title=row.get("title", name),
        group=row["iso"],
        family=row["family"],
        kc11=_sourced(row["kc11"], "pressure"),
        mc=_sourced(row["mc"], None),
        kd_torque=_sourced(row.get("kd torque") or row["kd"], None),
        kd_thrust=_sourced(row.get("kd thrust") or row["kd"], None),
        k_second=_sourced(row["k second"], None) if "k second" in row else None,
        kp=_sourced(row["kp"], None) if "kp" in row else None,
        tap_kc=_sourced(row["tap kc"], "pressure") if "tap kc" in row else None,
        tap_class=row.get("tap class", "steel"),
        feed_class=row.get("feed class", ""),
        hardness=row.get("hardness", ""),
        speeds=tuple((work, sourced.value) for work, sourced in speeds),
        speed_sources=speeds,
        fastest=tuple(
            (work, _sourced(given, "cutting speed")) for work, given in row.get("fastest", {}).items()
        ),
        also=tuple(row.get("also", ())),
        hazards=tuple(row.get("hazards", ())),
        chips=row.get("chips", ""),
        work_hardens=row.get("work hardens") == "yes",
        dry_by_nature=row.get("dry by nature") == "yes",
        note=row.get("note", ""),
        own=own,
    )


@cache
def shipped_material(name: str) -> Material | None:
    """The shipped material of exactly that row name, always the same object."""
    found = row_called(name)
    return material_from(*found) if found and found[0] == name else None
