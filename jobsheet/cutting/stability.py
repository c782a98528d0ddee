"""Chatter: what a cut asks of the stiffness of machine and cutter, and the theory behind it.

With guessed data of the frame the theory forbids cuts that bench and knee mills make every day, by a factor
of 8 to 20. So it serves for scaling, and as a worked page; the level comes from trials on the machine
itself.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from math import pi

from jobsheet.cutting.formula import formula, positive, refuse
from jobsheet.cutting.record import Record

REFERENCE_STIFFNESS = 9.59e6
"""Stiffness of the reference cutter, 12 mm high speed steel 30 mm out [N/m]. Source: derived."""


@formula(source="tlu", symbols={"depth": "a_p", "teeth_in_cut": "m", "kt": "K_t"})
def cutting_stiffness(depth: float, teeth_in_cut: float, kt: float) -> float:
    """Cutting stiffness: what a cut asks of machine and cutter before it chatters.

    d = a_p m K_t

    Parameters
    ----------
    depth : float
        Depth of cut [m]
    teeth_in_cut : float
        Mean number of teeth in the cut [-]
    kt : float
        Specific cutting force at the mean chip thickness, of a sharp edge [Pa]

    Returns
    -------
    d : float
        Stiffness asked [N/m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    The limit follows depth times teeth in the cut, not depth times width.

    Examples
    --------
    >>> round(cutting_stiffness(depth=2e-3, teeth_in_cut=1.0, kt=3000e6) / 1e6, 2)
    6.0
    """
    positive(depth=depth, teeth_in_cut=teeth_in_cut, kt=kt)
    return depth * teeth_in_cut * kt


@formula(source="derived", symbols={"frame": "k_f", "cutter": "k_c", "reference_cutter": "k_0"})
def cutter_scale(frame: float, cutter: float, reference_cutter: float = REFERENCE_STIFFNESS) -> float:
    """How much of the supported cutting stiffness another cutter leaves.

    S = (1 / k_f + 1 / k_0) / (1 / k_f + 1 / k_c)

    Parameters
    ----------
    frame : float
        Stiffness of the machine [N/m]
    cutter : float
        Stiffness of the cutter [N/m]
    reference_cutter : float, optional
        Stiffness of the cutter the level is given for: 12 mm high speed steel, 30 mm out [N/m]

    Returns
    -------
    S : float
        Factor on the level, 1 for the reference cutter [-]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(cutter_scale(frame=5e6, cutter=2.0715e6), 2)
    0.45
    """
    positive(frame=frame, cutter=cutter, reference_cutter=reference_cutter)
    return (1 / frame + 1 / reference_cutter) / (1 / frame + 1 / cutter)


@formula(source="derived", symbols={"spindle_speed": "n", "teeth": "z"})
def tooth_frequency(spindle_speed: float, teeth: float) -> float:
    """How often a tooth strikes.

    f_t = n z

    Parameters
    ----------
    spindle_speed : float
        Spindle speed [rev/s]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    f_t : float
        Tooth passes a second; near a mode of the frame it shakes without chatter [Hz]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(tooth_frequency(spindle_speed=560 / 60, teeth=4), 1)
    37.3
    """
    positive(spindle_speed=spindle_speed, teeth=teeth)
    return spindle_speed * teeth


@formula(source="derived", symbols={"cutting_speed": "v_c", "frequency": "f"})
def wave_length(cutting_speed: float, frequency: float) -> float:
    """Length of the wave that a vibration leaves on the work.

    lambda = v_c / f

    Parameters
    ----------
    cutting_speed : float
        Speed of the edge over the work [m/s]
    frequency : float
        Frequency of the vibration [Hz]

    Returns
    -------
    lambda : float
        Length of one wave; below about 1 mm the flank damps it [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(wave_length(cutting_speed=21 / 60, frequency=80) * 1e3, 1)
    4.4
    """
    positive(cutting_speed=cutting_speed, frequency=frequency)
    return cutting_speed / frequency


@formula(
    source="tlu",
    symbols={
        "stiffness": "k",
        "damping": "zeta",
        "kt": "K_s",
        "teeth_in_cut": "m",
        "direction": "mu",
    },
    damping=(0.005, 0.1),
)
def average_direction_limit(
    stiffness: float,
    damping: float,
    kt: float,
    teeth_in_cut: float,
    direction: float = 1.0,
) -> float:
    """Depth without chatter by the average direction of the force, worst speed.

    b = 2 k zeta (1 + zeta) / (K_s mu m)

    Parameters
    ----------
    stiffness : float
        Stiffness of the mode that vibrates [N/m]
    damping : float
        Its damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    teeth_in_cut : float
        Mean number of teeth in the cut [-]
    direction : float, optional
        Factor for the direction of force and mode; 1 is the worst [-]

    Returns
    -------
    b : float
        Depth of cut at the unluckiest speed [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(average_direction_limit(5e6, damping=0.04, kt=1800e6, teeth_in_cut=2) * 1e3, 3)
    0.116
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, teeth_in_cut=teeth_in_cut, direction=direction)
    return 2 * stiffness * damping * (1 + damping) / (kt * direction * teeth_in_cut)


@formula(
    source="derived",
    symbols={"stiffness": "k", "damping": "zeta", "kt": "K_t", "kr": "K_r", "teeth": "z"},
    damping=(0.005, 0.1),
)
def slot_limit_one_mode(stiffness: float, damping: float, kt: float, kr: float, teeth: float) -> float:
    """Depth of a slot without chatter, one mode along the feed, worst speed.

    a = 8 k zeta (1 + zeta) / (z K_t K_r)

    Parameters
    ----------
    stiffness : float
        Stiffness of the mode [N/m]
    damping : float
        Its damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    kr : float
        Radial over tangential force [-]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    a : float
        Depth of cut at the unluckiest speed [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(slot_limit_one_mode(20e6, damping=0.03, kt=600e6, kr=0.3, teeth=4) * 1e3, 3)
    6.867
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, kr=kr, teeth=teeth)
    return 8 * stiffness * damping * (1 + damping) / (teeth * kt * kr)


@formula(
    source="derived",
    symbols={"stiffness": "k", "damping": "zeta", "kt": "K_t", "kr": "K_r", "teeth": "z"},
    damping=(0.005, 0.1),
)
def slot_limit_two_modes(stiffness: float, damping: float, kt: float, kr: float, teeth: float) -> float:
    """Depth of a slot without chatter, equal modes along and across the feed, worst speed.

    a = 8 k zeta / (z K_t (1 + (1 + K_r^2)^0.5))

    Parameters
    ----------
    stiffness : float
        Stiffness of each mode [N/m]
    damping : float
        Their damping ratio [-]
    kt : float
        Specific cutting force [Pa]
    kr : float
        Radial over tangential force [-]
    teeth : float
        Teeth of the cutter [-]

    Returns
    -------
    a : float
        Depth of cut at the unluckiest speed, within 1 % of the full theory [m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    A worked example of theory, not a limit of a hand mill.

    Examples
    --------
    >>> round(slot_limit_two_modes(10e6, damping=0.04, kt=1800e6, kr=0.3, teeth=4) * 1e3, 4)
    0.2174
    """
    positive(stiffness=stiffness, damping=damping, kt=kt, kr=kr, teeth=teeth)
    result: float = 8 * stiffness * damping / (teeth * kt * (1 + (1 + kr**2) ** 0.5))
    return result


class Mode(Record):
    """One mode of vibration in one direction: stiffness N/m, frequency Hz, damping ratio."""

    stiffness: float
    frequency: float
    damping: float

    def response(self, frequency: float) -> complex:
        """Movement for a force of 1 N at a frequency."""
        ratio = frequency / self.frequency
        return 1 / (self.stiffness * complex(1 - ratio * ratio, 2 * self.damping * ratio))


class Lobe(Record):
    """The lowest depth without chatter in m, and the frequency in Hz at which it would vibrate."""

    depth: float
    frequency: float


def zeroth_order(
    along: Sequence[Mode],
    across: Sequence[Mode],
    *,
    teeth: int,
    kt: float,
    kr: float,
    start: float,
    end: float,
) -> Lobe:
    """Lowest depth without chatter over all speeds, by the mean of the direction factors (ab95).

    `along` and `across` the feed are the modes in these directions; either may be empty. For a worked page,
    never for a limit.
    """
    positive(teeth=teeth, kt=kt)
    modes = [*along, *across]
    if not modes:
        refuse("modes", "empty", "one or more")
    if not 0 <= start < end <= pi + 1e-9:
        refuse("end", end, "above the start, both between 0 and 180 degrees")
    xx, xy, yx, yy = _directions(kr, start, end)

    def limit(frequency: float) -> float:
        gx = sum((mode.response(frequency) for mode in along), 0j)
        gy = sum((mode.response(frequency) for mode in across), 0j)
        a0 = gx * gy * (xx * yy - xy * yx)
        a1 = xx * gx + yy * gy
        root = cmath.sqrt(a1 * a1 - 4 * a0)
        values = [-(a1 + sign * root) / (2 * a0) for sign in (1, -1)] if abs(a0) > 1e-30 else [-1 / a1]
        depths = [-2 * pi * v.real / (teeth * kt) * (1 + (v.imag / v.real) ** 2) for v in values if v.real]
        return min((depth for depth in depths if depth > 0), default=math.inf)

    low = min(mode.frequency for mode in modes) * 0.5
    high = max(mode.frequency for mode in modes) * 2.0
    for _ in range(3):  # each round looks closer round the lowest place of the one before
        steps = [low + (high - low) * step / 2000 for step in range(2001)]
        best = min(steps, key=limit)
        low, high = best - (high - low) / 500, best + (high - low) / 500
    return Lobe(limit(best), best)


def _directions(kr: float, start: float, end: float) -> tuple[float, float, float, float]:
    """Direction factors: what each movement does to the force in each direction, from start to end."""

    def at(phi: float) -> tuple[float, float, float, float]:
        cos2, sin2 = math.cos(2 * phi), math.sin(2 * phi)
        return (
            (cos2 - 2 * kr * phi + kr * sin2) / 2,
            (-sin2 - 2 * phi + kr * cos2) / 2,
            (-sin2 + 2 * phi + kr * cos2) / 2,
            (-cos2 - 2 * kr * phi - kr * sin2) / 2,
        )

    first, last = at(start), at(end)
    return (last[0] - first[0], last[1] - first[1], last[2] - first[2], last[3] - first[3])
