"""One cut as its figures say it, and what is around it: what the tests of single limits ask a limit with."""

from __future__ import annotations

from types import SimpleNamespace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.storage.card_files import find_card

BELTS, STEPLESS = find_card("bench-mill-b-1"), find_card("bench-mill-b-2")


def figures(edge=None, missing=None, **values):
    """Figures by name [SI]; what is None was not reckoned."""
    made = tuple(Figure(name, value, "", "") for name, value in values.items() if value is not None)
    return Figures(made, edge=edge, missing_speed=missing)


def around(machine=BELTS, metal="S235", **more):
    return Setting(machine=machine, material=find(metal), **more)


def step(cutter, **more):
    return SimpleNamespace(cutter=read_cutter(cutter, "mm"), **more)


def deep(value):
    return Quantity(value, "typed")
