"""What drills and cutters stand before they break: what only text-book examples ask."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive


@formula(source="beam-theory", symbols={"shear": "tau", "diameter": "d"})
def torsional_strength(shear: float, diameter: float) -> float:
    """Torque at which a round bar reaches a shear stress.

    M = pi / 16 tau d^3

    Parameters
    ----------
    shear : float
        Shear stress at the surface [Pa]
    diameter : float
        Diameter of the bar [m]

    Returns
    -------
    M : float
        Torque [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(torsional_strength(shear=1200e6, diameter=2.5e-3), 2)
    3.68
    """
    positive(shear=shear, diameter=diameter)
    return pi / 16 * shear * diameter**3
