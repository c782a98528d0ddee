"""Factors of a twist drill's torque and thrust: feed, diameter, edges, and the chisel edge's share.

The law is Shaw and Oxford's in closed form; the handbook's factor tables are the
same law, so they serve as tests.
"""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse


def _point(chisel_ratio: float) -> None:
    if not 0 <= chisel_ratio < 1:
        refuse("chisel_ratio", chisel_ratio, "between 0 and 1")


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_torque_factor(chisel_ratio: float) -> float:
    """Factor A: what the chisel edge adds to the torque.

    A = (1 - x^2) / (1 + x)^0.2 + 3.2 x^1.8

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    A : float
        Factor on the torque [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Notes
    -----
    Table 7 of mh31 prints 1.080 at 0.15, which is off this curve by 2.3 %: probably a misprint for 1.056.

    Examples
    --------
    >>> round(chisel_torque_factor(0.18), 3)
    1.082
    """
    _point(chisel_ratio)
    result: float = (1 - chisel_ratio**2) / (1 + chisel_ratio) ** 0.2 + 3.2 * chisel_ratio**1.8
    return result


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_thrust_factor(chisel_ratio: float) -> float:
    """Factor B: what the chisel edge adds to the thrust by cutting.

    B = (1 - x) / (1 + x)^0.2 + 2.2 x^0.8

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    B : float
        Factor on the thrust [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Examples
    --------
    >>> round(chisel_thrust_factor(0.18), 3)
    1.351
    """
    _point(chisel_ratio)
    result: float = (1 - chisel_ratio) / (1 + chisel_ratio) ** 0.2 + 2.2 * chisel_ratio**0.8
    return result


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_indentation_factor(chisel_ratio: float) -> float:
    """Factor J: what the middle of the chisel adds to the thrust by being pressed in.

    J = x^2

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    J : float
        Factor on the thrust that does not depend on feed [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Examples
    --------
    >>> round(chisel_indentation_factor(0.18), 4)
    0.0324
    """
    _point(chisel_ratio)
    return chisel_ratio**2


@formula(source="mh31", symbols={"feed": "f"}, feed=(0.01e-3, 1.25e-3))
def drill_feed_factor(feed: float) -> float:
    """Feed factor of the drilling laws.

    F_f = (f / 1 mm)^0.8

    Parameters
    ----------
    feed : float
        Feed in one turn [m/rev]

    Returns
    -------
    F_f : float
        Feed factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the feed is not above zero.

    Examples
    --------
    >>> round(drill_feed_factor(0.25e-3), 3)
    0.33
    """
    positive(feed=feed)
    result: float = (feed / reference.FEED) ** 0.8
    return result


@formula(source="mh31", symbols={"diameter": "D"}, diameter=(1.6e-3, 25.5e-3))
def drill_thrust_diameter_factor(diameter: float) -> float:
    """Diameter factor of the thrust.

    F_T = (D / 1 mm)^0.8

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    F_T : float
        Diameter factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Notes
    -----
    Table 9 of mh31 prints 5.96 at 8.8 mm; the law gives 5.70, and so do its neighbours: a misprint.

    Examples
    --------
    >>> round(drill_thrust_diameter_factor(16e-3), 2)
    9.19
    """
    positive(diameter=diameter)
    result: float = (diameter / reference.DIAMETER) ** 0.8
    return result


@formula(source="mh31", symbols={"diameter": "D"}, diameter=(1.6e-3, 25.5e-3))
def drill_torque_diameter_factor(diameter: float) -> float:
    """Diameter factor of the torque.

    F_M = (D / 1 mm)^1.8

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    F_M : float
        Diameter factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Examples
    --------
    >>> round(drill_torque_diameter_factor(16e-3))
    147
    """
    positive(diameter=diameter)
    result: float = (diameter / reference.DIAMETER) ** 1.8
    return result


@formula(source="so57", symbols={"edges": "z"}, edges=(2, 6))
def edges_factor(edges: float) -> float:
    """Factor for more than two cutting edges at the same feed per turn.

    k_z = (z / 2)^0.2

    Parameters
    ----------
    edges : float
        Cutting edges [-]

    Returns
    -------
    k_z : float
        Factor on thrust and torque [-]

    Raises
    ------
    CalcError
        If the number is not above zero.

    Examples
    --------
    >>> round(edges_factor(4), 2)
    1.15
    """
    positive(edges=edges)
    result: float = (edges / 2) ** 0.2
    return result
