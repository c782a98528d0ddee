"""Torque and thrust of a twist drill in solid metal and of every tool that enlarges a hole.

The law is Shaw and Oxford's: lips, chisel edge and the chisel's indentation each have their part. The
factors stand in `drill_factors`. Other laws for the
same drill stand in `drill_lines`.
"""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.drill_factors import (
    chisel_indentation_factor,
    chisel_thrust_factor,
    chisel_torque_factor,
    drill_feed_factor,
    drill_thrust_diameter_factor,
    drill_torque_diameter_factor,
    edges_factor,
)
from jobsheet.cutting.drill_point import STANDARD_POINT
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse


def pilot_fits(pilot: float, diameter: float) -> None:
    """Refuse a hole that is not smaller than the drill that follows it [m]."""
    not_negative(pilot=pilot)
    if not pilot < diameter:
        refuse("pilot", pilot, "smaller than the diameter")


# --- solid metal --------------------------------------------------------------------------------------------


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def drill_torque(
    kd: float,
    feed: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Torque of a twist drill in solid metal.

    M = t_3 K_d (f / 1 mm)^0.8 (D / 1 mm)^1.8 A W;
    t_3 = 0.000025 N*m;  A = (1 - x^2) / (1 + x)^0.2 + 3.2 x^1.8

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    M : float
        Torque at the drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Examples
    --------
    >>> round(drill_torque(kd=20000, feed=0.08e-3, diameter=5e-3, wear=1.3), 2)
    1.69
    """
    positive(kd=kd, wear=wear)
    return (
        reference.DRILL_TORQUE
        * kd
        * drill_feed_factor(feed)
        * drill_torque_diameter_factor(diameter)
        * chisel_torque_factor(chisel_ratio)
        * wear
    )


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def drill_thrust(
    kd: float,
    feed: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Thrust of a twist drill in solid metal.

    T = t_1 K_d (f / 1 mm)^0.8 (D / 1 mm)^0.8 B W + t_2 K_d (D / 1 mm)^2 x^2 W;
    t_1 = 0.05 N;  t_2 = 0.007 N;  B = (1 - x) / (1 + x)^0.2 + 2.2 x^0.8

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T : float
        Force along the drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Notes
    -----
    Kienzle lines for thinned carbide points give half or less: they leave the chisel out and must not be used
    for a
    quill that is pushed by hand.

    Examples
    --------
    >>> round(drill_thrust(kd=20000, feed=0.08e-3, diameter=5e-3, wear=1.3))
    991
    """
    positive(kd=kd, wear=wear)
    cutting = (
        reference.DRILL_LIPS
        * drill_feed_factor(feed)
        * drill_thrust_diameter_factor(diameter)
        * chisel_thrust_factor(chisel_ratio)
    )
    return kd * wear * (cutting + chisel_indentation(kd=1.0, diameter=diameter, chisel_ratio=chisel_ratio))


@formula(
    source="so57",
    symbols={"kd": "K_d", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def chisel_indentation(
    kd: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Thrust below which a drill in solid metal does not bite.

    T_J = t_2 K_d (D / 1 mm)^2 x^2 W;  t_2 = 0.007 N

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T_J : float
        Part of the thrust that presses the chisel in, at any feed [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Examples
    --------
    >>> round(chisel_indentation(kd=20000, diameter=10e-3, wear=1.3))
    590
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    size = (diameter / reference.DIAMETER) ** 2
    return reference.DRILL_CHISEL * kd * size * chisel_indentation_factor(chisel_ratio) * wear


# --- a hole that is there -----------------------------------------------------------------------------------


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "pilot": "d_1", "edges": "z", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    edges=(2, 6),
)
def pilot_torque(
    kd: float,
    feed: float,
    diameter: float,
    pilot: float,
    *,
    edges: float = 2,
    wear: float = 1.0,
) -> float:
    """Torque of a drill, core drill, counterbore or reamer in a hole that is there.

    M = t_3 K_d (f / 1 mm)^0.8 (D / 1 mm)^1.8 (z/2)^0.2 (1 - y^2) / (1 + y)^0.2 W;
    t_3 = 0.000025 N*m;  y = d_1 / D

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the tool [m]
    pilot : float
        Diameter of the hole that is there, at least as wide as the chisel edge [m]
    edges : float, optional
        Cutting edges [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    M : float
        Torque at the tool [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the tool.

    Examples
    --------
    >>> round(pilot_torque(kd=20000, feed=0.14e-3, diameter=12e-3, pilot=4e-3, wear=1.3), 2)
    9.91
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    pilot_fits(pilot, diameter)
    y = pilot / diameter
    lips = (1 - y**2) / (1 + y) ** 0.2
    size = drill_torque_diameter_factor(diameter)
    force = kd * wear * drill_feed_factor(feed) * edges_factor(edges) * lips
    result: float = reference.DRILL_TORQUE * size * force
    return result


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "pilot": "d_1", "edges": "z", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    edges=(2, 6),
)
def pilot_thrust(
    kd: float,
    feed: float,
    diameter: float,
    pilot: float,
    *,
    edges: float = 2,
    wear: float = 1.0,
) -> float:
    """Thrust of a drill, core drill, counterbore or reamer in a hole that is there.

    T = t_1 K_d (f / 1 mm)^0.8 (D / 1 mm)^0.8 (z/2)^0.2 (1 - y) / (1 + y)^0.2 W;  t_1 = 0.05 N;  y = d_1 / D

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the tool [m]
    pilot : float
        Diameter of the hole that is there, at least as wide as the chisel edge [m]
    edges : float, optional
        Cutting edges [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T : float
        Force along the tool [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the tool.

    Examples
    --------
    >>> round(pilot_thrust(kd=20000, feed=0.14e-3, diameter=12e-3, pilot=4e-3, wear=1.3), -1)
    1240.0
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    pilot_fits(pilot, diameter)
    y = pilot / diameter
    lips = (1 - y) / (1 + y) ** 0.2
    size = drill_thrust_diameter_factor(diameter)
    result: float = (
        reference.DRILL_LIPS * kd * drill_feed_factor(feed) * size * edges_factor(edges) * lips * wear
    )
    return result
