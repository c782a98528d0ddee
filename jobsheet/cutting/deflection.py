"""How far cutter and machine give way, and the error that leaves on a wall."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import finite, positive, refuse, share

HSS_MODULUS = 207e9
"""Modulus of elasticity of high speed steel [Pa], of 200 to 210 GPa.

Source: kalp, remembered."""
CARBIDE_MODULUS = 580e9
"""Modulus of elasticity of carbide with 10 % cobalt [Pa], of 550 to 600 GPa.

Source: kalp, remembered."""
FLUTED = 0.80
"""Round bar as stiff as a fluted end mill of 2 or 4 flutes, over its diameter. Source: kv."""


@formula(source="kv", symbols={"diameter": "D", "ratio": "q"})
def equivalent_diameter(diameter: float, ratio: float = FLUTED) -> float:
    """Diameter of the round bar that bends like a fluted cutter.

    D_e = q D

    Parameters
    ----------
    diameter : float
        Diameter of the cutter [m]
    ratio : float, optional
        Share of the diameter that counts; 0.80 for 2 and 4 flutes [-]

    Returns
    -------
    D_e : float
        Equivalent diameter [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero, or the ratio not a share of 1.

    Examples
    --------
    >>> round(equivalent_diameter(12e-3) * 1e3, 3)
    9.6
    """
    positive(diameter=diameter)
    share(ratio=ratio)
    return ratio * diameter


@formula(source="beam-theory", symbols={"diameter": "d"})
def second_moment(diameter: float) -> float:
    """Second moment of area of a round bar.

    I = pi d^4 / 64

    Parameters
    ----------
    diameter : float
        Diameter of the bar [m]

    Returns
    -------
    I : float
        Second moment of area [m^4]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Examples
    --------
    >>> round(second_moment(9.6e-3) * 1e12, 1)
    416.9
    """
    positive(diameter=diameter)
    return pi * diameter**4 / 64


@formula(source="beam-theory", symbols={"modulus": "E", "diameter": "D_e", "length": "L"})
def cutter_stiffness(modulus: float, diameter: float, length: float) -> float:
    """Stiffness of a cutter at its tip.

    k = 3 E pi D_e^4 / (64 L^3)

    Parameters
    ----------
    modulus : float
        Modulus of elasticity: 207 GPa high speed steel, 580 GPa carbide [Pa]
    diameter : float
        Diameter of the round bar that bends like the cutter [m]
    length : float
        Stick-out, from the holder to the tip [m]

    Returns
    -------
    k : float
        Force at the tip for a deflection there [N/m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(cutter_stiffness(modulus=207e9, diameter=9.6e-3, length=30e-3) / 1e6, 2)
    9.59
    """
    positive(modulus=modulus, length=length)
    return 3 * modulus * second_moment(diameter) / length**3


@formula(source="derived", symbols={"force": "F", "stiffness": "k"})
def deflection(force: float, stiffness: float) -> float:
    """How far a part gives way under a force, with the force's sign.

    delta = F / k

    Parameters
    ----------
    force : float
        Force [N]
    stiffness : float
        Stiffness in its direction [N/m]

    Returns
    -------
    delta : float
        Deflection [m]

    Raises
    ------
    CalcError
        If the stiffness is not above zero, or the force not finite.

    Examples
    --------
    >>> round(deflection(force=11, stiffness=5e6) * 1e6, 1)
    2.2
    """
    finite(force=force)
    positive(stiffness=stiffness)
    return force / stiffness


@formula(source="derived", symbols={"force": "F_y", "cutter": "k_c", "frame": "k_f"})
def wall_error(force: float, cutter: float, frame: float) -> float:
    """Error of a wall from the force on the cutter while an edge makes it.

    delta = F_y (1 / k_c + 1 / k_f)

    Parameters
    ----------
    force : float
        Side force on the cutter at the moment its edge makes the wall, towards +y above zero [N]
    cutter : float
        Stiffness of the cutter [N/m]
    frame : float
        Stiffness of the machine between spindle and table [N/m]

    Returns
    -------
    delta : float
        Way of the cutter towards +y while it makes the wall [m]

    Raises
    ------
    CalcError
        If a stiffness is not above zero, or the force not finite.

    Notes
    -----
    Above some 50 µm the figure is too large, because the cutter walks out of its own chip. Work and vice are
    taken as stiff.

    Examples
    --------
    >>> round(wall_error(force=59.6, cutter=9.59e6, frame=5e6) * 1e6, 1)
    18.1
    """
    finite(force=force)
    positive(cutter=cutter, frame=frame)
    return force * (1 / cutter + 1 / frame)


@formula(
    source="beam-theory",
    symbols={"force": "F", "place": "a", "length": "L", "modulus": "E", "diameter": "d"},
)
def bar_between_points(force: float, place: float, length: float, modulus: float, diameter: float) -> float:
    """How far a round bar between two points gives way where a force stands on it.

    delta = F a^2 (L - a)^2 / (3 E I L);  I = pi d^4 / 64

    Parameters
    ----------
    force : float
        Force across the bar [N]
    place : float
        From one point to the force [m]
    length : float
        Between the points [m]
    modulus : float
        Modulus of elasticity of the bar [Pa]
    diameter : float
        Diameter of the bar [m]

    Returns
    -------
    delta : float
        Way of the bar under the force [m]

    Raises
    ------
    CalcError
        If length, modulus or diameter is not above zero, the place not inside
        the length, or the force not finite.

    Notes
    -----
    In the middle this is F L^3 / (48 E I). Points and head are taken as stiff, and the
    bar as free to turn on the points.

    Examples
    --------
    >>> round(bar_between_points(force=150, place=0.1, length=0.2, modulus=207e9, diameter=20e-3) * 1e6)
    15
    """
    finite(force=force)
    positive(length=length, modulus=modulus, diameter=diameter)
    if not 0 * length <= place <= length:
        refuse("place", place, "between the two points")
    return force * place**2 * (length - place) ** 2 / (3 * modulus * second_moment(diameter) * length)
