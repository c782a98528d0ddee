"""Spindle speed and cutting speed, and the diameter that counts for them."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, not_negative, positive, refuse
from jobsheet.cutting.trig import tan


@formula(source="mit-f", symbols={"cutting_speed": "v_c", "diameter": "D"})
def spindle_speed(cutting_speed: float, diameter: float) -> float:
    """Spindle speed for a cutting speed.

    n = v_c / (pi D)

    Parameters
    ----------
    cutting_speed : float
        Speed of the edge over the work [m/s]
    diameter : float
        Diameter of the cutter where it cuts [m]

    Returns
    -------
    n : float
        Spindle speed [rev/s]

    Raises
    ------
    CalcError
        If `cutting_speed` or `diameter` is not above zero.

    Notes
    -----
    Printed as n = 1000 v_c / (pi D), in m/min, mm and rev/min.

    Examples
    --------
    >>> round(spindle_speed(cutting_speed=25 / 60, diameter=20e-3) * 60)
    398
    """
    positive(cutting_speed=cutting_speed, diameter=diameter)
    return cutting_speed / (pi * diameter)


@formula(source="mit-f", symbols={"spindle_speed": "n", "diameter": "D"})
def cutting_speed(spindle_speed: float, diameter: float) -> float:
    """Cutting speed at a spindle speed.

    v_c = pi D n

    Parameters
    ----------
    spindle_speed : float
        Spindle speed [rev/s]
    diameter : float
        Diameter of the cutter where it cuts [m]

    Returns
    -------
    v_c : float
        Speed of the edge over the work [m/s]

    Raises
    ------
    CalcError
        If `spindle_speed` or `diameter` is not above zero.

    Examples
    --------
    >>> round(cutting_speed(spindle_speed=350 / 60, diameter=125e-3) * 60, 1)
    137.4
    """
    positive(spindle_speed=spindle_speed, diameter=diameter)
    return pi * diameter * spindle_speed


@formula(source="common-practice", symbols={"cutting_speed": "v_c", "factor": "q"})
def speed_with_fluid(cutting_speed: float, factor: float) -> float:
    """Cutting speed with the fluid as it is really given.

    v = q v_c

    Parameters
    ----------
    cutting_speed : float
        Starting speed, which supposes a steady flow of fluid [m/s]
    factor : float
        Share of it for the fluid as used: 1 steady flow, 0.7 brushed or dripped, 0.5 deep holes, 0.6 dry
        steel [-]

    Returns
    -------
    v : float
        Cutting speed to use [m/s]

    Raises
    ------
    CalcError
        If `cutting_speed` is not above zero, or `factor` not above zero.

    Examples
    --------
    >>> round(speed_with_fluid(cutting_speed=34 / 60, factor=0.7) * 60, 1)
    23.8
    """
    positive(cutting_speed=cutting_speed, factor=factor)
    return factor * cutting_speed


@formula(source="derived", symbols={"depth": "a", "point_angle": "phi", "tip": "d_0"})
def cone_diameter(depth: float, point_angle: float, tip: float = 0.0) -> float:
    """Diameter of a spot drill, countersink or chamfer cutter at a depth.

    D_e = d_0 + 2 a tan(phi / 2)

    Parameters
    ----------
    depth : float
        Depth of the tip below the surface [m]
    point_angle : float
        Included angle of the cone [rad]
    tip : float, optional
        Flat or hole at the tip [m]

    Returns
    -------
    D_e : float
        Diameter at the surface [m]

    Raises
    ------
    CalcError
        If `depth` is not above zero, `tip` below zero or `point_angle` not between 0 and 180 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(cone_diameter(depth=3e-3, point_angle=radians(90)) * 1e3, 3)
    6.0
    """
    positive(depth=depth)
    not_negative(tip=tip)
    angle_below(pi, point_angle=point_angle)
    return tip + 2 * depth * tan(point_angle / 2)


@formula(source="derived", symbols={"diameter": "D_e", "point_angle": "phi", "tip": "d_0"})
def cone_depth(diameter: float, point_angle: float, tip: float = 0.0) -> float:
    """Depth at which a spot drill or countersink reaches a diameter.

    a = (D_e - d_0) / (2 tan(phi / 2))

    Parameters
    ----------
    diameter : float
        Diameter wanted at the surface [m]
    point_angle : float
        Included angle of the cone [rad]
    tip : float, optional
        Flat or hole at the tip [m]

    Returns
    -------
    a : float
        Depth of the tip below the surface [m]

    Raises
    ------
    CalcError
        If `diameter` is not above `tip`, or `point_angle` not between 0 and 180 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(cone_depth(diameter=10e-3, point_angle=radians(120)) * 1e3, 2)
    2.89
    """
    positive(diameter=diameter)
    not_negative(tip=tip)
    angle_below(pi, point_angle=point_angle)
    if not diameter > tip:
        refuse("diameter", diameter, "larger than the tip")
    return (diameter - tip) / (2 * tan(point_angle / 2))
