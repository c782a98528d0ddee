"""Specific cutting force, and the power and torque that follow from it."""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import finite, positive, refuse


@formula(
    source="kienzle1952",
    symbols={"kc11": "k_c1.1", "mc": "m_c", "wear": "W", "rake": "gamma_0"},
    h=(0.05e-3, 1e-3),
)
def specific_cutting_force(kc11: float, mc: float, h: float, wear: float = 1.0, rake: float = 0.0) -> float:
    """Specific cutting force at a chip thickness.

    k_c = k_c1.1 (h / 1 mm)^(-m_c) W (1 - gamma_0 / 100 degrees)

    Parameters
    ----------
    kc11 : float
        Force per area for a chip 1 mm thick and 1 mm wide [Pa]
    mc : float
        Rise of the force towards thin chips [-]
    h : float
        Mean undeformed chip thickness [m]
    wear : float, optional
        Factor for a worn edge; 1 sharp, 1.1 usual in milling, 1.3 dull [-]
    rake : float, optional
        Effective rake of the edge; about 1 % less force a degree [rad]

    Returns
    -------
    k_c : float
        Specific cutting force [Pa]

    Raises
    ------
    CalcError
        If `kc11`, `h` or `wear` is not above zero, or the rake not between -90 and 90 degrees.

    Notes
    -----
    The tables of constants are fitted to chips of about 0.05 to 1 mm. Thinner chips of small end mills lie
    outside:
    the force of the edge itself counts there, and the law is only the best guess.

    Examples
    --------
    >>> round(specific_cutting_force(kc11=1800e6, mc=0.25, h=0.2e-3) / 1e6)
    2692
    """
    positive(kc11=kc11, h=h, wear=wear)
    finite(mc=mc)
    if not -pi / 2 < rake < pi / 2:
        refuse("rake", rake, "between -90 and 90 degrees")
    result: float = kc11 * (h / reference.CHIP) ** -mc * wear * (1 - rake / reference.RAKE)
    return result


@formula(source="isc-m", symbols={"depth": "a_p", "width": "a_e", "table_feed": "v_f", "kc": "k_c"})
def milling_power(depth: float, width: float, table_feed: float, kc: float) -> float:
    """Power at the cutter in milling.

    P_c = a_p a_e v_f k_c

    Parameters
    ----------
    depth : float
        Depth of cut along the cutter's axis [m]
    width : float
        Width of cut across it [m]
    table_feed : float
        Feed of the table [m/s]
    kc : float
        Specific cutting force at the mean chip thickness [Pa]

    Returns
    -------
    P_c : float
        Mean power at the cutter [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    Printed as a_p a_e v_f k_c / (60 10^6) in mm, mm/min, MPa and kW.

    Examples
    --------
    >>> round(milling_power(depth=2e-3, width=80e-3, table_feed=280e-3 / 60, kc=1800e6))
    1344
    """
    positive(depth=depth, width=width, table_feed=table_feed, kc=kc)
    return depth * width * table_feed * kc


@formula(source="derived", symbols={"power": "P", "spindle_speed": "n"})
def torque_from_power(power: float, spindle_speed: float) -> float:
    """Torque that a power is at a spindle speed.

    M = P / (2 pi n)

    Parameters
    ----------
    power : float
        Power at the spindle [W]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    M : float
        Mean torque at the spindle [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    Printed as M = 9550 P / n with kW and rev/min; the exact number is 60000 / (2 pi) = 9549.3.

    Examples
    --------
    >>> round(torque_from_power(power=42.3, spindle_speed=320 / 60), 2)
    1.26
    """
    positive(power=power, spindle_speed=spindle_speed)
    return power / (2 * pi * spindle_speed)


@formula(source="derived", symbols={"torque": "M", "spindle_speed": "n"})
def power_from_torque(torque: float, spindle_speed: float) -> float:
    """Power that a torque is at a spindle speed.

    P = 2 pi n M

    Parameters
    ----------
    torque : float
        Torque at the spindle [N*m]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    P : float
        Power at the spindle [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(power_from_torque(torque=3.82, spindle_speed=300 / 60))
    120
    """
    positive(torque=torque, spindle_speed=spindle_speed)
    return 2 * pi * spindle_speed * torque
