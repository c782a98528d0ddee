"""Forces of the teeth on the cutter, summed over the turn and along the helix.

Seen from above, the cutter turns clockwise and moves along +x relative to the work. A tooth's angle phi
counts clockwise from +y, so that conventional milling cuts from 0 (its wall lies at +y) and climb milling
up to pi (its wall lies at -y). Forces act on the cutter.

Along the height each tooth has a closed form; only the turn is stepped through. A force has corners where a
tooth's tip or top enters or leaves the cut, and between two such corners it is as smooth as a sine: the
steps start at the corners and are one degree at most, whatever the number of teeth, which finds a peak
within 0.02 %. Means need no steps at all: a helix does not change them.
"""

from __future__ import annotations

import math
from itertools import pairwise
from math import pi
from typing import NamedTuple

from jobsheet.cutting.inputs import finite, not_negative, positive, refuse
from jobsheet.cutting.record import Record
from jobsheet.remembered import remembered

RADIAL = 0.4
"""Radial over tangential force of a sharp tooth, of 0.3 to 0.5. Source: common-practice."""
STEP = math.radians(1.0)
_STRAIGHT = 1e-6  # rad: a smaller lag than this is no helix


class _Cut(NamedTuple):
    """What a turn is stepped through for: lengths [m], angles [rad], radial over tangential force [-]."""

    depth: float
    diameter: float
    teeth: int
    helix: float
    start: float
    end: float
    radial: float


class ToothForces(Record):
    """Forces of a cut through one turn; SI, on the cutter, `x` along the feed."""

    start: float
    end: float
    tangential_mean: float
    tangential_peak: float
    feed_mean: float
    feed_low: float
    feed_high: float
    side_mean: float
    side_low: float
    side_high: float
    axial_mean: float
    axial_peak: float
    torque_mean: float
    torque_peak: float
    in_plane_peak: float
    always_in_cut: bool
    makes_wall: bool
    wall_force: float
    """Side force that is farthest from nothing while the wall is made; 0 where there is no wall."""
    whole: float
    """A straight tooth at full feed: every force is so many times it [N]."""
    turned: _Cut
    """The cut whose turn was stepped through."""

    @property
    def wall(self) -> tuple[tuple[float, float], ...]:
        """Height above the tip and side force at the moment when an edge at that height makes the
        wall; worked out when it is asked for.
        """
        return tuple((height, self.whole * force) for height, force in _wall(self.turned))


def side_arc(width: float, diameter: float, *, climb: bool = False) -> tuple[float, float]:
    """Angles at which a tooth enters and leaves a cut from the cutter's edge, in rad."""
    positive(width=width, diameter=diameter)
    if not width <= diameter * (1 + 1e-9):
        refuse("width", width, "at most the diameter of the cutter")
    engagement = math.acos(max(1 - 2 * width / diameter, -1.0))
    return (pi - engagement, pi) if climb else (0.0, engagement)


def face_arc(width: float, diameter: float, offset: float = 0.0) -> tuple[float, float]:
    """Angles at which a tooth enters and leaves a face cut, in rad.

    `offset` is how far the middle of the work lies to +y of the cutter's path. The cutter must reach over
    both sides.
    """
    positive(width=width, diameter=diameter)
    finite(offset=offset)
    far, near = (2 * offset + width) / diameter, (2 * offset - width) / diameter
    if far > 1 + 1e-9 or near < -1 - 1e-9:
        refuse("offset", offset, "small enough for the cutter to reach over the work")
    return math.acos(min(far, 1.0)), math.acos(max(near, -1.0))


def tooth_forces(
    *,
    kc: float,
    feed_per_tooth: float,
    depth: float,
    diameter: float,
    teeth: int,
    helix: float,
    start: float,
    end: float,
    radial: float = RADIAL,
    axial: float | None = None,
) -> ToothForces:
    """Forces of a cut, integrated over angle and helix.

    Each slice of a tooth has dFt = kc fz sin(phi) da while start < phi < end, dFr = radial dFt and
    dFa = axial dFt; the slice at height a lags by 2 a tan(helix) / D.

    Parameters
    ----------
    kc : float
        Specific cutting force at the mean chip thickness, the same all over: means agree with power [Pa]
    feed_per_tooth : float
        Feed per tooth [m]
    depth : float
        Depth of cut [m]
    diameter : float
        Diameter of the cutter [m]
    teeth : int
        Teeth of the cutter [-]
    helix : float
        Helix angle, right hand above zero [rad]
    start : float
        Angle at which a tooth enters [rad]
    end : float
        Angle at which it leaves [rad]
    radial : float, optional
        Radial over tangential force [-]
    axial : float, optional
        Axial over tangential force, cutter down above zero; tan(helix), an upper bound, when left out [-]

    Returns
    -------
    ToothForces
        Means, peaks and the force while the wall is made

    Raises
    ------
    CalcError
        If an input is not above zero, or the angles have no meaning.
    """
    positive(kc=kc, feed_per_tooth=feed_per_tooth, depth=depth, diameter=diameter, teeth=teeth)
    not_negative(radial=radial)
    if not 0 <= start < end <= pi + 1e-9:
        refuse("end", end, "above the start, both between 0 and 180 degrees")
    if not -pi / 2 < helix < pi / 2:
        refuse("helix", helix, "between -90 and 90 degrees")
    if teeth != int(teeth):
        refuse("teeth", teeth, "a whole number")
    axial = math.tan(helix) if axial is None else axial
    whole = kc * feed_per_tooth * depth  # N: a straight tooth at full feed; all forces are so many times it
    turned = _Cut(depth, diameter, int(teeth), helix, start, end, radial)
    shape = _shape(turned)
    mean_t, peak_t = whole * shape.tangential_mean, whole * shape.tangential_peak
    return ToothForces(
        start=start,
        end=end,
        tangential_mean=mean_t,
        tangential_peak=peak_t,
        feed_mean=whole * shape.feed_mean,
        feed_low=whole * shape.feed_low,
        feed_high=whole * shape.feed_high,
        side_mean=whole * shape.side_mean,
        side_low=whole * shape.side_low,
        side_high=whole * shape.side_high,
        axial_mean=axial * mean_t,
        axial_peak=axial * peak_t,
        torque_mean=mean_t * diameter / 2,
        torque_peak=peak_t * diameter / 2,
        in_plane_peak=whole * shape.in_plane_peak,
        always_in_cut=shape.always_in_cut,
        makes_wall=shape.makes_wall,
        wall_force=whole * shape.wall_force,
        whole=whole,
        turned=turned,
    )


class _Shape(Record):
    """Forces of a cut as multiples of a straight tooth at full feed [-], and the
    height [m] where the wall is made.
    """

    tangential_mean: float
    tangential_peak: float
    feed_mean: float
    feed_low: float
    feed_high: float
    side_mean: float
    side_low: float
    side_high: float
    in_plane_peak: float
    always_in_cut: bool
    makes_wall: bool
    wall_force: float


def _turn_of(cut: _Cut) -> _Turn:
    """The turn of a cut; a left-hand helix lags the other way, which turns heights upside down and
    leaves means and peaks as they are.
    """
    lag = 2 * cut.depth * abs(math.tan(cut.helix)) / cut.diameter
    return _Turn(2 * pi / cut.teeth, lag, start=cut.start, end=cut.end, radial=cut.radial)


def _wall(cut: _Cut) -> tuple[tuple[float, float], ...]:
    """Height and side force where the wall is made, as a multiple: hundreds of places, of which the
    largest force is all that is kept.
    """
    wall = _turn_of(cut).wall(cut.depth)
    return tuple((cut.depth - height, force) for height, force in reversed(wall)) if cut.helix < 0 else wall


@remembered(256)
def _shape(cut: _Cut) -> _Shape:
    """The turn stepped through once: metal, wear and feed only scale it, and the best
    feed of a cut is looked for by many.
    """
    turn, start, end, radial = _turn_of(cut), cut.start, cut.end, cut.radial
    squares, angles = turn.both(end)[0] - turn.both(start)[0], turn.both(end)[1] - turn.both(start)[1]
    wall = turn.wall(cut.depth)
    samples = [turn.at(theta) for theta in turn.steps()]
    along = [sample[1] for sample in samples]
    across = [sample[2] for sample in samples]
    return _Shape(
        tangential_mean=(math.cos(start) - math.cos(end)) / turn.pitch,
        tangential_peak=max(sample[0] for sample in samples),
        feed_mean=(-squares - radial * angles) / turn.pitch,
        feed_low=min(along),
        feed_high=max(along),
        side_mean=(angles - radial * squares) / turn.pitch,
        side_low=min(across),
        side_high=max(across),
        in_plane_peak=math.sqrt(max(x * x + y * y for x, y in zip(along, across, strict=True))),
        always_in_cut=end - start + 2 * cut.depth * abs(math.tan(cut.helix)) / cut.diameter
        >= turn.pitch * (1 - 1e-9),
        makes_wall=bool(wall),
        wall_force=max((force for _, force in wall), key=abs, default=0.0),
    )


class _Turn:
    """One tooth pitch of a turn; `theta` is how far the tip of a tooth is past its entry."""

    __slots__ = ("_end", "_start", "end", "lag", "last", "pitch", "radial", "start")

    def __init__(self, pitch: float, lag: float, *, start: float, end: float, radial: float) -> None:
        self.pitch = pitch
        self.lag = lag if lag > _STRAIGHT else 0.0
        self.start = start
        self.end = end
        self.radial = radial
        self.last = end + self.lag
        self._start = (math.cos(start), *self.both(start))
        self._end = (math.cos(end), *self.both(end))

    @staticmethod
    def both(phi: float) -> tuple[float, float]:
        """Integrals of sin cos and of sin^2 up to phi."""
        sine = math.sin(phi)
        return sine * sine / 2, (phi - sine * math.cos(phi)) / 2

    def at(self, theta: float) -> tuple[float, float, float]:
        """Tangential, feed and side force of all teeth together, of a straight tooth at full feed."""
        tangential = squares = angles = 0.0
        sin, cos = math.sin, math.cos
        start, end, lag, pitch = self.start, self.end, self.lag, self.pitch
        phi = start + theta
        if not lag:
            while phi < end:
                sine = sin(phi)
                tangential += sine
                squares += sine * cos(phi)
                angles += sine * sine
                phi += pitch
        else:
            # Teeth that are in the cut from bottom to top are alike: they are
            # counted, not added up one by one.
            while phi < self.last:
                if phi >= end and phi - lag <= start:
                    whole = int((start + lag - phi) / pitch) + 1
                    tangential += whole * (self._start[0] - self._end[0])
                    squares += whole * (self._end[1] - self._start[1])
                    angles += whole * (self._end[2] - self._start[2])
                    phi += whole * pitch
                    continue
                if phi < end:
                    sine, top = sin(phi), cos(phi)
                    top2, top3 = sine * sine / 2, (phi - sine * top) / 2
                else:
                    top, top2, top3 = self._end
                low = phi - lag
                if low > start:
                    sine, bottom = sin(low), cos(low)
                    bottom2, bottom3 = sine * sine / 2, (low - sine * bottom) / 2
                else:
                    bottom, bottom2, bottom3 = self._start
                tangential += bottom - top
                squares += top2 - bottom2
                angles += top3 - bottom3
                phi += pitch
            tangential, squares, angles = tangential / lag, squares / lag, angles / lag
        radial = self.radial
        return tangential, -squares - radial * angles, angles - radial * squares

    def steps(self) -> list[float]:
        """Where to look: close to both sides of every corner, and evenly between."""
        pitch = self.pitch
        arc = self.end - self.start
        corners = sorted({0.0, arc % pitch, self.lag % pitch, (arc + self.lag) % pitch, pitch})
        inset = 1e-9 * pitch
        steps = []
        for left, right in pairwise(corners):
            span = right - left - 2 * inset
            if span > 0:
                count = math.ceil(span / STEP)
                steps += [left + inset + span * step / count for step in range(count + 1)]
        return steps

    def wall(self, depth: float) -> tuple[tuple[float, float], ...]:
        """Height and side force while the wall is made; the wall of climb milling where a slot has two."""
        pitch, lag = self.pitch, self.lag
        inset = 1e-9 * pitch
        if self.end > pi - 1e-9:
            past = self.end - self.start - inset
        elif self.start < 1e-9:
            past = inset
        else:
            return ()
        if not lag:
            force = self.at(past % pitch)[2]
            return ((0.0, force), (depth, force))
        # The moments fall on the same corners: a corner at theta lies at the height whose lag reaches it.
        arc = self.end - self.start
        corners = {0.0, lag}
        for corner in (0.0, arc, lag, arc + lag):
            at = (corner - past) % pitch
            while at < lag:
                corners.update((max(at - 2 * inset, 0.0), min(at + 2 * inset, lag)))
                at += pitch
        found = []
        for left, right in pairwise(sorted(corners)):
            count = math.ceil((right - left) / (5 * STEP))
            found += [left + (right - left) * step / count for step in range(count)]
        found.append(lag)
        # A long lag goes through many pitches, and the force is the same in each.
        forces: dict[float, float] = {}
        made = []
        for angle in found:
            theta = (past + angle) % pitch
            near = round(theta, 12)
            if near not in forces:
                forces[near] = self.at(theta)[2]
            made.append((depth * angle / lag, forces[near]))
        return tuple(made)


# --- closed forms: the checks of the sum, and what a page shows ---------------------------------------------
