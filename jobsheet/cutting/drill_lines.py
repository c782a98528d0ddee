"""Torque and thrust of a twist drill by other laws than `drilling`: a second method to compare with.

A maker's catalogue lines for high speed steel, and the lines by Kienzle's specific cutting force for carbide.
"""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.drill_forces import pilot_fits
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive

# --- catalogue lines, an independent check ------------------------------------------------------------------


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_torque(k: float, feed: float, diameter: float) -> float:
    """Torque of a twist drill by a maker's lines, as a second method.

    M = K (D / 1 mm)^2 (0.630 + 16.84 f / 1 mm) q;  q = 0.01 N*m

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    M : float
        Torque of a sharp drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    The range of feed and diameter is our estimate: the page prints none.

    Examples
    --------
    >>> round(twist_drill_torque(k=2.22, feed=0.14e-3, diameter=12e-3), 2)
    9.55
    """
    positive(k=k, feed=feed, diameter=diameter)
    size = (diameter / reference.DIAMETER) ** 2
    return k * size * (0.630 + 16.84 * feed / reference.FEED) * reference.TWIST_TORQUE


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_thrust(k: float, feed: float, diameter: float) -> float:
    """Thrust of a twist drill by a maker's lines, as a second method.

    T = 570 N K (D / 1 mm) (f / 1 mm)^0.85

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    T : float
        Force along a sharp drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(twist_drill_thrust(k=2.22, feed=0.3e-3, diameter=10e-3), -1)
    4550.0
    """
    positive(k=k, feed=feed, diameter=diameter)
    result: float = (
        reference.TWIST_THRUST * k * (diameter / reference.DIAMETER) * (feed / reference.FEED) ** 0.85
    )
    return result


# --- Kienzle lines, for drills of carbide -------------------------------------------------------------------


@formula(source="isc-d", symbols={"kc": "k_c", "feed": "f", "diameter": "D", "pilot": "d_1"})
def kienzle_drill_torque(kc: float, feed: float, diameter: float, pilot: float = 0.0) -> float:
    """Torque of a drill by the specific cutting force, lips only.

    M = k_c f (D^2 - d_1^2) / 8

    Parameters
    ----------
    kc : float
        Specific cutting force at the drill's chip thickness [Pa]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    pilot : float, optional
        Diameter of the hole that is there; 0 in solid metal [m]

    Returns
    -------
    M : float
        Torque at the drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the drill.

    Notes
    -----
    Leaves out the chisel edge; 0.5 to 0.65 of `drill_torque` for standard high speed steel drills.

    Examples
    --------
    >>> round(kienzle_drill_torque(kc=2200e6, feed=0.15e-3, diameter=22e-3), 1)
    20.0
    """
    positive(kc=kc, feed=feed, diameter=diameter)
    pilot_fits(pilot, diameter)
    return kc * feed * (diameter**2 - pilot**2) / 8
