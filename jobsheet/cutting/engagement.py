"""How far a cutter wraps round the work, and how many of its teeth cut at once.

Angles of a side cut count from the edge: 0 where the tooth lies across the feed, so that a cut as wide as
the cutter spans pi. A face cut "centred" lies evenly on both sides of the cutter's path.
"""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, positive, refuse


def cut_fits(width: float, diameter: float) -> None:
    """Refuse a cut that is wider than its cutter [m]."""
    positive(width=width, diameter=diameter)
    if not width <= diameter * (1 + 1e-9):
        refuse("width", width, "at most the diameter of the cutter")


@formula(source="tlu", symbols={"teeth": "z", "engagement": "phi_s"})
def teeth_in_cut(teeth: float, engagement: float) -> float:
    """Mean number of teeth that cut at the same time.

    m = z phi_s / (2 pi)

    Parameters
    ----------
    teeth : float
        Teeth of the cutter [-]
    engagement : float
        Angle of engagement [rad]

    Returns
    -------
    m : float
        Mean number of teeth in the cut [-]

    Raises
    ------
    CalcError
        If `teeth` is not above zero or the angle not between 0 and 360 degrees.

    Examples
    --------
    >>> round(teeth_in_cut(teeth=4, engagement=1.5707963267948966), 6)
    1.0
    """
    positive(teeth=teeth)
    angle_below(2 * pi * (1 + 1e-9), engagement=engagement)
    return teeth * engagement / (2 * pi)
