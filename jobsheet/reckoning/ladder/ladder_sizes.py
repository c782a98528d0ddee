"""Shares of card and class said as sizes of a ladder's own cuts: a depth, a width
or a drill is what a hand can set.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.model.capacity import Capacity
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder.ladder_attempt import Made, attempt, base_texts, listed
from jobsheet.reckoning.ladder.rung import Ladder
from jobsheet.remembered import remembered
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A size is sought to so little of itself that no dial shows it; in so many steps at most.
_NEAR, _HALVINGS, _HALF = 2e-4, 20, 0.5


class Size(Struct, frozen=True):
    """A share as a size of a ladder's own cuts: what the chart's axis counts [m, or N·m of a drill or tap].

    `short` is what to set or plan to, rounded down as a hand sets it; `words` the same with what it is;
    `about` the value to the two figures that such a thing is known to.
    """

    value: float
    short: str
    words: str
    about: str
    #: It is the largest that such a cutter is ever set to, and asks less than that
    #: share: the share itself lies beyond it.
    capped: bool = False


@remembered(256)
def in_size(ladder: Ladder, limit: str, share: float) -> Size | None:
    """The largest size of such cuts that asks no more than this share of that limit;
    None where even the least asks more.

    Of drills and taps it is a torque, at the speed of the topmost rung, to two figures and never rounded up;
    with the largest that asks no more, where there is one.
    """
    try:
        if ladder.milled:
            return _milled(ladder, limit, share)
        return _listed(ladder, limit, share)
    except JobsheetError:
        return None


def size_for(ladder: Ladder, limit: str, share: float) -> str:
    """The largest size of such cuts that asks no more than this share of that
    limit: `1.55 mm deep`, `6.8 mm`.

    Empty where even the least asks more, or such cuts cannot be reckoned.
    """
    if ladder.milled:
        size = in_size(ladder, limit, share)
        return size.words if size is not None else ""
    try:
        return _largest_tool(ladder, limit, share)
    except JobsheetError:
        return ""


def _largest_tool(ladder: Ladder, limit: str, share: float) -> str:
    fit = [made for made in listed(ladder) if 0 < _asks(made, limit) <= share * (1 + 1e-6)]
    return fit[-1].name if fit else ""


def _listed(ladder: Ladder, limit: str, share: float) -> Size | None:
    top = ladder.rungs[-1].of(limit) if ladder.rungs else None
    if top is None:
        return None
    torque = top.demand / top.share * share
    short = f"{two_figures(torque, down=True)} N·m"
    tool = _largest_tool(ladder, limit, share)
    return Size(torque, short, f"{tool}, {short}" if tool else short, f"{two_figures(torque)} N·m")


def two_figures(value: float, *, down: bool = False) -> str:
    """A value to the two figures that such a plan has; what one plans to is never rounded up."""
    digits = max(0, 1 - math.floor(math.log10(value))) if value > 0 else 0
    if down:
        value = math.floor(value * 10**digits + 1e-6) / 10**digits
    return trimmed(round(value, digits), digits)


def _milled(ladder: Ladder, limit: str, share: float) -> Size | None:
    units, grows = ladder.units, ladder.grows
    # In a part the cut is that of the step, and only its layer grows.
    texts = dict(ladder.rungs[0].texts) if ladder.inside and ladder.rungs else base_texts(ladder)

    def over(size: float) -> float:
        """How much more it asks than that share, as a logarithm."""
        asked = _asks(attempt(ladder, {**texts, grows: cuts.size_text(size, units)}), limit)
        return math.log(asked / share) if 0 < asked < math.inf else math.inf

    low, high = cuts.LEAST[units][grows], cuts.most(ladder.process, grows, ladder.cutter)
    under, above = over(low), over(high)
    if under > 0:
        return None
    low = high if above <= 0 else _between(over, low, high, under, above)
    short = cuts.size_text(cuts.settled(low * (1 + _NEAR), units, finest=True), units)
    unit, name = (1e-3, "mm") if units == "mm" else (INCH, "in")
    way = "wide" if grows == "width" else "deep"
    return Size(low, short, f"{short} {way}", f"{two_figures(low / unit)} {name}", capped=above < 0)


def _between(over: Callable[[float], float], low: float, high: float, under: float, above: float) -> float:
    """Where it changes its sign, by a line between the ends while both can be
    reckoned, else by halves; the end below.
    """
    for step in range(_HALVINGS):
        if high - low <= _NEAR * high:
            break
        middle = (low + high) / 2
        if step % 3 != 2 and math.isfinite(under) and math.isfinite(above):
            # In logarithms what a cut asks is nearly a line of its size.
            part = under / (under - above)
            middle = math.exp(math.log(low) + part * (math.log(high) - math.log(low)))
            # A little to the nearer side, so that both ends close in.
            middle *= 1 + _NEAR / 2 if part < _HALF else 1 - _NEAR / 2
        found = over(middle)
        if found <= 0:
            low, under = middle, found
        else:
            high, above = middle, found
    return low


def _asks(made: Made, limit: str) -> float:
    return next((asked.share for asked in made.asked if asked.limit == limit), math.inf)


def ended(capacity: Capacity, ladder: Ladder) -> str:
    """Why nothing more is tried of a limit: it ended badly before, or all that is left is too likely to."""
    from jobsheet.proving.chance import largest_share

    share = largest_share(capacity, ladder.chance)
    most = size_for(ladder, capacity.limit, share) or _of_whole(capacity.limit, share)
    plan = f"plan such cuts up to {most}, that ends badly in {ladder.chance * 100:.0f} % of cuts"
    if capacity.bad:
        worst = min(capacity.bad)
        at = size_for(ladder, capacity.limit, worst * (1 + 1e-3)) or _of_whole(capacity.limit, worst)
        finer = f"A finer one narrows it, when asked for; without it, {plan}."
        return f"This ladder has ended: {ladder.process} cuts gave out at what {at} asks here. {finer}"
    return f"Nothing above the last clean cut has so small a chance: {plan}."


def _of_whole(limit: str, share: float) -> str:
    """Where no size of the ladder asks so much: as a share."""
    of = "the card's peak torque" if limit == "spindle-torque" else "what its class carries"
    return f"{share:.2f} of {of}"
