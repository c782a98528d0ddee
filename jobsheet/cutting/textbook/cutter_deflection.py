"""How far cutter and machine give way, and the error that leaves on a wall:
what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.deflection import second_moment
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import finite, positive, refuse


@formula(
    source="beam-theory",
    symbols={"modulus": "E", "shank": "d_s", "fluted": "D_e", "length": "L", "flute_length": "L_f"},
)
def stepped_stiffness(
    modulus: float, shank: float, fluted: float, length: float, flute_length: float
) -> float:
    """Stiffness at the tip of a cutter with a shank of another diameter.

    k = 3 E / ((L^3 - L_f^3) / I_s + L_f^3 / I_f);  I = pi d^4 / 64 of d_s and D_e

    Parameters
    ----------
    modulus : float
        Modulus of elasticity [Pa]
    shank : float
        Diameter of the shank [m]
    fluted : float
        Equivalent diameter of the fluted part [m]
    length : float
        Stick-out, from the holder to the tip [m]
    flute_length : float
        Length of the flutes, from the tip [m]

    Returns
    -------
    k : float
        Force at the tip for a deflection there [N/m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the flutes longer than the stick-out.

    Examples
    --------
    >>> round(
    ...     stepped_stiffness(207e9, shank=12e-3, fluted=9.6e-3, length=50e-3, flute_length=26e-3) / 1e6, 2
    ... )
    4.2
    """
    positive(modulus=modulus, shank=shank, fluted=fluted, length=length, flute_length=flute_length)
    if not flute_length <= length * (1 + 1e-9):
        refuse("flute_length", flute_length, "at most the stick-out")
    flutes = flute_length**3 / second_moment(fluted)
    return 3 * modulus / ((length**3 - flute_length**3) / second_moment(shank) + flutes)


@formula(source="derived", symbols={"first": "k_1", "second": "k_2"})
def series_stiffness(first: float, second: float) -> float:
    """Stiffness of two parts that bear the same force, such as cutter and machine.

    k = 1 / (1 / k_1 + 1 / k_2)

    Parameters
    ----------
    first : float
        Stiffness of the first part [N/m]
    second : float
        Stiffness of the second part [N/m]

    Returns
    -------
    k : float
        Stiffness of both together [N/m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(1e6 / series_stiffness(first=9.59e6, second=5e6), 4)
    0.3043
    """
    positive(first=first, second=second)
    return 1 / (1 / first + 1 / second)


@formula(source="derived", symbols={"error": "delta", "stiffness": "k", "slope": "K_w"})
def second_pass_error(error: float, stiffness: float, slope: float) -> float:
    """Wall error that is left after a second pass at the same dial reading.

    delta_2 = delta K_w / (k + K_w)

    Parameters
    ----------
    error : float
        Wall error of the first pass [m]
    stiffness : float
        Stiffness of cutter and machine in series [N/m]
    slope : float
        Rise of the side force with the width of cut [N/m]

    Returns
    -------
    delta_2 : float
        Error that is left [m]

    Raises
    ------
    CalcError
        If stiffness or slope is not above zero, or the error not finite.

    Examples
    --------
    >>> round(second_pass_error(error=20e-6, stiffness=3e6, slope=1e6) * 1e6, 3)
    5.0
    """
    finite(error=error)
    positive(stiffness=stiffness, slope=slope)
    return error * slope / (stiffness + slope)
