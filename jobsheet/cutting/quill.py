"""Drilling by a lever quill: the hand pushes, and the feed is what comes of it."""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.drill_factors import chisel_thrust_factor, drill_thrust_diameter_factor
from jobsheet.cutting.drill_forces import chisel_indentation, pilot_thrust
from jobsheet.cutting.drill_point import STANDARD_POINT
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, share

LEVER_EFFICIENCY = 0.85
"""Share of the hand's work that reaches the drill. Source: estimate."""


@formula(
    source="derived",
    symbols={"push": "F_h", "lever": "L", "travel": "p", "spring": "F_s", "efficiency": "eta"},
)
def thrust_from_push(
    push: float,
    lever: float,
    travel: float,
    spring: float,
    efficiency: float = LEVER_EFFICIENCY,
) -> float:
    """Thrust that a push at the quill lever gives.

    F = eta F_h 2 pi L / p - F_s

    Parameters
    ----------
    push : float
        Push at the grip: 100 N comfortable, 200 N strong for seconds [N]
    lever : float
        From the pinion's centre to the grip [m]
    travel : float
        Quill travel in one turn of the lever [m/rev]
    spring : float
        Force of the return spring [N]
    efficiency : float, optional
        Share of the hand's work that reaches the quill [-]

    Returns
    -------
    F : float
        Thrust at the drill; below zero where the push does not overcome the spring [N]

    Raises
    ------
    CalcError
        If push, lever or travel is not above zero, the spring below zero, or the efficiency not a share of 1.

    Examples
    --------
    >>> round(thrust_from_push(push=100, lever=180e-3, travel=75e-3, spring=15))
    1267
    """
    positive(push=push, lever=lever, travel=travel)
    not_negative(spring=spring)
    share(efficiency=efficiency)
    return efficiency * push * 2 * pi * lever / travel - spring


@formula(
    source="derived",
    symbols={"thrust": "F", "lever": "L", "travel": "p", "spring": "F_s", "efficiency": "eta"},
)
def push_from_thrust(
    thrust: float,
    lever: float,
    travel: float,
    spring: float,
    efficiency: float = LEVER_EFFICIENCY,
) -> float:
    """Push at the quill lever that a thrust asks.

    F_h = (F + F_s) p / (2 pi L eta)

    Parameters
    ----------
    thrust : float
        Thrust at the drill [N]
    lever : float
        From the pinion's centre to the grip [m]
    travel : float
        Quill travel in one turn of the lever [m/rev]
    spring : float
        Force of the return spring [N]
    efficiency : float, optional
        Share of the hand's work that reaches the quill [-]

    Returns
    -------
    F_h : float
        Push at the grip [N]

    Raises
    ------
    CalcError
        If thrust, lever or travel is not above zero, the spring below zero, or the efficiency not a share of
        1.

    Examples
    --------
    >>> round(push_from_thrust(thrust=991, lever=180e-3, travel=75e-3, spring=15))
    78
    """
    positive(thrust=thrust, lever=lever, travel=travel)
    not_negative(spring=spring)
    share(efficiency=efficiency)
    return (thrust + spring) * travel / (2 * pi * lever * efficiency)


@formula(
    source="derived",
    symbols={"thrust": "F", "kd": "K_d", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def feed_from_thrust(
    thrust: float,
    kd: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Feed that a thrust gives a drill in solid metal.

    f = ((F - J) / l_1)^1.25 mm;  J = t_2 K_d (D / 1 mm)^2 x^2 W;  l_1 = t_1 K_d (D / 1 mm)^0.8 B W

    Parameters
    ----------
    thrust : float
        Thrust at the drill [N]
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
    f : float
        Feed in one turn; zero where the drill does not bite [m/rev]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Notes
    -----
    The thrust of the drilling law, turned round. A thrust that only presses the chisel in gives no feed:
    pilot it.

    Examples
    --------
    >>> round(feed_from_thrust(thrust=2550, kd=20000, diameter=10e-3, wear=1.3) * 1e3, 3)
    0.115
    """
    positive(thrust=thrust, kd=kd, wear=wear)
    bite = thrust - chisel_indentation(kd=kd, diameter=diameter, chisel_ratio=chisel_ratio, wear=wear)
    if not bite > 0:
        return 0 * reference.FEED
    size = drill_thrust_diameter_factor(diameter)
    lips = reference.DRILL_LIPS * kd * size * chisel_thrust_factor(chisel_ratio) * wear
    result: float = reference.FEED * (bite / lips) ** 1.25
    return result


@formula(
    source="derived",
    symbols={"thrust": "F", "kd": "K_d", "diameter": "D", "pilot": "d_1", "edges": "z", "wear": "W"},
    diameter=(1.6e-3, 40e-3),
    edges=(2, 6),
)
def pilot_feed_from_thrust(
    thrust: float,
    kd: float,
    diameter: float,
    pilot: float,
    *,
    edges: float = 2,
    wear: float = 1.0,
) -> float:
    """Feed that a thrust gives a drill in a hole that is there.

    f = (F / t)^1.25 mm;  t = t_1 K_d (D / 1 mm)^0.8 (z/2)^0.2 (1 - y) / (1 + y)^0.2 W;  y = d_1 / D

    Parameters
    ----------
    thrust : float
        Thrust at the drill [N]
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    diameter : float
        Diameter of the drill [m]
    pilot : float
        Diameter of the hole that is there [m]
    edges : float, optional
        Cutting edges [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    f : float
        Feed in one turn [m/rev]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the drill.

    Examples
    --------
    >>> round(pilot_feed_from_thrust(thrust=900, kd=20000, diameter=10e-3, pilot=4e-3, wear=1.3) * 1e3, 2)
    0.13
    """
    positive(thrust=thrust)
    at_one = pilot_thrust(kd=kd, feed=reference.FEED, diameter=diameter, pilot=pilot, edges=edges, wear=wear)
    result: float = reference.FEED * (thrust / at_one) ** 1.25
    return result
