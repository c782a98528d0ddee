"""How hard a vice, a bolt and a strap hold, and how hard a cut pulls: what only text-book examples ask."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.clamping import JAW_FRICTION
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, not_negative, positive, refuse
from jobsheet.cutting.trig import tan


@formula(
    source="derived",
    symbols={
        "lead": "s",
        "pitch_diameter": "d_2",
        "friction": "mu",
        "collar_friction": "mu_c",
        "collar_radius": "r_c",
        "half_angle": "beta",
    },
)
def screw_efficiency(
    lead: float,
    pitch_diameter: float,
    friction: float,
    collar_friction: float,
    collar_radius: float,
    *,
    half_angle: float = pi / 12,
) -> float:
    """Share of a screw's work that clamps or moves, with the friction of its collar.

    eta = tan(l) / (tan(l + r) + 2 mu_c r_c / d_2);  tan(l) = s / (pi d_2);  tan(r) = mu / cos(beta)

    Parameters
    ----------
    lead : float
        Way for one turn [m/rev]
    pitch_diameter : float
        Pitch diameter of the thread [m]
    friction : float
        Friction in the thread [-]
    collar_friction : float
        Friction under the collar; near 0 with a thrust bearing [-]
    collar_radius : float
        Mean radius of the collar [m]
    half_angle : float, optional
        Half the angle of the thread, 15 degrees for a trapezoidal screw [rad]

    Returns
    -------
    eta : float
        Efficiency [-]

    Raises
    ------
    CalcError
        If lead, pitch diameter or collar radius is not above zero, a friction is below zero, or the screw
        stands still whatever the torque.

    Examples
    --------
    >>> round(screw_efficiency(4e-3, 18e-3, friction=0.15, collar_friction=0.15, collar_radius=15e-3), 2)
    0.15
    """
    positive(lead=lead, pitch_diameter=pitch_diameter, collar_radius=collar_radius)
    not_negative(friction=friction, collar_friction=collar_friction)
    angle_below(pi / 2, half_angle=half_angle)
    slope = lead / (pi * pitch_diameter)
    # mu / cos(beta), written with tan as 1 / cos = (1 + tan^2)^0.5
    thread = friction * (1 + tan(half_angle) ** 2) ** 0.5
    if not slope * thread < 1:
        refuse("friction", friction, "small enough for the screw to turn")
    together = (slope + thread) / (1 - slope * thread)
    result: float = slope / (together + 2 * collar_friction * collar_radius / pitch_diameter)
    return result


@formula(source="derived", symbols={"force": "F", "height": "h"})
def tipping_moment(force: float, height: float) -> float:
    """Moment of a cut above the jaws that tips the work.

    M = F h

    Parameters
    ----------
    force : float
        Peak force in the plane of the table [N]
    height : float
        Height of the cut above the top of the jaws [m]

    Returns
    -------
    M : float
        Tipping moment [N*m]

    Raises
    ------
    CalcError
        If an input is below zero.

    Examples
    --------
    >>> round(tipping_moment(force=300, height=20e-3), 3)
    6.0
    """
    not_negative(force=force, height=height)
    return force * height


@formula(source="derived", symbols={"force": "F", "jaw_depth": "t", "friction": "mu"})
def tipping_resistance(force: float, jaw_depth: float, friction: float = JAW_FRICTION) -> float:
    """Moment at which work tips out of a vice.

    M = mu F t

    Parameters
    ----------
    force : float
        Clamping force [N]
    jaw_depth : float
        Depth of the work in the jaws [m]
    friction : float, optional
        Friction between work and jaw [-]

    Returns
    -------
    M : float
        Moment that the two jaws bear, each at half their depth [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(tipping_resistance(force=7540, jaw_depth=25e-3), 1)
    22.6
    """
    positive(force=force, jaw_depth=jaw_depth, friction=friction)
    return friction * force * jaw_depth
