"""What holds the work in a set-up: force of vice or straps, friction, how high the work stands, what lies on the table."""

from __future__ import annotations

from jobsheet.catalog.metals.densities import density
from jobsheet.cutting.clamping import bolt_tension, strap_force, vice_force
from jobsheet.model.job import Holding, Stock
from jobsheet.model.machine import Machine, Vice
from jobsheet.model.material import Material
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop

#: Nine in ten of plain vices lie between these efficiencies of the screw (cutting-data section 1.14), over the usual 0.18.
VICE_BAND = (0.13 / 0.18, 0.25 / 0.18)
#: A nut factor scatters by so much either way (section 1.14).
BOLT_BAND = (0.7, 1.3)
#: Friction of smooth jaws by what they hold, over steel (section 1.14: 0.10 for aluminium, iron 0.80 of steel).
_FRICTION = {"aluminium": 0.10 / 0.12, "iron": 0.80, "copper": 0.90}


def _spelled(words: str) -> str:
    """Words as they are compared: small letters, and a vise is a vice."""
    return words.casefold().replace("vise", "vice")


def vice_of(holding: Holding, machine: Machine) -> Vice | None:
    """The vice of the card that the set-up names; the only one where it says just vice."""
    device = _spelled(holding.device)
    if "vice" not in device:
        return None
    for vice in machine.vices:
        if _spelled(vice.name) in device:
            return vice
    return machine.vices[0] if len(machine.vices) == 1 else None


def grip_of(holding: Holding, machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """The grip on the work, or None where too little is known of it."""
    friction = shop.friction * _FRICTION.get(material.family, 1.0)
    above = holding.above_jaws.value if holding.above_jaws else None
    vice = vice_of(holding, machine)
    if vice is not None:
        torque = holding.tighten.value if holding.tighten else vice.usual_torque
        if torque is None or vice.lead is None or vice.efficiency is None:
            return None
        force = vice_force(torque=torque, lead=vice.lead, efficiency=vice.efficiency.value)
        working = f"2 π η T / s = 2 π × {vice.efficiency.value:g} × {torque:g} N·m / {vice.lead * 1e3:g} mm"
        return Grip(
            kind="vice", force=force, low=force * VICE_BAND[0], high=force * VICE_BAND[1], friction=friction,
            above=above, jaw_depth=vice.jaw_depth, jaw_width=vice.jaw_width, working=working,
        )  # fmt: skip
    if holding.clamps and holding.bolt is not None and holding.tighten is not None:
        tension = bolt_tension(torque=holding.tighten.value, diameter=holding.bolt.major)
        one = strap_force(tension=tension, heel=1.0, work=1.0)
        force = one * holding.clamps
        working = f"{holding.clamps} straps, half of T / (K d) = {holding.tighten.value:g} N·m / (0.20 × {holding.bolt.major * 1e3:g} mm) each"
        return Grip(
            kind="straps", force=force, low=force * BOLT_BAND[0], high=force * BOLT_BAND[1], friction=friction,
            working=working,
        )  # fmt: skip
    return None


def top_of(holding: Holding, machine: Machine) -> float | None:
    """How high the top of the work stands over the table in a vice [m]."""
    vice = vice_of(holding, machine)
    if vice is None or vice.bed_height is None or holding.above_jaws is None:
        return None
    return vice.bed_height + vice.jaw_depth + holding.above_jaws.value


def load_of(stock: Stock, holding: Holding, machine: Machine, material: Material) -> float | None:
    """What lies on the table: the stock and the vice [kg]."""
    heavy = density(material.family)
    if heavy is None:
        return None
    vice = vice_of(holding, machine)
    mass = stock.length.value * stock.width.value * stock.height.value * heavy
    return mass + (vice.mass or 0.0 if vice is not None else 0.0)
