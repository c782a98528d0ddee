"""What a spindle can give at each speed, from the motor's plate."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, share


@formula(source="derived", symbols={"power": "P", "efficiency": "eta", "spindle_speed": "n"})
def constant_power_torque(power: float, efficiency: float, spindle_speed: float) -> float:
    """Torque of a motor behind belts or gears: the same power at every step.

    M = P eta / (2 pi n)

    Parameters
    ----------
    power : float
        Power at the motor's shaft, as on the plate [W]
    efficiency : float
        Share of it that reaches the spindle [-]
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
    >>> round(constant_power_torque(power=550, efficiency=0.81, spindle_speed=320 / 60), 1)
    13.3
    """
    positive(power=power, spindle_speed=spindle_speed)
    share(efficiency=efficiency)
    return power * efficiency / (2 * pi * spindle_speed)
