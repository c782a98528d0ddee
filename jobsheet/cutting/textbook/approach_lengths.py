"""Cutting times, and the way a tool goes beside the work's own length: what only text-book examples ask."""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse


@formula(source="kalp", symbols={"width": "d", "diameter": "D"})
def slab_approach(width: float, diameter: float) -> float:
    """Way of a slab cut from first touch to full depth, rounded up.

    A = (d D)^0.5

    Parameters
    ----------
    width : float
        Width of cut, across the cutter's axis [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    A : float
        Approach [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the width larger than the diameter.

    Examples
    --------
    >>> round(slab_approach(width=3e-3, diameter=50e-3) * 1e3, 2)
    12.25
    """
    positive(width=width, diameter=diameter)
    if not width <= diameter:
        refuse("width", width, "at most the diameter of the cutter")
    result: float = (width * diameter) ** 0.5
    return result


@formula(source="gro", symbols={"width": "w", "diameter": "D"})
def face_approach(width: float, diameter: float) -> float:
    """Way of a centred face mill from first touch to full width.

    A = (D - (D^2 - w^2)^0.5) / 2

    Parameters
    ----------
    width : float
        Width of the work [m]
    diameter : float
        Diameter of the cutter [m]

    Returns
    -------
    A : float
        Approach [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the width larger than the diameter.

    Examples
    --------
    >>> round(face_approach(width=125e-3, diameter=150e-3) * 1e3, 1)
    33.5
    """
    positive(width=width, diameter=diameter)
    if not width <= diameter:
        refuse("width", width, "at most the diameter of the cutter")
    result: float = (diameter - (diameter**2 - width**2) ** 0.5) / 2
    return result


@formula(
    source="taylor1907",
    symbols={"cutting_speed": "v_c", "constant": "C", "exponent": "n"},
    exponent=(0.08, 0.7),
)
def tool_life(cutting_speed: float, constant: float, exponent: float) -> float:
    """Life of an edge at a cutting speed.

    T = (C / v_c)^(1/n) 1 min

    Parameters
    ----------
    cutting_speed : float
        Speed of the edge over the work [m/s]
    constant : float
        Cutting speed at which the edge lasts one minute [m/s]
    exponent : float
        Taylor's exponent: high speed steel 0.08 to 0.15, carbide 0.2 to 0.3 [-]

    Returns
    -------
    T : float
        Time in the cut until the edge is worn [s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(tool_life(cutting_speed=1.0, constant=2.0, exponent=0.25) / 60, 3)
    16.0
    """
    positive(cutting_speed=cutting_speed, constant=constant, exponent=exponent)
    result: float = (constant / cutting_speed) ** (1 / exponent) * reference.TOOL_LIFE
    return result


@formula(source="common-practice", symbols={"diameter": "D", "approach": "A"})
def face_overrun(diameter: float, approach: float = 0.0) -> float:
    """Way of a face mill until its last tooth has left the work.

    O = D - A

    Parameters
    ----------
    diameter : float
        Diameter of the cutter [m]
    approach : float, optional
        Approach that is counted already [m]

    Returns
    -------
    O : float
        Way past the end of the work [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero, or the approach not between zero and the diameter.

    Examples
    --------
    >>> round(face_overrun(diameter=50e-3, approach=10e-3) * 1e3, 3)
    40.0
    """
    positive(diameter=diameter)
    not_negative(approach=approach)
    if not approach <= diameter:
        refuse("approach", approach, "at most the diameter of the cutter")
    return diameter - approach
