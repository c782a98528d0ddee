"""The hand at the wheel: how fast to wind, how hard, and what a stopwatch says."""

from __future__ import annotations

from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, share


@formula(source="derived", symbols={"feed": "v_f", "lead": "s"})
def handle_speed(feed: float, lead: float) -> float:
    """Pace of the handle for a feed.

    N = v_f / s

    Parameters
    ----------
    feed : float
        Feed of table, saddle, knee or quill [m/s]
    lead : float
        Way for one turn of the handle [m/rev]

    Returns
    -------
    N : float
        Turns of the handle in one second [rev/s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(handle_speed(feed=64e-3 / 60, lead=2.5e-3) * 60, 1)
    25.6
    """
    positive(feed=feed, lead=lead)
    return feed / lead


@formula(source="derived", symbols={"feed": "v_f", "lead": "s"})
def seconds_a_turn(feed: float, lead: float) -> float:
    """Time for one turn of the handle.

    t_1 = s / v_f

    Parameters
    ----------
    feed : float
        Feed of table, saddle, knee or quill [m/s]
    lead : float
        Way for one turn of the handle [m/rev]

    Returns
    -------
    t_1 : float
        Time for one turn [s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(seconds_a_turn(feed=64e-3 / 60, lead=2.5e-3), 2)
    2.34
    """
    positive(feed=feed, lead=lead)
    return lead / feed


@formula(source="derived", symbols={"turns": "k", "lead": "s", "time": "t"})
def stopwatch_feed(turns: float, lead: float, time: float) -> float:
    """Feed that a stopwatch found.

    v_f = k s / t

    Parameters
    ----------
    turns : float
        Turns of the handle that were counted [-]
    lead : float
        Way for one turn of the handle [m/rev]
    time : float
        Time they took [s]

    Returns
    -------
    v_f : float
        Feed [m/s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(stopwatch_feed(turns=10, lead=2.5e-3, time=23.4) * 60e3, 1)
    64.1
    """
    positive(turns=turns, lead=lead, time=time)
    return turns * lead / time


@formula(source="derived", symbols={"force": "F", "lead": "s", "efficiency": "eta"})
def handle_torque(force: float, lead: float, efficiency: float) -> float:
    """Torque at a handle that moves a slide against a force.

    M = F s / (2 pi eta)

    Parameters
    ----------
    force : float
        Mean force along the slide, cut and gib drag together [N]
    lead : float
        Way for one turn of the handle [m/rev]
    efficiency : float
        Share of the hand's work that reaches the slide: 0.2 to 0.4 for a plain screw [-]

    Returns
    -------
    M : float
        Torque at the handle [N*m]

    Raises
    ------
    CalcError
        If force or lead is not above zero, or the efficiency not a share of 1.

    Examples
    --------
    >>> round(handle_torque(force=900, lead=2.5e-3, efficiency=0.3), 2)
    1.19
    """
    positive(force=force, lead=lead)
    share(efficiency=efficiency)
    return force * lead / (2 * pi * efficiency)


@formula(source="derived", symbols={"force": "F", "lead": "s", "efficiency": "eta", "radius": "r"})
def crank_force(force: float, lead: float, efficiency: float, radius: float) -> float:
    """Force of the hand at the crank of a slide.

    F_c = F s / (2 pi eta r)

    Parameters
    ----------
    force : float
        Mean force along the slide, cut and gib drag together [N]
    lead : float
        Way for one turn of the handle [m/rev]
    efficiency : float
        Share of the hand's work that reaches the slide: 0.2 to 0.4 for a plain screw [-]
    radius : float
        From the screw's centre to the grip [m]

    Returns
    -------
    F_c : float
        Force at the grip [N]

    Raises
    ------
    CalcError
        If force, lead or radius is not above zero, or the efficiency not a share of 1.

    Examples
    --------
    >>> round(crank_force(force=900, lead=2.5e-3, efficiency=0.3, radius=55e-3), 1)
    21.7
    """
    positive(radius=radius)
    return handle_torque(force, lead, efficiency) / radius
