"""Power by the energy that a volume of metal asks: an independent second method.

The energy Kp of a material is given for a feed of 0.3 mm; a factor C corrects for other feeds and W for wear.
A maker's rule of thumb stands at the end.
"""

from __future__ import annotations

from jobsheet.cutting import reference
from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive
from jobsheet.cutting.tables import along, along_logs

FEED_FACTORS = (
    (0.02, 1.70),
    (0.05, 1.40),
    (0.07, 1.30),
    (0.10, 1.25),
    (0.12, 1.20),
    (0.15, 1.15),
    (0.18, 1.11),
    (0.20, 1.08),
    (0.22, 1.06),
    (0.25, 1.04),
    (0.30, 1.00),
    (0.40, 0.94),
    (0.50, 0.90),
    (0.60, 0.87),
    (0.80, 0.82),
    (1.00, 0.78),
)
"""Feed in mm, a tooth in milling and a turn in drilling; factor C. Source: mh-m."""

WEAR_FACTORS = {
    "sharp": 1.0,
    "end milling": 1.1,
    "slab milling": 1.1,
    "face milling, light": 1.1,
    "face milling, medium": 1.25,
    "face milling, heavy": 1.45,
    "drilling": 1.3,
    "drilling, dull": 1.5,
}
"""Factor W by kind of cut; heavy face milling is the middle of 1.30 to 1.60. Source: mh-m."""

EFFICIENCIES = {
    "belt": 0.90,
    "back gear": 0.75,
    "geared head": 0.75,
    "hydraulic": 0.75,
}
"""Share of the motor's power at the spindle; the last two are the middle of a range. Source: mh-m."""


@formula(source="mh-m", symbols={"feed": "f"}, feed=(0.02e-3, 1e-3))
def unit_power_feed_factor(feed: float) -> float:
    """Factor of the unit power for the feed.

    C = C(f), a table: 1.70 at 0.02 mm, 1.25 at 0.10 mm, 1 at 0.30 mm, 0.78 at 1 mm

    Parameters
    ----------
    feed : float
        Feed per tooth in milling, a turn in drilling [m]

    Returns
    -------
    C : float
        Feed factor [-]

    Raises
    ------
    CalcError
        If the feed is not above zero.

    Notes
    -----
    Straight between the printed points. Outside them the power law of the last two points goes on.

    Examples
    --------
    >>> unit_power_feed_factor(0.30e-3)
    1.0
    >>> round(unit_power_feed_factor(0.06e-3), 3)
    1.35
    """
    positive(feed=feed)
    size = float(feed / reference.FEED)
    if FEED_FACTORS[0][0] <= size <= FEED_FACTORS[-1][0]:
        return along(FEED_FACTORS, size)
    return along_logs(FEED_FACTORS, size)


@formula(
    source="mh-m",
    symbols={"energy": "K_p", "feed_factor": "C", "removal_rate": "Q", "wear": "W"},
)
def unit_power(energy: float, feed_factor: float, removal_rate: float, wear: float = 1.0) -> float:
    """Power at the cutter from the energy of a volume.

    P_c = K_p C Q W

    Parameters
    ----------
    energy : float
        Energy for one volume of the work, of a sharp tool at 0.3 mm feed [J/m^3]
    feed_factor : float
        Factor for the feed [-]
    removal_rate : float
        Volume cut away in one second [m^3/s]
    wear : float, optional
        Factor for wear: 1 sharp, 1.1 milling, 1.3 drilling [-]

    Returns
    -------
    P_c : float
        Power at the cutter [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(unit_power(energy=2.02e9, feed_factor=1.25, removal_rate=1e-6), 6)
    2525.0
    """
    positive(energy=energy, feed_factor=feed_factor, removal_rate=removal_rate, wear=wear)
    return energy * feed_factor * removal_rate * wear
