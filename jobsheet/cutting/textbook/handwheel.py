"""The hand at the wheel: how fast to wind, how hard, and what a stopwatch says:
what only text-book examples ask.
"""

from __future__ import annotations

from math import floor

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import not_negative, positive


@formula(source="derived", symbols={"distance": "l", "lead": "s"})
def handle_turns(distance: float, lead: float) -> float:
    """Turns of the handle for a distance.

    k = l / s

    Parameters
    ----------
    distance : float
        Way to go [m]
    lead : float
        Way for one turn of the handle [m/rev]

    Returns
    -------
    k : float
        Turns, with their fraction [-]

    Raises
    ------
    CalcError
        If the distance is below zero or the lead not above zero.

    Examples
    --------
    >>> round(handle_turns(distance=30e-3, lead=2.5e-3), 6)
    12.0
    """
    not_negative(distance=distance)
    positive(lead=lead)
    return distance / lead


@formula(source="derived", symbols={"distance": "l", "lead": "s"})
def past_last_turn(distance: float, lead: float) -> float:
    """What the dial shows after the last whole turn.

    r = l - s floor(l / s)

    Parameters
    ----------
    distance : float
        Way to go [m]
    lead : float
        Way for one turn of the handle [m/rev]

    Returns
    -------
    r : float
        Way past the last whole turn [m]

    Raises
    ------
    CalcError
        If the distance is below zero or the lead not above zero.

    Notes
    -----
    A distance within a thousand-millionth of a turn of a whole turn counts as that turn.

    Examples
    --------
    >>> round(past_last_turn(distance=75e-3, lead=0.2 * 25.4e-3) / 25.4e-3, 4)
    0.1528
    """
    not_negative(distance=distance)
    positive(lead=lead)
    turns = floor(float(distance / lead) + 1e-9)
    rest = distance - turns * lead
    return rest if rest > 0 else 0 * lead
