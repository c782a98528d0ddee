"""One step from texts, and the setting of a machine and a metal around it."""

from __future__ import annotations

from jobsheet.catalog.metals.materials import find
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.storage.card_files import find_card


def step(kind: str, units: str = "mm", **texts: str) -> Operation:
    found = kind_of(kind)
    return Operation(
        key="step", number=10, kind=kind, fields=fields_from(found.fields, found.entries, texts, units)
    )


def around(machine: str, material: str = "S235", **more) -> Setting:
    values = {"extent": (0.08, 0.05, 0.02), "thickness": 0.02, **more}
    return Setting(machine=find_card(machine), material=find(material), **values)
