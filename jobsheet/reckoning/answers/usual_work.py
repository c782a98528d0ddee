"""The usual piece of work that a machine is asked about: a block in its own vice, tightened as usual."""

from __future__ import annotations

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.holdings.placed import own_vice
from jobsheet.model.machine import Machine
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.reckoning.grip import grip_of
from jobsheet.reckoning.taught import proof_of
from jobsheet.storage.shop_file import workshop

#: How large it is: along, across, up [m].
_WORK = (0.08, 0.05, 0.04)


def setting_of(
    machine: Machine, material: str, *, units: str = "mm", fluid: str = "brushed", shop: Shop | None = None
) -> Setting:
    """A usual piece of that metal in the machine's own vice, tightened as usual.

    Raises
    ------
    NoSuchEntry
        If there is no such material.
    """
    found, numbers = find_material(material), shop or workshop()
    holding = own_vice(machine)
    return Setting(
        machine=machine, material=found, shop=numbers, units=units, fluid=fluid, extent=_WORK, thickness=_WORK[2],
        grip=grip_of(holding, machine, found, numbers), proof=proof_of(machine.name, numbers),
    )  # fmt: skip
