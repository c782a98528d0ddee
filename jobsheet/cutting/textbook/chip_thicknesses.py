"""How thick the chip gets along the arc of a cut, and the feed that makes it so:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.chip import SQUARE, _entering
from jobsheet.cutting.engagement import cut_fits
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse
from jobsheet.cutting.trig import acos, asin, sin


@formula(
    source="derived",
    symbols={"feed_per_tooth": "f_z", "width": "a_e", "diameter": "D", "entering_angle": "kappa"},
)
def max_chip_thickness(
    feed_per_tooth: float,
    width: float,
    diameter: float,
    entering_angle: float = SQUARE,
) -> float:
    """Thickest chip of a cut from the cutter's edge.

    h_max = 2 f_z sin(kappa) (a_e/D (1 - a_e/D))^0.5;  f_z sin(kappa) where a_e reaches D/2

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h_max : float
        Largest undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Examples
    --------
    >>> round(max_chip_thickness(feed_per_tooth=0.1e-3, width=2e-3, diameter=10e-3) * 1e3, 6)
    0.08
    """
    cut_fits(width, diameter)
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    part = width / diameter
    if part >= 0.5:
        return feed_per_tooth * sin(entering_angle)
    result: float = 2 * feed_per_tooth * sin(entering_angle) * (part * (1 - part)) ** 0.5
    return result


@formula(
    source="derived",
    symbols={"feed_per_tooth": "f_z", "width": "a_e", "diameter": "D", "entering_angle": "kappa"},
)
def mean_chip_thickness(
    feed_per_tooth: float,
    width: float,
    diameter: float,
    entering_angle: float = SQUARE,
) -> float:
    """Mean chip thickness of a cut from the cutter's edge, exact.

    h_m = 2 f_z sin(kappa) (a_e/D) / acos(1 - 2 a_e/D)

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h_m : float
        Mean undeformed chip thickness over the arc of cut [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Notes
    -----
    Catalogues often print the form for a centred cut, or the square root for small widths; a slot is 0.637 of
    the
    feed here and 1.000 by the square root.

    Examples
    --------
    >>> round(mean_chip_thickness(feed_per_tooth=0.05e-3, width=16e-3, diameter=20e-3) * 1e3, 4)
    0.0361
    """
    cut_fits(width, diameter)
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    return 2 * feed_per_tooth * sin(entering_angle) * (width / diameter) / acos(1 - 2 * width / diameter)


@formula(
    source="dij",
    symbols={"feed_per_tooth": "f_z", "width": "a_e", "diameter": "D", "entering_angle": "kappa"},
)
def centred_chip_thickness(
    feed_per_tooth: float,
    width: float,
    diameter: float,
    entering_angle: float = SQUARE,
) -> float:
    """Mean chip thickness of a face mill on the middle of the work.

    h_m = f_z sin(kappa) (a_e/D) / asin(a_e/D)

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h_m : float
        Mean undeformed chip thickness over the arc of cut [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Examples
    --------
    >>> round(centred_chip_thickness(feed_per_tooth=0.1e-3, width=38e-3, diameter=50e-3) * 1e3, 5)
    0.08803
    """
    cut_fits(width, diameter)
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    return feed_per_tooth * sin(entering_angle) * (width / diameter) / asin(width / diameter)


@formula(
    source="isc-m",
    symbols={"feed_per_tooth": "f_z", "width": "a_e", "diameter": "D", "entering_angle": "kappa"},
)
def thin_cut_chip_thickness(
    feed_per_tooth: float,
    width: float,
    diameter: float,
    entering_angle: float = SQUARE,
) -> float:
    """Mean chip thickness of a thin side cut, as catalogues give it.

    h_m = f_z (a_e/D)^0.5 sin(kappa)

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]
    entering_angle : float, optional
        Angle of the edge from the finished face; 90 degrees for a square end mill [rad]

    Returns
    -------
    h_m : float
        Mean undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Notes
    -----
    For widths up to a tenth of the diameter; 3.7 % high at two tenths, 57 % high in a slot. For comparing
    with
    catalogues; figures use the exact mean.

    Examples
    --------
    >>> round(thin_cut_chip_thickness(feed_per_tooth=0.36e-3, width=2e-3, diameter=10e-3) * 1e3, 2)
    0.16
    """
    cut_fits(width, diameter)
    positive(feed_per_tooth=feed_per_tooth)
    _entering(entering_angle)
    result: float = feed_per_tooth * (width / diameter) ** 0.5 * sin(entering_angle)
    return result


@formula(source="derived", symbols={"chip": "h", "width": "a_e", "diameter": "D"})
def feed_for_chip(chip: float, width: float, diameter: float) -> float:
    """Feed per tooth that gives a wanted thickest chip in a narrow side cut.

    f_z = h / (2 (a_e/D (1 - a_e/D))^0.5);  h where a_e reaches D/2

    Parameters
    ----------
    chip : float
        Thickest chip wanted [m]
    width : float
        Width of cut [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    f_z : float
        Feed per tooth [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `width` larger than `diameter`.

    Examples
    --------
    >>> round(feed_for_chip(chip=0.08e-3, width=2e-3, diameter=10e-3) * 1e3, 6)
    0.1
    """
    positive(chip=chip)
    cut_fits(width, diameter)
    part = width / diameter
    if part >= 0.5:
        return chip
    result: float = chip / (2 * (part * (1 - part)) ** 0.5)
    return result


@formula(source="ste", symbols={"chip": "h", "entering_angle": "kappa"})
def feed_for_entering_angle(chip: float, entering_angle: float) -> float:
    """Feed per tooth that gives a wanted chip with a slanted edge.

    f_z = h / sin(kappa)

    Parameters
    ----------
    chip : float
        Chip thickness wanted [m]
    entering_angle : float
        Angle of the edge from the finished face [rad]

    Returns
    -------
    f_z : float
        Feed per tooth [m]

    Raises
    ------
    CalcError
        If the chip is not above zero, or the angle not above 0 and at most 90 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(feed_for_entering_angle(chip=0.08e-3, entering_angle=radians(42)) * 1e3, 2)
    0.12
    """
    positive(chip=chip)
    _entering(entering_angle)
    return chip / sin(entering_angle)


@formula(source="dp-f", symbols={"feed_per_tooth": "f_z", "depth": "a_p", "insert": "d"})
def round_insert_chip_thickness(feed_per_tooth: float, depth: float, insert: float) -> float:
    """Chip thickness under a round insert.

    h = f_z (a_p / d)^0.5

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    depth : float
        Depth of cut [m]
    insert : float
        Diameter of the round insert [m]

    Returns
    -------
    h : float
        Mean undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the depth more than the insert.

    Examples
    --------
    >>> round(round_insert_chip_thickness(feed_per_tooth=0.2e-3, depth=3e-3, insert=12e-3) * 1e3, 6)
    0.1
    """
    positive(feed_per_tooth=feed_per_tooth, depth=depth, insert=insert)
    if not depth <= insert:
        refuse("depth", depth, "at most the diameter of the insert")
    result: float = feed_per_tooth * (depth / insert) ** 0.5
    return result
