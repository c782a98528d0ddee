"""How much metal is cut away in a second."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse


@formula(source="isc-m", symbols={"depth": "a_p", "width": "a_e", "table_feed": "v_f"})
def milling_removal_rate(depth: float, width: float, table_feed: float) -> float:
    """Removal rate in milling.

    Q = a_p a_e v_f

    Parameters
    ----------
    depth : float
        Depth of cut along the cutter's axis [m]
    width : float
        Width of cut across it [m]
    table_feed : float
        Feed of the table [m/s]

    Returns
    -------
    Q : float
        Volume cut away in one second [m^3/s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(milling_removal_rate(depth=0.8e-3, width=16e-3, table_feed=64e-3 / 60) * 60e6, 2)
    0.82
    """
    positive(depth=depth, width=width, table_feed=table_feed)
    return depth * width * table_feed


@formula(source="isc-d", symbols={"diameter": "D", "feed": "f", "spindle_speed": "n", "pilot": "d_1"})
def drilling_removal_rate(diameter: float, feed: float, spindle_speed: float, pilot: float = 0.0) -> float:
    """Removal rate in drilling, also into a hole that is there.

    Q = pi / 4 (D^2 - d_1^2) f n

    Parameters
    ----------
    diameter : float
        Diameter of the drill, reamer or counterbore [m]
    feed : float
        Feed in one turn [m/rev]
    spindle_speed : float
        Spindle speed [rev/s]
    pilot : float, optional
        Diameter of the hole that is there; 0 in solid metal [m]

    Returns
    -------
    Q : float
        Volume cut away in one second [m^3/s]

    Raises
    ------
    CalcError
        If diameter, feed or speed is not above zero, or the pilot not smaller than the diameter.

    Examples
    --------
    >>> round(drilling_removal_rate(diameter=22e-3, feed=0.15e-3, spindle_speed=2893.7 / 60) * 60e6)
    165
    """
    positive(diameter=diameter, feed=feed, spindle_speed=spindle_speed)
    not_negative(pilot=pilot)
    if not pilot < diameter:
        refuse("pilot", pilot, "smaller than the diameter")
    return pi / 4 * (diameter**2 - pilot**2) * feed * spindle_speed
