"""What a hole smaller than the chisel edge takes off a drill's torque and thrust: nothing
at first, all of the chisel at last.
"""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse


@formula(source="estimate", symbols={"solid": "M_s", "opened": "M_o", "pilot": "d_1", "chisel": "c"})
def relieved_torque(solid: float, opened: float, pilot: float, chisel: float) -> float:
    """Torque of a drill over a hole that is smaller than its chisel edge.

    M = M_s + (M_o - M_s) d_1 / c

    Parameters
    ----------
    solid : float
        What it asks in solid metal [N*m]
    opened : float
        What it asks in a hole as wide as its chisel edge [N*m]
    pilot : float
        Diameter of the hole that is there [m]
    chisel : float
        Length of the chisel edge [m]

    Returns
    -------
    M : float
        What it asks here [N*m]

    Raises
    ------
    CalcError
        If `solid`, `opened` or `chisel` is not above zero, or `pilot` not between nought and the chisel edge.

    Notes
    -----
    Straight between two published ends: a chisel edge of which half hangs over a
    hole works with the other half.

    Examples
    --------
    >>> round(relieved_torque(solid=12.8, opened=11.0, pilot=1e-3, chisel=2e-3), 1)
    11.9
    """
    return _between(solid, opened, pilot, chisel)


@formula(source="estimate", symbols={"solid": "T_s", "opened": "T_o", "pilot": "d_1", "chisel": "c"})
def relieved_thrust(solid: float, opened: float, pilot: float, chisel: float) -> float:
    """Thrust of a drill over a hole that is smaller than its chisel edge.

    T = T_s + (T_o - T_s) d_1 / c

    Parameters
    ----------
    solid : float
        What it asks in solid metal [N]
    opened : float
        What it asks in a hole as wide as its chisel edge [N]
    pilot : float
        Diameter of the hole that is there [m]
    chisel : float
        Length of the chisel edge [m]

    Returns
    -------
    T : float
        What it asks here [N]

    Raises
    ------
    CalcError
        If `solid`, `opened` or `chisel` is not above zero, or `pilot` not between nought and the chisel edge.

    Notes
    -----
    Straight between two published ends: a chisel edge of which half hangs over a
    hole works with the other half.

    Examples
    --------
    >>> round(relieved_thrust(solid=3500, opened=1560, pilot=1e-3, chisel=2e-3), 1)
    2530.0
    """
    return _between(solid, opened, pilot, chisel)


def _between(solid: float, opened: float, pilot: float, chisel: float) -> float:
    """Straight from one end to the other."""
    positive(solid=solid, opened=opened, chisel=chisel)
    not_negative(pilot=pilot)
    if pilot > chisel:
        refuse("pilot", pilot, "no wider than the chisel edge")
    return solid + (opened - solid) * pilot / chisel
