"""Spindle speed and cutting speed, and the diameter that counts for them:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse


@formula(source="dij", symbols={"depth": "a_p", "diameter": "D"})
def ball_diameter(depth: float, diameter: float) -> float:
    """Diameter of a ball-nosed cutter at its depth of cut.

    D_e = 2 (a_p (D - a_p))^0.5

    Parameters
    ----------
    depth : float
        Depth of cut [m]
    diameter : float
        Diameter of the ball [m]

    Returns
    -------
    D_e : float
        Diameter of the cut at the surface [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or `depth` is more than half the diameter.

    Examples
    --------
    >>> round(ball_diameter(depth=1e-3, diameter=10e-3) * 1e3, 3)
    6.0
    """
    positive(depth=depth, diameter=diameter)
    if not depth <= diameter / 2:
        refuse("depth", depth, "at most half the diameter of the ball")
    result: float = 2 * (depth * (diameter - depth)) ** 0.5
    return result
