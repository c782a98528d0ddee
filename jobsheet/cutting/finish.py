"""Roughness that the shape of the edge and the feed leave, at best."""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive

MEAN_OF_PEAK = 4 / (9 * 3**0.5)
"""Ra over Rt of shallow round scallops. Source: derived."""


@formula(source="mit-r", symbols={"feed": "f", "nose_radius": "r"})
def nose_roughness(feed: float, nose_radius: float) -> float:
    """Height of the marks that a round corner leaves.

    R_t = f^2 / (8 r)

    Parameters
    ----------
    feed : float
        Feed between two marks: a tooth, or a turn where one tooth stands proud [m]
    nose_radius : float
        Radius of the corner [m]

    Returns
    -------
    R_t : float
        Height from valley to peak [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(nose_roughness(feed=0.2e-3, nose_radius=0.8e-3) * 1e6, 2)
    6.25
    """
    positive(feed=feed, nose_radius=nose_radius)
    return feed**2 / (8 * nose_radius)


@formula(source="dp-f", symbols={"feed": "f", "diameter": "D"})
def side_roughness(feed: float, diameter: float) -> float:
    """Height of the marks that the side of a cutter leaves.

    R_t = f^2 / (4 D)

    Parameters
    ----------
    feed : float
        Feed between two marks: a tooth, or a turn where one tooth stands proud [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    R_t : float
        Height from valley to peak [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(side_roughness(feed=0.2e-3, diameter=10e-3) * 1e6, 2)
    1.0
    """
    positive(feed=feed, diameter=diameter)
    return feed**2 / (4 * diameter)
