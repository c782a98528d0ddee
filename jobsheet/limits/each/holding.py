"""The grip on the work: what the cut pulls, times a factor, against what vice or straps hold.

In words only: grip enough, doubtful, not enough. Never learned by slipping. A milling cut pulls sideways and
upwards; a drill turns the work, and lifts it where its point breaks through.
"""

from __future__ import annotations

import math

from jobsheet.cutting.clamping import grip, required_grip
from jobsheet.cutting.clamping import lift as lift_of
from jobsheet.limits.in_units import put_in
from jobsheet.limits.verdict import DOUBTFUL
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Grip, Setting

#: What of its setting it reads.
READS = frozenset({"extent.x", "extent.y", "extent.z", "grip", "shop", "units"})
#: Where it stands among limits of one share.
ORDER = 70

#: A drill's flutes pull it in at break-through like a screw of their helix, 30 degrees in a usual drill
#: (holding-and-more-kinds A1: derived, 1.15 M/D).
_FLUTES = math.radians(30)
_SCREW_IN = ("drill", "core drill")
#: What lies flat on its table turns about the mean radius of its face: that share of its shorter side (the
#: same place: derived for a square).
_MEAN_RADIUS = 0.38
#: A jaw lifts off at one end where it is turned by its force times a sixth of its length
#: (derived: pressure in a straight line).
_JAW = 1 / 6


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where nothing pulls at the work or it is not known what holds it."""
    held = setting.grip
    if held is None:
        return None
    factor = setting.shop.holding_factor_high if _high(held) else setting.shop.holding_factor
    pull = figures.value("in_plane_peak")
    if pull is not None:
        lift = figures.number("lift")
        return _worst(
            _milled(pull, lift, held, factor, setting.units),
            _rolled(pull, held, factor, setting.units),
            _tipped(pull, held, setting, factor),
        )
    torque = figures.value("torque")
    if torque is None or figures.value("spindle_speed") is None:
        return None
    if held.around and not held.upright:
        return None  # across its axis the work is held by the jaws themselves, not by friction
    return _worst(_turned(torque, held, setting, factor), _lifted(torque, held, fields, setting.units))


def _worst(*limits: Limit | None) -> Limit | None:
    return max((limit for limit in limits if limit is not None), key=lambda limit: limit.share, default=None)


def _high(held: Grip) -> bool:
    return held.above is not None and held.jaw_depth is not None and held.above > held.jaw_depth


def _rolled(pull: float, held: Grip, factor: float, units: str) -> Limit | None:
    """A cut that pulls at the outside of round work, which turns it about its own
    axis; None where the work is not round.
    """
    if held.turning is None or held.radius is None:
        return None
    wanted = factor * pull * held.radius
    return _moment(
        wanted, held.turning, held, units, held.turning / held.force,
        ("it rolls: clamp better or cut lighter", "it may roll: tighten, or cut lighter"),
        f"{factor:g} × {pull:.0f} N × {put_in(held.radius, units)}; turning about its axis takes {held.turning:.3g} N·m",
    )  # fmt: skip


def _tipped(pull: float, held: Grip, setting: Setting, factor: float) -> Limit | None:
    """A cut that tips work out of its jaws: its pull at the height over them, against
    what jaws of that depth hold (A2).

    Two jaws bear µ F times the depth of the grip; jaws round the work, all with F together, F times a sixth
    of the length they grip, where their pressure falls in a straight line to nothing.
    """
    if held.around:
        if held.out is None or not held.gripped:
            return None
        over, scale = (
            held.out,
            2 * held.gripped * _JAW,
        )  # the force of a grip round the work counts half of that of all jaws
        words = f"F × a sixth of {put_in(held.gripped, setting.units, 3)} gripped"
    else:
        if held.above is None or held.jaw_depth is None or held.held_up:
            return None
        deep = min(setting.extent[2] - held.above, held.jaw_depth)
        if deep <= 0 or held.above <= deep:
            return None  # what is gripped as deep as it stands out slips before it tips
        over, scale = held.above, held.friction * deep
        words = f"μ F × {put_in(deep, setting.units, 3)} of grip"
    found = _moment(
        factor * pull * over, held.force * scale, held, setting.units, scale,
        ("it tips out: hold more of it, or cut lighter", "it may tip: hold more of it, tighten, or cut lighter"),
        f"{factor:g} × {pull:.0f} N × {put_in(over, setting.units, 3)} out of the jaws; {words}",
    )  # fmt: skip
    # Where it holds, how it slips says more; where it may not, this is what gives out.
    return found if found.verdict != "expected" else None


def _milled(pull: float, lift: float, held: Grip, factor: float, units: str) -> Limit | None:
    """One peak of a milling cut, sideways and upwards together; jaws that stand round the
    work leave only what goes along it.
    """
    if held.around:
        if not held.upright or not lift:
            return None
        pull = 0.0
    wanted = required_grip(in_plane=pull, upward=lift, factor=factor)
    return _judged(
        wanted, held, "clamp better or cut lighter", "tighten, hold more of it, or cut lighter",
        f"{factor:g} × √({pull:.0f}² + {lift:.0f}²) N", units,
    )  # fmt: skip


def _lifted(torque: float, held: Grip, fields: object, units: str) -> Limit | None:
    """What a drill lifts where its point breaks through; its pull is the most that its
    flutes give, so that no factor is on it.
    """
    cutter, depth = getattr(fields, "cutter", None), getattr(fields, "depth", None)
    if cutter is None or not cutter.diameter or cutter.kind not in _SCREW_IN:
        return None
    if not getattr(depth, "through", False):
        return None
    pull = lift_of(tangential=2 * torque / cutter.diameter, helix=_FLUTES)
    return _judged(
        pull,
        held,
        "it lifts the work as it breaks through: clamp from above, or drill in stages",
        "it may lift the work as it breaks through: clamp better and ease off",
        f"at break-through 2 M / D × tan 30° = 2 × {torque:.2f} N·m / {put_in(cutter.diameter, units)} × 0.577",
        units,
    )


def _turned(torque: float, held: Grip, setting: Setting, factor: float) -> Limit | None:
    """What turns the work under a tool: against jaws that would have to give way, or
    against friction under the straps.
    """
    long, wide = setting.extent[0], setting.extent[1]
    if not long or not wide:
        return None
    if held.around and held.turning is not None:
        has, scale, words = held.turning, held.turning / held.force, "turning about its axis"
    elif held.jaw_width is not None:
        arm, words = min(long, held.jaw_width) * _JAW, "F × a sixth of what the jaws hold"
        has, scale = held.force * arm, arm
    else:
        arm, words = min(long, wide) * _MEAN_RADIUS, "2 μ F × 0.38 of the shorter side"
        has, scale = grip(force=held.force, friction=held.friction) * arm, 2 * held.friction * arm
    return _moment(
        factor * torque, has, held, setting.units, scale,
        ("it turns the work: set a stop, or clamp better", "it may turn the work: set a stop"),
        f"{factor:g} × {torque:.2f} N·m; {words}",
    )  # fmt: skip


def _moment(
    wanted: float,
    has: float,
    held: Grip,
    units: str,
    scale: float,
    words: tuple[str, str],
    working: str,
) -> Limit:
    """A moment against what holds; `scale` is what of it each newton of the grip gives [m]."""
    verdict, said = _word(wanted, has, *words)
    return Limit(
        name="holding", title="Holding", demand=wanted, capacity=has, unit="N*m", share=wanted / has,
        verdict=verdict, low=held.low * scale, high=held.high * scale, shown=f"{wanted:.1f} of {has:.3g} N·m", sentence=said,
        working=f"{working}; F: {_force(held, units)}",
    )  # fmt: skip


def _force(held: Grip, units: str) -> str:
    """How the force of the grip was worked out, the length in it in the unit of the job."""
    return held.working if held.over is None else held.working.format(put_in(held.over, units))


def _word(wanted: float, has: float, not_enough: str, doubtful: str) -> tuple[str, str]:
    """The verdict with its words and its remedy."""
    if wanted > has:
        return "beyond", f"grip not enough: {not_enough}"
    if wanted > has * DOUBTFUL:
        return "tight", f"grip doubtful: {doubtful}"
    return "expected", "grip enough"


def _judged(wanted: float, held: Grip, not_enough: str, doubtful: str, working: str, units: str) -> Limit:
    """A force against the friction of what holds it."""
    has = grip(force=held.force, friction=held.friction)
    verdict, words = _word(wanted, has, not_enough, doubtful)
    return Limit(
        name="holding", title="Holding", demand=wanted, capacity=has, unit="N", share=wanted / has,
        verdict=verdict, low=grip(force=held.low, friction=held.friction), high=grip(force=held.high, friction=held.friction),
        shown=f"{wanted / 1e3:.2f} of {has / 1e3:.2f} kN", sentence=words,
        working=f"{working}; 2 μ F = 2 × {held.friction:.3g} × {held.force / 1e3:.2f} kN; F: {_force(held, units)}",
    )  # fmt: skip
