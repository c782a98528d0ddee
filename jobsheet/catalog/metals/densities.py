"""Density by family of metal, for weights on the table and in the hands: textbook values, from memory."""

from __future__ import annotations

#: [kg/m³]; copper stands for brass and bronze too.
_DENSITIES = {
    "steel": 7850.0, "stainless": 7900.0, "iron": 7200.0, "aluminium": 2700.0, "copper": 8500.0, "magnesium": 1780.0,
    "titanium": 4430.0, "nickel": 8200.0, "plastic": 1400.0,
}  # fmt: skip


def density(family: str) -> float | None:
    """The density of a family of work materials [kg/m³], or None where it is not known."""
    return _DENSITIES.get(family)
