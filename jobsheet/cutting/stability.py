"""Chatter: what a cut asks of the stiffness of machine and cutter, and the theory behind it.

With guessed data of the frame the theory forbids cuts that bench and knee mills make every day, by a factor
of 8 to 20. So it serves for scaling, and as a worked page; the level comes from trials on the machine
itself.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from itertools import pairwise
from math import pi

from jobsheet.cutting.formula import formula
from jobsheet.cutting.inputs import positive, refuse
from jobsheet.cutting.record import Record

REFERENCE_STIFFNESS = 9.59e6
"""Stiffness of the reference cutter, 12 mm high speed steel 30 mm out [N/m]. Source: derived."""


#: Share of the cutter's width -> how much more a frame that is equally stiff both ways bears than in
#: a slot, the teeth in the cut already counted: zeroth order (ab95) with K_r 0.3, damping hardly
#: matters. At the side, and on the middle. Under a twentieth it is held: there the ratio of the
#: forces decides, and nobody knows that.
AT_THE_SIDE = (
    (0.05, 4.0),
    (0.1, 3.4),
    (0.2, 2.13),
    (0.3, 1.70),
    (0.5, 1.32),
    (0.75, 1.10),
    (0.9, 1.03),
    (1.0, 1.0),
)
ON_THE_MIDDLE = ((0.28, 4.0), (0.3, 3.75), (0.5, 1.88), (0.75, 1.25), (0.9, 1.07), (1.0, 1.0))


def direction(start: float, end: float) -> float:
    """Direction of the force: how much more of a cut between these angles [rad]
    a frame bears than of a slot [-].

    Between a cut at the side and one on the middle of the cutter it goes by how
    far the cut lies off the middle.
    """
    if not 0 <= start < end <= pi + 1e-9:
        refuse("end", end, "above the start, both between 0 and 180 degrees")
    arc = end - start
    if arc >= pi - 1e-9:
        return 1.0
    middle = _between(ON_THE_MIDDLE, math.sin(arc / 2))
    side = _between(AT_THE_SIDE, (1 - math.cos(arc)) / 2)
    off = min(abs(pi - (start + end)) / (pi - arc), 1.0)
    return middle + off * (side - middle)


def _between(table: tuple[tuple[float, float], ...], share: float) -> float:
    """A table read between its rows, held at its ends."""
    if share <= table[0][0]:
        return table[0][1]
    for (low, first), (high, last) in pairwise(table):
        if share <= high:
            return first + (last - first) * (share - low) / (high - low)
    return table[-1][1]


@formula(source="ab95", symbols={"depth": "a_p", "teeth_in_cut": "m", "kt": "K_t", "direction": "c"})
def cutting_stiffness(depth: float, teeth_in_cut: float, kt: float, direction: float = 1.0) -> float:
    """Cutting stiffness: what a cut asks of machine and cutter before it chatters.

    d = a_p m K_t / c

    Parameters
    ----------
    depth : float
        Depth of cut [m]
    teeth_in_cut : float
        Mean number of teeth in the cut [-]
    kt : float
        Specific cutting force at the mean chip thickness, of a sharp edge [Pa]
    direction : float, optional
        How much more the direction of the force lets a frame bear than in a slot [-]

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
    The limit follows depth times teeth in the cut, not depth times width. A tooth that is in
    the work for a short arc pushes in nearly one direction, which wakes a frame less than
    one that turns through a whole slot.

    Examples
    --------
    >>> round(cutting_stiffness(depth=2e-3, teeth_in_cut=1.0, kt=3000e6) / 1e6, 2)
    6.0
    """
    positive(depth=depth, teeth_in_cut=teeth_in_cut, kt=kt, direction=direction)
    return depth * teeth_in_cut * kt / direction


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
