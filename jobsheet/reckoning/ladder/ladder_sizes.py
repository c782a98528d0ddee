"""Shares of card and class said as sizes of a ladder's own cuts: a depth, a width or a drill is what a hand can set."""

from __future__ import annotations

import math

from jobsheet.errors import JobsheetError
from jobsheet.model.capacity import Capacity
from jobsheet.model.trials import MILLING
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder.ladder_attempt import Made, attempt, base_texts, listed
from jobsheet.reckoning.ladder.rung import Ladder

#: A size is halved down to a millionth of the largest there is.
_HALVINGS = 20


def size_for(ladder: Ladder, limit: str, share: float) -> str:
    """The largest size of such cuts that asks no more than this share of that limit: `1.55 mm deep`, `6.8 mm`.

    Empty where even the least asks more, or such cuts cannot be reckoned.
    """
    try:
        if ladder.process not in MILLING:
            fit = [one for one in listed(ladder) if 0 < _asks(one, limit) <= share * (1 + 1e-6)]
            return fit[-1].name if fit else ""
        return _milled(ladder, limit, share)
    except JobsheetError:
        return ""


def _milled(ladder: Ladder, limit: str, share: float) -> str:
    units, grows = ladder.units, ladder.grows
    texts = base_texts(ladder)

    def asks(size: float) -> float:
        return _asks(attempt(ladder, {**texts, grows: cuts.size_text(size, units)}), limit)

    low, high = cuts.LEAST[units][grows], cuts.most(ladder.process, grows, ladder.cutter)
    if asks(low) > share:
        return ""
    if asks(high) > share:
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            low, high = (middle, high) if asks(middle) <= share else (low, middle)
    else:
        low = high
    word = "wide" if grows == "width" else "deep"
    return f"{cuts.size_text(cuts.settled(low * (1 + 1e-4), units, finest=True), units)} {word}"


def _asks(made: Made, limit: str) -> float:
    return next((one.share for one in made.asked if one.limit == limit), math.inf)


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
