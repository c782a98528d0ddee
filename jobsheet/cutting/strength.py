"""What drills and cutters stand before they break."""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive

HSS_RUPTURE = 3000e6
"""Bending stress at which high speed steel breaks [Pa], of 2400 to 4800; use a factor of 3.

Source: kalp, remembered."""
CARBIDE_RUPTURE = 2000e6
"""Bending stress at which carbide breaks [Pa], of 1050 to 4000; use a factor of 3.

Source: kalp, remembered."""


@formula(source="estimate", symbols={"diameter": "D"}, diameter=(2e-3, 13e-3))
def drill_strength(diameter: float) -> float:
    """Torque at which a twist drill of high speed steel breaks.

    M_s = pi / 16 tau (0.5 D)^3;  tau = 1200 MPa

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    M_s : float
        Torsional strength, right within a factor of 1.5 either way [N*m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Notes
    -----
    0.5 D is the round bar as strong as the drill. Buckling is not in it: below 2 mm the figure says little.

    Examples
    --------
    >>> round(drill_strength(diameter=5e-3), 2)
    3.68
    """
    positive(diameter=diameter)
    return pi / 16 * reference.HSS_SHEAR * (0.5 * diameter) ** 3


@formula(source="beam-theory", symbols={"force": "F", "length": "L", "diameter": "D_e"})
def bending_stress(force: float, length: float, diameter: float) -> float:
    """Bending stress of a cutter where it leaves the holder.

    sigma = 32 F L / (pi D_e^3)

    Parameters
    ----------
    force : float
        Force across the cutter [N]
    length : float
        From the holder to the force [m]
    diameter : float
        Diameter of the round bar that bends like the cutter [m]

    Returns
    -------
    sigma : float
        Bending stress at the surface [Pa]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(bending_stress(force=1000, length=30e-3, diameter=9.6e-3) / 1e6)
    345
    """
    positive(force=force, length=length, diameter=diameter)
    return 32 * force * length / (pi * diameter**3)
