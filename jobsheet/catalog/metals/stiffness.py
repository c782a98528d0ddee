"""Modulus of elasticity by family of work material, for work that bends while it is cut."""

from __future__ import annotations

#: [Pa]. Shigley's Mechanical Engineering Design, 8th edition, table A-5, from memory: carbon steel 207,
#: stainless 190, grey iron 100, aluminium 71, brass 106 (copper stands for it and bronze), magnesium 45,
#: titanium 114, nickel alloys 214 GPa. Acetal: 3 GPa, from memory of makers' sheets.
_MODULI = {
    "steel": 207e9, "stainless": 190e9, "iron": 100e9, "aluminium": 71e9, "copper": 106e9, "magnesium": 45e9,
    "titanium": 114e9, "nickel": 214e9, "plastic": 3e9,
}  # fmt: skip


def modulus(family: str) -> float | None:
    """The modulus of a family of work materials [Pa], or None where it is not known."""
    return _MODULI.get(family)
