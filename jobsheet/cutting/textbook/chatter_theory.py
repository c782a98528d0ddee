"""Chatter: what a cut asks of the stiffness of machine and cutter, and the theory behind
it: what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive


@formula(source="derived", symbols={"spindle_speed": "n", "teeth": "z"})
def tooth_frequency(spindle_speed: float, teeth: float) -> float:
    """How often a tooth strikes.

    f_t = n z

    Parameters
    ----------
    spindle_speed : float
        Spindle speed [rev/s]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    f_t : float
        Tooth passes a second; near a mode of the frame it shakes without chatter [Hz]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(tooth_frequency(spindle_speed=560 / 60, teeth=4), 1)
    37.3
    """
    positive(spindle_speed=spindle_speed, teeth=teeth)
    return spindle_speed * teeth


@formula(source="derived", symbols={"cutting_speed": "v_c", "frequency": "f"})
def wave_length(cutting_speed: float, frequency: float) -> float:
    """Length of the wave that a vibration leaves on the work.

    lambda = v_c / f

    Parameters
    ----------
    cutting_speed : float
        Speed of the edge over the work [m/s]
    frequency : float
        Frequency of the vibration [Hz]

    Returns
    -------
    lambda : float
        Length of one wave; below about 1 mm the flank damps it [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(wave_length(cutting_speed=21 / 60, frequency=80) * 1e3, 1)
    4.4
    """
    positive(cutting_speed=cutting_speed, frequency=frequency)
    return cutting_speed / frequency


@formula(
    source="tlu",
    symbols={
        "stiffness": "k",
        "damping": "zeta",
        "kt": "K_s",
        "teeth_in_cut": "m",
        "direction": "mu",
    },
    damping=(0.005, 0.1),
)
def average_direction_limit(
    stiffness: float,
    damping: float,
    kt: float,
    teeth_in_cut: float,
    direction: float = 1.0,
) -> float:
    """Depth without chatter by the average direction of the force, worst speed.

    b = 2 k zeta (1 + zeta) / (K_s mu m)

    Parameters
    ----------
    stiffness : float
        Stiffness of the mode that vibrates [N/m]
    damping : float
        Its damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    teeth_in_cut : float
        Mean number of teeth in the cut [-]
    direction : float, optional
        Factor for the direction of force and mode; 1 is the worst [-]

    Returns
    -------
    b : float
        Depth of cut at the unluckiest speed [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(average_direction_limit(5e6, damping=0.04, kt=1800e6, teeth_in_cut=2) * 1e3, 3)
    0.116
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, teeth_in_cut=teeth_in_cut, direction=direction)
    return 2 * stiffness * damping * (1 + damping) / (kt * direction * teeth_in_cut)


@formula(
    source="derived",
    symbols={"stiffness": "k", "damping": "zeta", "kt": "K_t", "kr": "K_r", "teeth": "z"},
    damping=(0.005, 0.1),
)
def slot_limit_one_mode(stiffness: float, damping: float, kt: float, kr: float, teeth: float) -> float:
    """Depth of a slot without chatter, one mode along the feed, worst speed.

    a = 8 k zeta (1 + zeta) / (z K_t K_r)

    Parameters
    ----------
    stiffness : float
        Stiffness of the mode [N/m]
    damping : float
        Its damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    kr : float
        Radial over tangential force [-]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    a : float
        Depth of cut at the unluckiest speed [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(slot_limit_one_mode(20e6, damping=0.03, kt=600e6, kr=0.3, teeth=4) * 1e3, 3)
    6.867
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, kr=kr, teeth=teeth)
    return 8 * stiffness * damping * (1 + damping) / (teeth * kt * kr)


@formula(
    source="derived",
    symbols={"stiffness": "k", "damping": "zeta", "kt": "K_t", "kr": "K_r", "teeth": "z"},
    damping=(0.005, 0.1),
)
def slot_limit_two_modes(stiffness: float, damping: float, kt: float, kr: float, teeth: float) -> float:
    """Depth of a slot without chatter, equal modes along and across the feed, worst speed.

    a = 8 k zeta / (z K_t (1 + (1 + K_r^2)^0.5))

    Parameters
    ----------
    stiffness : float
        Stiffness of each mode [N/m]
    damping : float
        Their damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    kr : float
        Radial over tangential force [-]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    a : float
        Depth of cut at the unluckiest speed, within 1 % of the full theory [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(slot_limit_two_modes(10e6, damping=0.04, kt=1800e6, kr=0.3, teeth=4) * 1e3, 4)
    0.2174
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, kr=kr, teeth=teeth)
    result: float = 8 * stiffness * damping / (teeth * kt * (1 + (1 + kr**2) ** 0.5))
    return result
