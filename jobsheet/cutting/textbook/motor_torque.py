"""What a spindle can give at each speed, from the motor's plate: what only text-book examples ask."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, share


@formula(
    source="derived",
    symbols={"power": "P", "efficiency": "eta", "base_speed": "n_b", "spindle_speed": "n"},
)
def constant_torque(power: float, efficiency: float, base_speed: float, spindle_speed: float) -> float:
    """Torque of a motor with electronic speed: the same below its base speed, falling above.

    M = P eta / (2 pi n_b) up to n_b;  P eta / (2 pi n) above

    Parameters
    ----------
    power : float
        Power at the motor's shaft, as on the plate [W]
    efficiency : float
        Share of it that reaches the spindle [-]
    base_speed : float
        Spindle speed at which the plate's power is reached [rev/s]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    M : float
        Continuous torque at the spindle [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the efficiency above 1.

    Examples
    --------
    >>> round(constant_torque(power=500, efficiency=0.8, base_speed=1000 / 60, spindle_speed=300 / 60), 2)
    3.82
    """
    positive(power=power, base_speed=base_speed, spindle_speed=spindle_speed)
    share(efficiency=efficiency)
    return power * efficiency / (2 * pi * max(base_speed, spindle_speed))


@formula(source="easa", symbols={"torque": "M", "overload": "q"})
def peak_torque(torque: float, overload: float) -> float:
    """Torque that a motor gives for seconds.

    M_p = q M

    Parameters
    ----------
    torque : float
        Continuous torque at the spindle [N*m]
    overload : float
        Short overload: single phase 1.8, three phase 2.2, inverter 1.5, brushless 1.3 [-]

    Returns
    -------
    M_p : float
        Short peak torque at the spindle [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(peak_torque(torque=7.60, overload=1.8), 1)
    13.7
    """
    positive(torque=torque, overload=overload)
    return overload * torque


@formula(source="derived", symbols={"torque": "M", "cap": "M_c"})
def capped_torque(torque: float, cap: float) -> float:
    """Torque that is left where a belt, gear or key gives out first.

    M_s = min(M, M_c)

    Parameters
    ----------
    torque : float
        Torque of the motor at the spindle [N*m]
    cap : float
        Torque at which belt, gear or key gives out [N*m]

    Returns
    -------
    M_s : float
        Torque at the spindle [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> capped_torque(torque=23.6, cap=15.0)
    15.0
    """
    positive(torque=torque, cap=cap)
    return min(torque, cap)
