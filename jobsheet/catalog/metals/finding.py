"""Materials by what is typed: a part of a trade name or of a standard name, or a hardness."""

from __future__ import annotations

import re
from functools import lru_cache

from msgspec import Struct

from jobsheet.catalog.metals.materials import all_materials
from jobsheet.model.material import Material
from jobsheet.units.lazily import pattern

_HARDNESS = pattern(r"^(\d{2,3})(hb|hbw)?$")
#: The unit of a hardness belongs to its number.
_APART = pattern(r"(?<=\d)\s+(hbw?)\b")
_RANGE = pattern(r"(\d+)(?:\s*to\s*(\d+))?\s*HB")


class MaterialFound(Struct, frozen=True, kw_only=True):
    """One material, with the name of it that was typed where that is not its title."""

    material: Material
    name: str = ""


def materials_found(typed: str) -> tuple[MaterialFound, ...]:
    """Every material that all words fit, the best first; all of them where nothing is typed.

    A title or name that begins with what was typed comes first, then one with a word that does, then any
    part; a number is a hardness too, after all names.
    """
    words = tuple(_APART.sub(r"\1", typed.casefold()).split())
    whole = " ".join(typed.casefold().split())
    ranked: list[tuple[int, MaterialFound]] = []
    for material, names, hardness in _rows(all_materials()):
        rank, name = _rank(names, hardness, words, whole)
        if rank is not None:
            ranked.append((rank, MaterialFound(material=material, name=name)))
    return tuple(material_found for _, material_found in sorted(ranked, key=lambda one: one[0]))


@lru_cache(maxsize=2)
def _rows(
    materials: tuple[Material, ...],
) -> tuple[tuple[Material, tuple[str, ...], tuple[int, int]], ...]:
    """Every material with all its names, and its hardness."""
    return tuple(
        (material, (material.title, material.name, *material.also), _hardness(material.hardness))
        for material in materials
    )


def _hardness(text: str) -> tuple[int, int]:
    match = _RANGE.search(text)
    return (int(match[1]), int(match[2] or match[1])) if match else (0, 0)


def _rank(
    names: tuple[str, ...], hardness: tuple[int, int], words: tuple[str, ...], whole: str
) -> tuple[int | None, str]:
    """How well it fits, nought the best, None not at all; and which name of it does."""
    if not words:
        return 0, ""
    folded = [name.casefold() for name in names]
    for name, text in zip(names, folded, strict=True):
        if text.startswith(whole):
            return 0, name
    for name, text in zip(names, folded, strict=True):
        parts = re.split(r"[\s,()]+", text)
        if all(any(part.startswith(word) for part in parts) for word in words):
            return 1, name
    for name, text in zip(names, folded, strict=True):
        if len(whole) > 1 and whole in text:
            return 2, name
    # Words of several names: `mild 1.0038`.
    if all(any(word in text for text in folded) for word in words):
        return 3, ""
    number = _HARDNESS.match(words[0]) if len(words) == 1 else None
    if number and hardness[0] <= int(number[1]) <= hardness[1]:
        return 4, ""
    return None, ""
