"""How hard a vice, a bolt and a strap hold, and how hard a cut pulls."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import finite, not_negative, positive, refuse, share
from jobsheet.cutting.trig import tan

VICE_EFFICIENCY = 0.18
"""Share of the handle's work that clamps, plain collar, of 0.13 to 0.25; with a thrust bearing 0.30.

Source: derived."""
JAW_FRICTION = 0.12
"""Friction of a smooth jaw on machined steel, of 0.07 to 0.20.

Source: carr, rhm; chosen between them."""
HOLDING_FACTOR = 2.5
"""How many times the pull a holding should bear: a cut comes in blows, somebody stands near.

Source: common-practice."""


@formula(
    source="shigley", symbols={"torque": "T", "diameter": "d", "nut_factor": "K"}, nut_factor=(0.10, 0.30)
)
def bolt_tension(torque: float, diameter: float, nut_factor: float = 0.20) -> float:
    """Tension of a bolt from the torque on its nut.

    F = T / (K d)

    Parameters
    ----------
    torque : float
        Torque on the nut [N*m]
    diameter : float
        Diameter of the bolt [m]
    nut_factor : float, optional
        0.20 clean and dry, 0.17 zinc, 0.15 oiled, 0.30 rusty; scatters by 30 % either way [-]

    Returns
    -------
    F : float
        Tension of the bolt [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(bolt_tension(torque=40, diameter=12e-3))
    16667
    """
    positive(torque=torque, diameter=diameter, nut_factor=nut_factor)
    return torque / (nut_factor * diameter)


@formula(source="derived", symbols={"tension": "F", "heel": "a", "work": "b"})
def strap_force(tension: float, heel: float, work: float) -> float:
    """Part of a bolt's tension that a strap puts on the work.

    F_w = F a / (a + b)

    Parameters
    ----------
    tension : float
        Tension of the bolt [N]
    heel : float
        From the heel of the strap to the bolt [m]
    work : float
        From the bolt to the work [m]

    Returns
    -------
    F_w : float
        Force on the work [N]

    Raises
    ------
    CalcError
        If tension or heel is not above zero, or `work` below zero.

    Examples
    --------
    >>> round(strap_force(tension=9000, heel=60e-3, work=30e-3))
    6000
    """
    positive(tension=tension, heel=heel)
    not_negative(work=work)
    return tension * heel / (heel + work)


@formula(source="derived", symbols={"torque": "T", "lead": "s", "efficiency": "eta"})
def vice_force(torque: float, lead: float, efficiency: float = VICE_EFFICIENCY) -> float:
    """Clamping force of a vice from the torque on its handle.

    F = 2 pi eta T / s

    Parameters
    ----------
    torque : float
        Torque on the handle [N*m]
    lead : float
        Way of the jaw for one turn [m/rev]
    efficiency : float, optional
        Share of the handle's work that clamps: 0.18 plain collar, 0.30 thrust bearing [-]

    Returns
    -------
    F : float
        Clamping force [N]

    Raises
    ------
    CalcError
        If torque or lead is not above zero, or the efficiency not a share of 1.

    Examples
    --------
    >>> round(vice_force(torque=20, lead=3e-3) / 1e3, 2)
    7.54
    """
    positive(torque=torque, lead=lead)
    share(efficiency=efficiency)
    return 2 * pi * efficiency * torque / lead


@formula(source="derived", symbols={"force": "F", "friction": "mu"})
def grip(force: float, friction: float = JAW_FRICTION) -> float:
    """Pull along its faces that work held between two faces bears.

    G = 2 mu F

    Parameters
    ----------
    force : float
        Clamping force; for straps the force of one strap on the work [N]
    friction : float, optional
        Friction between work and jaw or table [-]

    Returns
    -------
    G : float
        Pull at which the work slips [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(grip(force=7540) / 1e3, 2)
    1.81
    """
    positive(force=force, friction=friction)
    return 2 * friction * force


@formula(source="derived", symbols={"tangential": "F_t", "helix": "beta"})
def lift(tangential: float, helix: float) -> float:
    """Pull of a right-hand helix that lifts the work, at most.

    F_a = F_t tan(beta)

    Parameters
    ----------
    tangential : float
        Tangential force [N]
    helix : float
        Helix angle of the cutter [rad]

    Returns
    -------
    F_a : float
        Force along the cutter, an upper bound; measured pulls are about half of it [N]

    Raises
    ------
    CalcError
        If the force is below zero, or the angle not between -90 and 90 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(lift(tangential=1000, helix=radians(30)))
    577
    """
    not_negative(tangential=tangential)
    if not -pi / 2 < helix < pi / 2:
        refuse("helix", helix, "between -90 and 90 degrees")
    return tangential * tan(helix)


@formula(source="common-practice", symbols={"in_plane": "F_xy", "upward": "F_a", "factor": "q"})
def required_grip(in_plane: float, upward: float, factor: float = HOLDING_FACTOR) -> float:
    """Grip that a cut asks of its holding.

    G = q (F_xy^2 + F_a^2)^0.5

    Parameters
    ----------
    in_plane : float
        Peak force in the plane of the table [N]
    upward : float
        Peak force that lifts the work [N]
    factor : float, optional
        How many times the pull; 2.5, or 4 where the work stands high above the jaws [-]

    Returns
    -------
    G : float
        Grip that is wanted [N]

    Raises
    ------
    CalcError
        If a force is not finite, or the factor not above zero.

    Examples
    --------
    >>> round(required_grip(in_plane=285, upward=153), -1)
    810.0
    """
    finite(in_plane=in_plane, upward=upward)
    positive(factor=factor)
    result: float = factor * (in_plane**2 + upward**2) ** 0.5
    return result
