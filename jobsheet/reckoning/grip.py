"""What holds the work in a set-up: force, how high the work stands, what lies on the
table. Each kind of holding says it.
"""

from __future__ import annotations

from jobsheet.catalog.metals.densities import density
from jobsheet.holdings.all_holdings import kind_of
from jobsheet.model.held_work import Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.model.stock import Stock
from jobsheet.stock.all_shapes import volume_of


def grip_of(holding: Holding, machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """The grip on the work, or None where too little is known of it."""
    kind = kind_of(holding)
    return kind.grip(holding, machine, material, shop) if kind is not None else None


def top_of(holding: Holding, machine: Machine, high: float) -> float | None:
    """How high the top of work of that height stands over the table [m]."""
    kind = kind_of(holding)
    return kind.top(holding, machine, high) if kind is not None else None


def load_of(stock: Stock, holding: Holding, machine: Machine, material: Material) -> float | None:
    """What lies on the table: the stock and what holds it [kg]."""
    heavy = density(material.family)
    if heavy is None:
        return None
    kind = kind_of(holding)
    mass = volume_of(stock) * heavy
    return mass + (kind.mass(holding, machine) if kind is not None else 0.0)
