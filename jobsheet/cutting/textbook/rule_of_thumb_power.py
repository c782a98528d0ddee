"""Power by the energy that a volume of metal asks: an independent second method:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive


@formula(source="dp-f", symbols={"removal_rate": "Q", "cut_per_joule": "x"})
def thumb_power(removal_rate: float, cut_per_joule: float) -> float:
    """Power at the cutter by a maker's rule of thumb.

    P_c = Q / x

    Parameters
    ----------
    removal_rate : float
        Volume cut away in one second [m^3/s]
    cut_per_joule : float
        Volume that one joule cuts: steel 0.4, iron 0.5, aluminium 2 mm^3 [m^3/J]

    Returns
    -------
    P_c : float
        Power at the cutter [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    Printed as a_p a_e v_f / x in kW, with x 24000 steel, 30000 iron, 120000 aluminium.

    Examples
    --------
    >>> round(thumb_power(removal_rate=20000e-9 / 60, cut_per_joule=0.4e-9))
    833
    """
    positive(removal_rate=removal_rate, cut_per_joule=cut_per_joule)
    return removal_rate / cut_per_joule
