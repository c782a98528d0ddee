"""Torque and thrust of a twist drill by other laws than `drilling`: a second method to compare
with: what only text-book examples ask.
"""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, positive
from jobsheet.cutting.trig import sin


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D", "spindle_speed": "n"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_power(k: float, feed: float, diameter: float, spindle_speed: float) -> float:
    """Power of a twist drill by a maker's lines, as a second method.

    P = K (D / 1 mm)^2 n (0.647 + 17.29 f / 1 mm) e;  e = 0.06 W*s a turn

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    P : float
        Power at a sharp drill [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    Within 2 % of the same maker's torque line times the angular speed.

    Examples
    --------
    >>> round(twist_drill_power(k=2.22, feed=0.3e-3, diameter=10e-3, spindle_speed=10))
    777
    """
    positive(k=k, feed=feed, diameter=diameter, spindle_speed=spindle_speed)
    size = (diameter / reference.DIAMETER) ** 2
    return k * size * spindle_speed * (0.647 + 17.29 * feed / reference.FEED) * reference.TWIST_ENERGY


@formula(source="tsch", symbols={"feed": "f", "point_angle": "phi"})
def drill_chip_thickness(feed: float, point_angle: float) -> float:
    """Chip thickness of a drill with two lips.

    h = f / 2 sin(phi / 2)

    Parameters
    ----------
    feed : float
        Feed in one turn [m/rev]
    point_angle : float
        Included angle of the point [rad]

    Returns
    -------
    h : float
        Undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If the feed is not above zero, or the angle not between 0 and 180 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(drill_chip_thickness(feed=0.2e-3, point_angle=radians(118)) * 1e3, 4)
    0.0857
    """
    positive(feed=feed)
    angle_below(pi * (1 + 1e-9), point_angle=point_angle)
    return feed / 2 * sin(point_angle / 2)


@formula(
    source="isc-d",
    symbols={"kc": "k_c", "feed": "f", "diameter": "D", "point_angle": "phi", "factor": "b"},
)
def kienzle_drill_thrust(
    kc: float,
    feed: float,
    diameter: float,
    point_angle: float,
    factor: float = 0.63,
) -> float:
    """Thrust of a thinned carbide drill by the specific cutting force.

    T = b (D / 2) f k_c sin(phi / 2)

    Parameters
    ----------
    kc : float
        Specific cutting force at the drill's chip thickness [Pa]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    point_angle : float
        Included angle of the point [rad]
    factor : float, optional
        Share of the feed force, 0.5 to 0.7 by different makers [-]

    Returns
    -------
    T : float
        Force along the drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the angle not between 0 and 180 degrees.

    Notes
    -----
    For carbide drills with thinned points only; a standard point asks two to three times as much.

    Examples
    --------
    >>> from math import pi
    >>> round(kienzle_drill_thrust(kc=2200e6, feed=0.15e-3, diameter=22e-3, point_angle=pi))
    2287
    """
    positive(kc=kc, feed=feed, diameter=diameter, factor=factor)
    angle_below(pi * (1 + 1e-9), point_angle=point_angle)
    return factor * diameter / 2 * feed * kc * sin(point_angle / 2)
