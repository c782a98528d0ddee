"""Drilling by a lever quill: the hand pushes, and the feed is what comes of it:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.drill_factors import chisel_torque_factor, drill_torque_diameter_factor
from jobsheet.cutting.drill_point import STANDARD_POINT
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive


@formula(
    source="derived",
    symbols={"torque": "M", "kd": "K_d", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def feed_from_torque(
    torque: float,
    kd: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Feed at which a drill in solid metal asks a torque.

    f = (M / t)^1.25 mm;  t = t_3 K_d (D / 1 mm)^1.8 A W, with A of x

    Parameters
    ----------
    torque : float
        Torque at the drill, such as half of what breaks it [N*m]
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
        Feed in one turn [m/rev]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Examples
    --------
    >>> round(feed_from_torque(torque=3.68 / 2, kd=20000, diameter=5e-3, wear=1.3) * 1e3, 3)
    0.089
    """
    positive(torque=torque, kd=kd, wear=wear)
    size = drill_torque_diameter_factor(diameter)
    at_one = reference.DRILL_TORQUE * kd * size * chisel_torque_factor(chisel_ratio) * wear
    result: float = reference.FEED * (torque / at_one) ** 1.25
    return result
