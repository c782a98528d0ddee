"""What the panel of materials and the field of the job's material list: trade
name, standard names, hardness, chips.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.catalog.metals.finding import MaterialFound, materials_found
from jobsheet.gui.choosing.listed import Listed, hit_in, words_of
from jobsheet.model.material import Material

translate = QCoreApplication.translate
#: So many letters of standard names stand under the trade name.
LETTERS = 38
#: Dangers of the chips that a stop note or the sheet speaks of, in a word each.
_DANGER = {
    "magnesium": "chips burn: stop note",
    "titanium": "chips can burn",
    "beryllium": "dust is poison: stop note",
    "lead": "holds lead: wash hands",
}


def materials_listed(typed: str, planned: str = "") -> tuple[Listed, ...]:
    """The materials that are meant, the best first."""
    words = words_of(typed)
    return tuple(_listed(material_found, words, planned) for material_found in materials_found(typed))


def _listed(material_found: MaterialFound, words: tuple[str, ...], planned: str) -> Listed:
    material = material_found.material
    names = tuple(dict.fromkeys(name for name in (material.name, *material.also) if name != material.title))
    under = _names(names, material_found.name)
    danger = next((_DANGER[hazard] for hazard in material.hazards if hazard in _DANGER), "")
    whole = (" ".join(words), *words)
    return Listed(
        key=material.name,
        title=material.title,
        under=under,
        fact=_fact(material, danger),
        beside=_beside(material, planned),
        sign=("severity-hazard", "vermmark") if danger else ("", ""),
        hit=hit_in(material.title, whole),
        under_hit=hit_in(under, whole),
    )


def _names(names: tuple[str, ...], typed: str) -> str:
    """As many as there is room for, whole; the one that was typed is among them."""
    kept, room = [], LETTERS - (len(typed) if typed in names else 0)
    for name in names:
        if name == typed:
            kept.append(name)
        elif len(name) + 2 <= room:
            kept.append(name)
            room -= len(name) + 2
    return ", ".join(kept)


def _fact(material: Material, danger: str) -> str:
    chips = (
        translate("Choosing", "{long} chips").format(long=material.chips)
        if material.chips and not danger
        else ""
    )
    dry = translate("Choosing", "dry") if material.dry_by_nature else ""
    return " · ".join(
        part for part in (material.hardness, danger, ", ".join(w for w in (chips, dry) if w)) if part
    )


def _beside(material: Material, planned: str) -> str:
    if planned and planned.casefold() in (name.casefold() for name in (material.name, *material.also)):
        return translate("Choosing", "planned")
    return translate("Choosing", "own") if material.own else ""
