"""Specific cutting force, and the power and torque that follow from it: what only text-book examples ask."""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, share


@formula(source="isc-d", symbols={"removal_rate": "Q", "kc": "k_c"})
def cutting_power(removal_rate: float, kc: float) -> float:
    """Power at the cutter from the removal rate.

    P_c = Q k_c

    Parameters
    ----------
    removal_rate : float
        Volume cut away in one second [m^3/s]
    kc : float
        Specific cutting force [Pa]

    Returns
    -------
    P_c : float
        Mean power at the cutter [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(cutting_power(removal_rate=150000e-9 / 60, kc=3e9))
    7500
    """
    positive(removal_rate=removal_rate, kc=kc)
    return removal_rate * kc


@formula(source="isc-m", symbols={"power": "P_c", "efficiency": "eta"})
def motor_power(power: float, efficiency: float) -> float:
    """Power of the motor behind the power at the cutter.

    P_m = P_c / eta

    Parameters
    ----------
    power : float
        Power at the cutter [W]
    efficiency : float
        Share of the motor's power that reaches the spindle [-]

    Returns
    -------
    P_m : float
        Power at the motor's shaft, without idling [W]

    Raises
    ------
    CalcError
        If the power is not above zero, or the efficiency not above zero and at most 1.

    Examples
    --------
    >>> round(motor_power(power=1344, efficiency=0.8))
    1680
    """
    positive(power=power)
    share(efficiency=efficiency)
    return power / efficiency


@formula(source="derived", symbols={"power": "P_c", "cutting_speed": "v_c"})
def tangential_force(power: float, cutting_speed: float) -> float:
    """Mean force along the cutting speed.

    F_t = P_c / v_c

    Parameters
    ----------
    power : float
        Power at the cutter [W]
    cutting_speed : float
        Speed of the edge over the work [m/s]

    Returns
    -------
    F_t : float
        Mean tangential force, all teeth together [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(tangential_force(power=240, cutting_speed=0.2356))
    1019
    """
    positive(power=power, cutting_speed=cutting_speed)
    return power / cutting_speed


@formula(source="derived", symbols={"kc": "k_c", "depth": "a_p", "chip": "h_max"})
def straight_tooth_force(kc: float, depth: float, chip: float) -> float:
    """Peak force of one straight tooth over the whole depth.

    F_max = k_c a_p h_max

    Parameters
    ----------
    kc : float
        Specific cutting force at the mean chip thickness [Pa]
    depth : float
        Depth of cut [m]
    chip : float
        Thickest chip [m]

    Returns
    -------
    F_max : float
        Peak tangential force of the tooth [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    For a tooth without helix. With a helix the tooth enters bit by bit and the peak is lower: up to seven
    times lower
    in a deep thin cut; `toothforce` sums it.

    Examples
    --------
    >>> round(straight_tooth_force(kc=3566e6, depth=6e-3, chip=0.04e-3))
    856
    """
    positive(kc=kc, depth=depth, chip=chip)
    return kc * depth * chip
