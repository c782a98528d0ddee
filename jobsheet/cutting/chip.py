"""How thick the chip gets along the arc of a cut, and the feed that makes it so."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse
from jobsheet.cutting.trig import cos, sin

SQUARE = pi / 2
"""Entering angle of a square end mill [rad]."""


def _entering(entering_angle: float) -> None:
    if not 0 < entering_angle <= SQUARE * (1 + 1e-9):
        refuse("entering_angle", entering_angle, "above 0 and at most 90 degrees")


@formula(source="dp-f", symbols={"feed_per_tooth": "f_z", "angle": "phi", "entering_angle": "kappa"})
def chip_thickness(feed_per_tooth: float, angle: float, entering_angle: float = SQUARE) -> float:
    """Chip thickness where a tooth stands at an angle.

    h = f_z sin(phi) sin(kappa)

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    angle : float
        Angle of the tooth from the line across the feed [rad]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h : float
        Undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If the feed is not above zero, or an angle has no meaning.

    Examples
    --------
    >>> from math import radians
    >>> round(chip_thickness(feed_per_tooth=0.1e-3, angle=radians(30)) * 1e3, 6)
    0.05
    """
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    if not 0 <= angle <= pi * (1 + 1e-9):
        refuse("angle", angle, "between 0 and 180 degrees")
    return feed_per_tooth * sin(angle) * sin(entering_angle)


@formula(
    source="derived",
    symbols={"feed_per_tooth": "f_z", "start": "phi_1", "end": "phi_2", "entering_angle": "kappa"},
)
def arc_chip_thickness(
    feed_per_tooth: float, start: float, end: float, entering_angle: float = SQUARE
) -> float:
    """Mean chip thickness over any arc of cut.

    h_m = f_z sin(kappa) (cos(phi_1) - cos(phi_2)) / (phi_2 - phi_1)

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    start : float
        Angle at which the tooth enters, from the line across the feed [rad]
    end : float
        Angle at which it leaves [rad]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h_m : float
        Mean undeformed chip thickness over the arc of cut [m]

    Raises
    ------
    CalcError
        If the feed is not above zero, or the angles are not in order between 0 and 180 degrees.

    Examples
    --------
    >>> from math import pi
    >>> round(arc_chip_thickness(feed_per_tooth=0.1e-3, start=0, end=pi) * 1e3, 4)
    0.0637
    """
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    if not 0 <= start < end <= pi * (1 + 1e-9):
        refuse("end", end, "above the start, both between 0 and 180 degrees")
    return feed_per_tooth * sin(entering_angle) * (cos(start) - cos(end)) / (end - start)
