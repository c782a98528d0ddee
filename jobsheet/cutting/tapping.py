"""Tapping: torque, percent of thread, the drill for it, and what a tap and a wrench stand or give."""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import angle_below, positive, refuse
from jobsheet.cutting.trig import tan

FULL_THREAD = 1.2990381
"""Double depth of a 100 % thread over the pitch: 0.75 H twice. Source: derived, 3^0.5 x 0.75."""
BASIC_THREAD = 1.0825318
"""Major less basic minor diameter of the nut over the pitch: 5/8 H twice. Source: iso68."""


def _hole(hole: float, major: float) -> None:
    positive(hole=hole, major=major)
    if not hole < major:
        refuse("hole", hole, "smaller than the thread")


@formula(
    source="yam",
    symbols={
        "kc": "k_c",
        "tap_factor": "K",
        "major": "D",
        "hole": "D_o",
        "condition": "q",
        "half_angle": "theta",
    },
)
def tap_torque(
    kc: float,
    tap_factor: float,
    major: float,
    hole: float,
    *,
    condition: float = 1.0,
    half_angle: float = pi / 6,
) -> float:
    """Torque of a cutting tap.

    M = tan(theta) k_c K q (D - D_o)^2 (D + 2 D_o) / 24

    Parameters
    ----------
    kc : float
        Specific cutting force in tapping, of the set that goes with this formula [Pa]
    tap_factor : float
        Number for the style of tap, the work and the pitch series [-]
    major : float
        Major diameter of the thread [m]
    hole : float
        Diameter of the drilled hole [m]
    condition : float, optional
        Factor for the condition: 1 sharp and oiled, 1.3 used, 1.6 to 2 dull, at most 3 in all [-]
    half_angle : float, optional
        Half the angle of the thread, 30 degrees for metric and unified [rad]

    Returns
    -------
    M : float
        Torque at the tap [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the hole not smaller than the thread.

    Notes
    -----
    Understates the tight hole: from 60 to 72 % of thread it gives 1.41 times the torque, a measured case 2
    times.
    Its k_c is not interchangeable with that of `simple_tap_torque`.

    Examples
    --------
    >>> round(tap_torque(kc=3700e6, tap_factor=1.35, major=6e-3, hole=5e-3), 2)
    1.92
    """
    _hole(hole, major)
    positive(kc=kc, tap_factor=tap_factor, condition=condition)
    angle_below(pi / 2, half_angle=half_angle)
    return tan(half_angle) * kc * tap_factor * condition * (major - hole) ** 2 * (major + 2 * hole) / 24


@formula(source="yam", symbols={"torque": "M", "factor": "b"}, factor=(2, 3))
def form_tap_torque(torque: float, factor: float = 2.5) -> float:
    """Torque of a tap that forms its thread.

    M_f = b M

    Parameters
    ----------
    torque : float
        Torque of a cutting tap of the same size [N*m]
    factor : float, optional
        How much more a forming tap asks [-]

    Returns
    -------
    M_f : float
        Torque at the forming tap [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> form_tap_torque(torque=2.0)
    5.0
    """
    positive(torque=torque, factor=factor)
    return factor * torque


@formula(source="tapmatic", symbols={"major": "D", "hole": "d", "pitch": "P"})
def percent_of_thread(major: float, hole: float, pitch: float) -> float:
    """Percent of thread that a hole leaves, as a share of 1.

    p = (D - d) / (1.299 P)

    Parameters
    ----------
    major : float
        Major diameter of the thread [m]
    hole : float
        Diameter of the hole [m]
    pitch : float
        Pitch of the thread [m/rev]

    Returns
    -------
    p : float
        Share of a full thread, 0.75 for "75 %" [-]

    Raises
    ------
    CalcError
        If an input is not above zero, or the hole not smaller than the thread.

    Notes
    -----
    100 % is three quarters of the sharp thread's height on each side, the depth of an external thread; the
    basic internal thread has 83.3 % by this count.

    Examples
    --------
    >>> round(percent_of_thread(major=8e-3, hole=6.8e-3, pitch=1.25e-3) * 100, 1)
    73.9
    """
    _hole(hole, major)
    positive(pitch=pitch)
    return (major - hole) / (FULL_THREAD * pitch)


@formula(source="estimate", symbols={"major": "D"}, major=(2e-3, 24e-3))
def tap_strength(major: float) -> float:
    """Torque at which a tap of high speed steel breaks.

    M_s = pi / 16 tau (0.55 D)^3;  tau = 1200 MPa

    Parameters
    ----------
    major : float
        Major diameter of the thread [m]

    Returns
    -------
    M_s : float
        Torsional strength, right within a factor of 1.6 either way [N*m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Notes
    -----
    0.55 D is the round bar as strong as the fluted core; no published table was found.

    Examples
    --------
    >>> round(tap_strength(major=6e-3), 2)
    8.47
    """
    positive(major=major)
    return pi / 16 * reference.HSS_SHEAR * (0.55 * major) ** 3


@formula(source="estimate", symbols={"force": "F_h", "length": "L"})
def wrench_torque(force: float, length: float) -> float:
    """Torque that two hands give on a tap wrench.

    M = F_h L

    Parameters
    ----------
    force : float
        Force of each hand: 30 N comfortable, 60 N strong [N]
    length : float
        Whole length of the wrench [m]

    Returns
    -------
    M : float
        Torque at the tap [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(wrench_torque(force=30, length=180e-3), 1)
    5.4
    """
    positive(force=force, length=length)
    return force * length
