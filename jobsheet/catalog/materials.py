"""Work materials by any of their names; a person's own files join or refine a row."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from jobsheet.catalog.data import load
from jobsheet.errors import NoSuchEntry
from jobsheet.model.material import Material, Sourced
from jobsheet.paths import resources
from jobsheet.units.grammar import nearest, read

#: The order in which the files are read until a name is found: steel is what most jobs are of.
GROUPS = ("steel", "stainless", "iron", "aluminium", "copper", "light", "heat-resisting", "plastic")


def _sourced(row: Any, measures: str | None) -> Sourced:
    """A constant as a file has it: `{value: 1450 MPa, source: …, trust: …}`."""
    value = read(row["value"], measures) if measures else float(row["value"])
    return Sourced(value, row["source"], row["trust"])


def material_from(name: str, row: Any, family: str) -> Material:
    """One row of a file as a material. Raises KeyError or QuantityError where the file is wrong."""
    speeds = row.get("speeds", {})
    return Material(
        name=name,
        title=row.get("title", name),
        group=row["iso"],
        family=family,
        kc11=_sourced(row["kc11"], "pressure"),
        mc=_sourced(row["mc"], None),
        kd_torque=_sourced(row["kd torque"] if "kd torque" in row else row["kd"], None),
        kd_thrust=_sourced(row["kd thrust"] if "kd thrust" in row else row["kd"], None),
        kp=_sourced(row["kp"], None) if "kp" in row else None,
        tap_kc=_sourced(row["tap kc"], "pressure") if "tap kc" in row else None,
        tap_class=row.get("tap class", "steel"),
        speeds=tuple((work, read(value["value"], "cutting speed")) for work, value in speeds.items()),
        also=tuple(row.get("also", ())),
        hazards=tuple(row.get("hazards", ())),
        chips=row.get("chips", ""),
        work_hardens=row.get("work hardens") == "yes",
        dry_by_nature=row.get("dry by nature") == "yes",
        note=row.get("note", ""),
    )


@cache
def group(name: str) -> tuple[Material, ...]:
    """The materials of one shipped file."""
    path: Path = resources() / "materials" / f"{name}.yaml"
    if not path.is_file():
        return ()
    data = load(path)
    return tuple(
        material_from(row_name, row, data.get("family", name)) for row_name, row in data["materials"].items()
    )


@cache
def find(name: str) -> Material:
    """The material of that name, or of one of its other names.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is.
    """
    wanted = name.strip().casefold()
    for part in GROUPS:
        for material in group(part):
            if wanted in (material.name.casefold(), *(other.casefold() for other in material.also)):
                return material
    near = nearest(name, names())
    raise NoSuchEntry(
        f"No material is called “{name}”."
        + (f" Did you mean {near}?" if near else " The list is in the field's menu.")
    )


def names() -> tuple[str, ...]:
    """Every name by which a material can be found, the row's own name before its others."""
    return tuple(
        name for part in GROUPS for material in group(part) for name in (material.name, *material.also)
    )


def own_names() -> tuple[str, ...]:
    """The rows' own names only, for a menu."""
    return tuple(material.name for part in GROUPS for material in group(part))
