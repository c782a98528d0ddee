"""Roughness that the shape of the edge and the feed leave, at best."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula, not_negative, positive, refuse
from jobsheet.cutting.trig import tan

MEAN_OF_PEAK = 4 / (9 * 3**0.5)
"""Ra over Rt of shallow round scallops. Source: derived."""


@formula(source="mit-f", symbols={"feed": "f", "nose_radius": "r"})
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


@formula(source="tun-m", symbols={"feed": "f", "main": "kappa_r", "face": "kappa_r'"})
def corner_roughness(feed: float, main: float, face: float) -> float:
    """Height of the marks that a sharp corner leaves.

    R_t = f / (cot(kappa_r) + cot(kappa_r'))

    Parameters
    ----------
    feed : float
        Feed between two marks: a tooth, or a turn where one tooth stands proud [m]
    main : float
        Angle of the main edge from the finished face [rad]
    face : float
        Angle of the face edge from the finished face [rad]

    Returns
    -------
    R_t : float
        Height from valley to peak [m]

    Raises
    ------
    CalcError
        If the feed is not above zero, or an angle not above 0 and at most 90 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(corner_roughness(feed=0.1e-3, main=radians(45), face=radians(45)) * 1e3, 3)
    0.05
    """
    positive(feed=feed)
    for name, angle in (("main", main), ("face", face)):
        if not 0 < angle <= pi / 2:
            refuse(name, angle, "above 0 and at most 90 degrees")
    return feed / (1 / tan(main) + 1 / tan(face))


@formula(source="derived", symbols={"height": "R_t"})
def mean_roughness(height: float) -> float:
    """Mean roughness of round marks.

    R_a = 4 / (9 * 3^0.5) R_t = 0.257 R_t

    Parameters
    ----------
    height : float
        Height of the marks from valley to peak [m]

    Returns
    -------
    R_a : float
        Mean roughness [m]

    Raises
    ------
    CalcError
        If the height is below zero.

    Examples
    --------
    >>> round(mean_roughness(6.25e-6) * 1e6, 2)
    1.6
    """
    not_negative(height=height)
    return MEAN_OF_PEAK * height
