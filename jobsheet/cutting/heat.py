"""Growth by warming: a part measured warm is not the part on the drawing."""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import finite, positive

ALUMINIUM_EXPANSION = 22e-6
"""Growth of wrought aluminium of the 6000 kind for one kelvin [1/K], of 22 to 23e-6.

Source: mh-m, remembered."""
STEEL_EXPANSION = 12e-6
"""Growth of mild steel for one kelvin [1/K].

Source: mh-m, remembered."""


@formula(source="derived", symbols={"length": "l", "rise": "dT", "coefficient": "alpha"})
def expansion(length: float, rise: float, coefficient: float) -> float:
    """Growth of a length by warming.

    dl = alpha l dT

    Parameters
    ----------
    length : float
        Length when cold [m]
    rise : float
        Rise of temperature; below zero when the part is colder [K]
    coefficient : float
        Growth of the material for one kelvin [1/K]

    Returns
    -------
    dl : float
        Growth [m]

    Raises
    ------
    CalcError
        If the length is not above zero, or another input not finite.

    Examples
    --------
    >>> round(expansion(length=100e-3, rise=10, coefficient=22e-6) * 1e3, 3)
    0.022
    """
    positive(length=length)
    finite(rise=rise, coefficient=coefficient)
    return coefficient * length * rise
