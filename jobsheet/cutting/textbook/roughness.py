"""Roughness that the shape of the edge and the feed leave, at best: what only text-book examples ask."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.finish import MEAN_OF_PEAK
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse
from jobsheet.cutting.trig import tan


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
