"""The chisel edge across the middle of a twist drill."""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive

STANDARD_POINT = 0.18
"""Chisel edge over diameter of a standard drill. Source: mh31 table 7, ftd."""
SPLIT_POINT = 0.03
"""Chisel edge over diameter of a split or thinned point. Source: mh31, ftd."""


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
