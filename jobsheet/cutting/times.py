"""Cutting times, and the way a tool goes beside the work's own length."""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, finite, positive, refuse
from jobsheet.cutting.trig import tan


@formula(source="gro", symbols={"diameter": "D", "point_angle": "phi"})
def point_length(diameter: float, point_angle: float) -> float:
    """Length of a drill's point.

    A = D / (2 tan(phi / 2))

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]
    point_angle : float
        Included angle of the point [rad]

    Returns
    -------
    A : float
        Length of the point along the axis [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero, or the angle not between 0 and 180 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(point_length(diameter=12.7e-3, point_angle=radians(118)) * 1e3, 3)
    3.815
    """
    positive(diameter=diameter)
    angle_below(pi, point_angle=point_angle)
    return diameter / (2 * tan(point_angle / 2))


@formula(
    source="derived",
    symbols={"depth": "t", "diameter": "D", "feed": "f", "spindle_speed": "n", "strokes": "i"},
)
def drilling_time(
    depth: float, diameter: float, feed: float, spindle_speed: float, strokes: float = 1
) -> float:
    """Time to drill a hole, with the point and the pecks.

    T = (t + 0.3 D + 1 mm) / (f n) + 3 s (i - 1)

    Parameters
    ----------
    depth : float
        Depth at full diameter [m]
    diameter : float
        Diameter of the drill [m]
    feed : float
        Feed in one turn [m/rev]
    spindle_speed : float
        Spindle speed [rev/s]
    strokes : float, optional
        Strokes for one hole: 1 in one go, 3 with two pecks between [-]

    Returns
    -------
    T : float
        Time for one hole [s]

    Raises
    ------
    CalcError
        If an input is not above zero, or the strokes fewer than 1.

    Notes
    -----
    0.3 D is the point of a 118 degree drill, 1 mm the way before it touches, 3 s a peck common practice.

    Examples
    --------
    >>> round(drilling_time(depth=20e-3, diameter=10e-3, feed=0.115e-3, spindle_speed=320 / 60))
    39
    """
    positive(depth=depth, diameter=diameter, feed=feed, spindle_speed=spindle_speed)
    finite(strokes=strokes)
    if not strokes >= 1:
        refuse("strokes", strokes, "1 or more")
    way = depth + reference.EQUAL_POINT * diameter + reference.DRILL_RUN
    return way / (feed * spindle_speed) + reference.PECK * (strokes - 1)


@formula(source="mit-r", symbols={"length": "L", "feed": "v_f"})
def cutting_time(length: float, feed: float) -> float:
    """Time for a way at a feed.

    T = L / v_f

    Parameters
    ----------
    length : float
        Way of the tool with approach and overrun [m]
    feed : float
        Feed of the table [m/s]

    Returns
    -------
    T : float
        Cutting time [s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(cutting_time(length=500e-3, feed=796.2e-3 / 60), 1)
    37.7
    """
    positive(length=length, feed=feed)
    return length / feed


@formula(source="gro", symbols={"width": "d", "diameter": "D"})
def side_approach(width: float, diameter: float) -> float:
    """Way of a side cut from first touch to full width.

    A = (d (D - d))^0.5

    Parameters
    ----------
    width : float
        Width of cut, across the cutter's axis [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    A : float
        Approach [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the width larger than the diameter.

    Notes
    -----
    The same for a face mill whose edge runs along the side of the work. Past half the diameter the cutter
    touches
    with its front: the approach is half the diameter.

    Examples
    --------
    >>> round(side_approach(width=5e-3, diameter=80e-3) * 1e3, 2)
    19.36
    """
    positive(width=width, diameter=diameter)
    if not width <= diameter:
        refuse("width", width, "at most the diameter of the cutter")
    if width >= diameter / 2:
        return diameter / 2
    result: float = (width * (diameter - width)) ** 0.5
    return result
