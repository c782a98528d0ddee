"""The middle of a twist drill: its web and the chisel edge across it."""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula, positive
from jobsheet.cutting.tables import along

STANDARD_POINT = 0.18
"""Chisel edge over diameter of a standard drill. Source: mh31 table 7, ftd."""
SPLIT_POINT = 0.03
"""Chisel edge over diameter of a split or thinned point. Source: mh31, ftd."""

_WEB = (
    (2, 0.50),
    (3, 0.70),
    (4, 0.90),
    (5, 1.05),
    (6, 1.20),
    (8, 1.50),
    (10, 1.75),
    (12, 2.00),
    (16, 2.5),
    (20, 2.9),
    (25, 3.4),
)  # diameter mm, web at the point mm of a new jobber drill. Source: mh-m, averages


@formula(source="mh-m", symbols={"diameter": "D"}, diameter=(2e-3, 25e-3))
def web_thickness(diameter: float) -> float:
    """Web at the point of a new jobber drill, for choosing a pilot.

    w = w(D), a table: 0.50 mm at 2 mm, 1.75 mm at 10 mm, 3.4 mm at 25 mm

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    w : float
        Thickness of the web at the point [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Examples
    --------
    >>> round(web_thickness(10e-3) * 1e3, 2)
    1.75
    """
    positive(diameter=diameter)
    return along(_WEB, diameter / reference.DIAMETER) * reference.DIAMETER


@formula(source="ftd", symbols={"web": "w"})
def chisel_edge(web: float) -> float:
    """Length of the chisel edge that a web makes.

    c = 1.15 w

    Parameters
    ----------
    web : float
        Thickness of the web at the point [m]

    Returns
    -------
    c : float
        Length of the chisel edge [m]

    Raises
    ------
    CalcError
        If the web is not above zero.

    Examples
    --------
    >>> round(chisel_edge(0.155), 2)
    0.18
    """
    positive(web=web)
    return 1.15 * web
