"""Feed per tooth, feed per turn, and the feed of the table or quill."""

from __future__ import annotations

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive


@formula(source="mit-f", symbols={"feed_per_tooth": "f_z", "teeth": "z", "spindle_speed": "n"})
def table_feed(feed_per_tooth: float, teeth: float, spindle_speed: float) -> float:
    """Table feed from the feed per tooth.

    v_f = f_z z n

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    teeth : float
        Teeth that cut [-]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    v_f : float
        Feed of the table [m/s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(table_feed(feed_per_tooth=0.05e-3, teeth=4, spindle_speed=320 / 60) * 60e3, 1)
    64.0
    """
    positive(feed_per_tooth=feed_per_tooth, teeth=teeth, spindle_speed=spindle_speed)
    return feed_per_tooth * teeth * spindle_speed


@formula(source="mit-f", symbols={"table_feed": "v_f", "teeth": "z", "spindle_speed": "n"})
def feed_per_tooth(table_feed: float, teeth: float, spindle_speed: float) -> float:
    """Feed per tooth that a table feed gives.

    f_z = v_f / (z n)

    Parameters
    ----------
    table_feed : float
        Feed of the table [m/s]
    teeth : float
        Teeth that cut [-]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    f_z : float
        Feed per tooth [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(feed_per_tooth(table_feed=500e-3 / 60, teeth=10, spindle_speed=500 / 60) * 1e3, 6)
    0.1
    """
    positive(table_feed=table_feed, teeth=teeth, spindle_speed=spindle_speed)
    return table_feed / (teeth * spindle_speed)


@formula(source="mit-f", symbols={"feed_per_tooth": "f_z", "teeth": "z"})
def feed_per_turn(feed_per_tooth: float, teeth: float) -> float:
    """Feed per turn from the feed per tooth.

    f = f_z z

    Parameters
    ----------
    feed_per_tooth : float
        Feed per tooth [m]
    teeth : float
        Teeth or edges that cut [-]

    Returns
    -------
    f : float
        Feed in one turn of the spindle [m/rev]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(feed_per_turn(feed_per_tooth=0.004, teeth=32), 3)
    0.128
    """
    positive(feed_per_tooth=feed_per_tooth, teeth=teeth)
    return feed_per_tooth * teeth


@formula(source="mit-f", symbols={"feed": "f", "spindle_speed": "n"})
def axial_feed(feed: float, spindle_speed: float) -> float:
    """Speed at which a drill, reamer, boring head or tap goes down.

    v_f = f n

    Parameters
    ----------
    feed : float
        Feed in one turn; for a tap its pitch [m/rev]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    v_f : float
        Speed along the spindle [m/s]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(axial_feed(feed=0.2e-3, spindle_speed=1350 / 60) * 60e3)
    270
    """
    positive(feed=feed, spindle_speed=spindle_speed)
    return feed * spindle_speed


@formula(source="mit-f", symbols={"table_feed": "v_f", "spindle_speed": "n"})
def feed_from_speed(table_feed: float, spindle_speed: float) -> float:
    """Feed per turn that a speed of table or quill gives.

    f = v_f / n

    Parameters
    ----------
    table_feed : float
        Speed of table or quill [m/s]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    f : float
        Feed in one turn of the spindle [m/rev]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(feed_from_speed(table_feed=270e-3 / 60, spindle_speed=1350 / 60) * 1e3, 3)
    0.2
    """
    positive(table_feed=table_feed, spindle_speed=spindle_speed)
    return table_feed / spindle_speed
