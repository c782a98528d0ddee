"""Tapping: torque, percent of thread, the drill for it, and what a tap and a wrench stand or
give: what only text-book examples ask.
"""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive, refuse
from jobsheet.cutting.tapping import BASIC_THREAD, FULL_THREAD


@formula(source="lub", symbols={"kc": "k_c", "pitch": "P", "major": "D"})
def simple_tap_torque(kc: float, pitch: float, major: float) -> float:
    """Torque of a cutting tap by the simple form, as a second method.

    M = k_c P^2 D / 8

    Parameters
    ----------
    kc : float
        Specific cutting force in tapping, of the set that goes with this formula [Pa]
    pitch : float
        Pitch of the thread [m/rev]
    major : float
        Major diameter of the thread [m]

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
    >>> round(simple_tap_torque(kc=2500e6, pitch=1.25e-3, major=8e-3), 2)
    3.91
    """
    positive(kc=kc, pitch=pitch, major=major)
    return kc * pitch**2 * major / 8


@formula(source="tapmatic", symbols={"major": "D", "pitch": "P", "percent": "p"})
def drill_for_percent(major: float, pitch: float, percent: float) -> float:
    """Hole that leaves a wanted percent of thread.

    d = D - 1.299 P p

    Parameters
    ----------
    major : float
        Major diameter of the thread [m]
    pitch : float
        Pitch of the thread [m/rev]
    percent : float
        Share of a full thread wanted, 0.75 for "75 %" [-]

    Returns
    -------
    d : float
        Diameter of the hole [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or no hole is left.

    Examples
    --------
    >>> round(drill_for_percent(major=8e-3, pitch=1.25e-3, percent=0.739) * 1e3, 2)
    6.8
    """
    positive(major=major, pitch=pitch, percent=percent)
    hole = major - FULL_THREAD * pitch * percent
    if not hole > 0:
        refuse("percent", percent, "small enough to leave a hole")
    return hole


@formula(source="iso68", symbols={"major": "D", "pitch": "P"})
def minor_diameter(major: float, pitch: float) -> float:
    """Basic minor diameter of the nut thread.

    D_1 = D - 1.0825 P

    Parameters
    ----------
    major : float
        Major diameter of the thread [m]
    pitch : float
        Pitch of the thread [m/rev]

    Returns
    -------
    D_1 : float
        Basic minor diameter [m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pitch too coarse for the diameter.

    Examples
    --------
    >>> round(minor_diameter(major=10e-3, pitch=1.5e-3) * 1e3, 3)
    8.376
    """
    positive(major=major, pitch=pitch)
    minor = major - BASIC_THREAD * pitch
    if not minor > 0:
        refuse("pitch", pitch, "finer: nothing is left of the diameter")
    return minor


@formula(
    source="osg",
    symbols={"thread": "l", "chamfer": "l_4", "pitch": "P"},
)
def blind_hole_depth(thread: float, chamfer: float, pitch: float) -> float:
    """Depth of full diameter to drill for a blind thread.

    t = l + l_4 + P

    Parameters
    ----------
    thread : float
        Length of good thread wanted [m]
    chamfer : float
        Length of the tap's chamfer and of its outside centre [m]
    pitch : float
        Pitch of the thread [m/rev]

    Returns
    -------
    t : float
        Depth at full diameter, without the drill's point [m]

    Raises
    ------
    CalcError
        If thread or pitch is not above zero, or the chamfer below zero.

    Examples
    --------
    >>> round(blind_hole_depth(thread=12e-3, chamfer=4e-3, pitch=1e-3) * 1e3, 3)
    17.0
    """
    positive(thread=thread, pitch=pitch)
    not_negative(chamfer=chamfer)
    return thread + chamfer + pitch
