"""Forces of the teeth on the cutter, summed over the turn and along the helix:
what only text-book examples ask.
"""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse
from jobsheet.cutting.trig import tan


@formula(source="derived", symbols={"depth": "a", "helix": "beta", "diameter": "D"})
def helix_lag(depth: float, helix: float, diameter: float) -> float:
    """Angle by which an edge lags behind its tip at a height.

    psi = 2 a tan(beta) / D

    Parameters
    ----------
    depth : float
        Height above the tip, such as the depth of cut [m]
    helix : float
        Helix angle of the cutter [rad]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    psi : float
        Lag [rad]

    Raises
    ------
    CalcError
        If depth or diameter is not above zero, or the angle not between -90 and 90 degrees.

    Examples
    --------
    >>> from math import degrees, radians
    >>> round(degrees(helix_lag(depth=12e-3, helix=radians(30), diameter=12e-3)), 1)
    66.2
    """
    positive(depth=depth, diameter=diameter)
    if not -pi / 2 < helix < pi / 2:
        refuse("helix", helix, "between -90 and 90 degrees")
    return 2 * depth * tan(helix) / diameter


@formula(
    source="derived",
    symbols={
        "kc": "k_c",
        "depth": "a_p",
        "width": "a_e",
        "feed_per_tooth": "f_z",
        "teeth": "z",
        "diameter": "D",
    },
)
def mean_tangential_force(
    kc: float,
    depth: float,
    width: float,
    feed_per_tooth: float,
    teeth: float,
    *,
    diameter: float,
) -> float:
    """Mean tangential force of all teeth together, whatever the helix.

    F_t = k_c a_p a_e f_z z / (pi D)

    Parameters
    ----------
    kc : float
        Specific cutting force at the mean chip thickness [Pa]
    depth : float
        Depth of cut [m]
    width : float
        Width of cut [m]
    feed_per_tooth : float
        Feed per tooth [m]
    teeth : float
        Teeth of the cutter [-]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    F_t : float
        Mean tangential force [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(mean_tangential_force(3566e6, 6e-3, 6e-3, 0.04e-3, 4, diameter=12e-3))
    545
    """
    positive(kc=kc, depth=depth, width=width, feed_per_tooth=feed_per_tooth, teeth=teeth, diameter=diameter)
    return kc * depth * width * feed_per_tooth * teeth / (pi * diameter)


@formula(source="derived", symbols={"kc": "k_c", "depth": "a_p", "feed_per_tooth": "f_z", "teeth": "z"})
def slot_side_force(kc: float, depth: float, feed_per_tooth: float, teeth: float) -> float:
    """Side force in a slot, steady from four teeth on.

    F_y = k_c a_p f_z z / 4

    Parameters
    ----------
    kc : float
        Specific cutting force at the mean chip thickness [Pa]
    depth : float
        Depth of cut [m]
    feed_per_tooth : float
        Feed per tooth [m]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    F_y : float
        Mean force across the feed [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    The force against the feed is the radial share of it. With fewer than four teeth this is the mean only.

    Examples
    --------
    >>> round(slot_side_force(kc=3566e6, depth=2e-3, feed_per_tooth=0.04e-3, teeth=4))
    285
    """
    positive(kc=kc, depth=depth, feed_per_tooth=feed_per_tooth, teeth=teeth)
    return kc * depth * feed_per_tooth * teeth / 4
