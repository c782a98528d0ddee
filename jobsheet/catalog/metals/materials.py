"""Work materials by any of their names; a person's own files join or refine a row.

What reads those files is fetched only where there is a folder of them: the window waits for the first name.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from jobsheet.catalog.metals.material_files import (
    GROUPS,
    all_rows,
    conditions_of,
    row_called,
    shipped_material,
)
from jobsheet.errors import NoSuchEntry
from jobsheet.model.material import Material
from jobsheet.paths import own_folder
from jobsheet.units.grammar import nearest

#: As titles are spelled.
_SPELLED = {"aluminum": "aluminium", "gray": "grey"}
#: So many are named where a word can mean several.
MEANT = 5

__all__ = ["GROUPS", "all_materials", "find", "group", "names", "own_names", "refined"]


def _own() -> Mapping[str, Material]:
    """The person's own materials by every folded name; one look where there is no folder of them."""
    if not (own_folder() / "materials").is_dir():
        return {}
    from jobsheet.catalog.metals.own_materials import own_materials

    return own_materials().by_name


def refined() -> dict[str, tuple[str, ...]]:
    """The shipped rows that a person's files refine, each with the hazards it keeps against the file.

    A row whose file says nothing of hazards, or names all of them, has nothing to keep: an empty tuple.

    Raises
    ------
    DocumentError
        If a file of the person's own materials cannot be used.
    """
    if not (own_folder() / "materials").is_dir():
        return {}
    from jobsheet.catalog.metals.own_materials import own_materials

    return dict(own_materials().kept)


def group(name: str) -> tuple[Material, ...]:
    """The materials of one shipped file, as they are shipped."""
    return tuple(
        material for row_name, _ in all_rows(name) if (material := shipped_material(row_name)) is not None
    )


def find(name: str) -> Material:
    """The material of that name, or of one of its other names.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is, or the conditions to choose from.
    DocumentError
        If a file of the person's own materials cannot be used.
    """
    own = _own().get(name.strip().casefold())
    if own is not None:
        return own
    row = row_called(name)
    material = shipped_material(row[0]) if row else None
    if material is not None:
        return material
    if conditions := conditions_of(name):
        raise NoSuchEntry(f"“{name}” does not say its condition; write {' or '.join(conditions)}.")
    raise NoSuchEntry(f"No material is called “{name}”. {_instead(name)}")


def _instead(name: str) -> str:
    """What to write instead: what a word such as steel can mean, else the nearest name, else some names."""
    if meant := [material.name for material in _titles_with(name)]:
        more = ", or another of them" if len(meant) > MEANT else ""
        return f"Write {'which: ' if len(meant) > 1 else ''}{', '.join(meant[:MEANT])}{more}."
    near = nearest(name, names())
    return (
        f"Did you mean {near}?" if near else "Write a trade or standard name, such as S235, 304 or 6082-T6."
    )


def _titles_with(typed: str) -> tuple[Material, ...]:
    """The materials whose title has every word typed as a word of its own, spelled either way: `mild steel`, `aluminum`."""
    words = {_SPELLED.get(word, word) for word in typed.casefold().split()}
    return tuple(
        material
        for material in all_materials()
        if words and words <= set(re.split(r"[\s,()-]+", material.title.casefold()))
    )


def all_materials() -> tuple[Material, ...]:
    """Every material in the order of the files, refined where a file refines it, one's own rows last."""
    own = {material.name: material for material in _own().values()}
    shipped = tuple(material for part in GROUPS for material in group(part))
    kept = tuple(own.pop(material.name, material) for material in shipped)
    return (*kept, *own.values())


def names() -> tuple[str, ...]:
    """Every name by which a material can be found, the row's own name before its others."""
    return tuple(name for material in all_materials() for name in (material.name, *material.also))


def own_names() -> tuple[str, ...]:
    """The rows' own names only, for a menu."""
    return tuple(material.name for material in all_materials())
