"""How far a cutter wraps round the work, and how many of its teeth cut at once:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.engagement import cut_fits
from jobsheet.cutting.formula import formula
from jobsheet.cutting.trig import acos, asin


@formula(source="derived", symbols={"width": "a_e", "diameter": "D"})
def engagement_angle(width: float, diameter: float) -> float:
    """Angle over which a tooth cuts, for a cut from the cutter's edge.

    phi_s = acos(1 - 2 a_e / D)

    Parameters
    ----------
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    phi_s : float
        Angle of engagement [rad]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Examples
    --------
    >>> from math import degrees
    >>> round(degrees(engagement_angle(width=6e-3, diameter=12e-3)), 6)
    90.0
    """
    cut_fits(width, diameter)
    return acos(1 - 2 * width / diameter)


@formula(source="dij", symbols={"width": "a_e", "diameter": "D"})
def centred_engagement_angle(width: float, diameter: float) -> float:
    """Angle over which a tooth cuts, for a face mill on the middle of the work.

    phi_s = 2 asin(a_e / D)

    Parameters
    ----------
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    phi_s : float
        Angle of engagement [rad]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Examples
    --------
    >>> from math import degrees
    >>> round(degrees(centred_engagement_angle(width=38e-3, diameter=50e-3)), 2)
    98.93
    """
    cut_fits(width, diameter)
    return 2 * asin(width / diameter)
