"""What trials say of a demand: the chance that it is too much, from the learned capacity's own distribution.

Standard library only: this runs on every keystroke. The distribution itself comes ready in the `Setting`.
It stands here, below `proving/`, because limits ask it.
"""

from __future__ import annotations

import math
from bisect import bisect_left

from jobsheet.model.capacity import Capacity, Good
from jobsheet.model.setting import Setting

#: Noise of one cut, standard deviation of its logarithm (design, Proving): the same cut twice is not the same
#: demand. A capacity that was learned has learned its own.
NOISE = 0.12
#: Further than so many spreads from a cell it is over or under for certain (3 in 100,000 at most are not).
_CERTAIN = 4.0
#: `cut before` allows so much more stick-out than the recorded cut had (design, Verdicts).
LONGER = 1.10
_ROUNDING = 1 + 1e-9


def chance_over(capacity: Capacity, share: float, extra_spread: float = 0.0) -> float:
    """The chance [0..1] that a cut of this share ends badly there; a single cut's own noise is in it.

    Parameters
    ----------
    capacity : Capacity
        What was learned, with its cells in their order, their weights together 1
    share : float
        Demand as a share of what card or class gives [-]
    extra_spread : float, optional
        Standard deviation of the logarithm of the demand itself, where that is a band
    """
    if not share > 0:
        return 0.0
    cells, demand = capacity.cells, math.log(share)
    spread = math.hypot(capacity.noise, extra_spread)
    reach = _CERTAIN * spread
    first, last = bisect_left(cells, (demand - reach,)), bisect_left(cells, (demand + reach,))
    total, scale, erfc = 0.0, 1 / (spread * math.sqrt(2)), math.erfc
    for place, weight in cells[first:last]:
        total += weight * erfc((place - demand) * scale)
    total *= 0.5
    for _, weight in cells[:first]:
        total += weight
    return min(total, 1.0)


def learned(setting: Setting, limit: str, process: str, fields: object) -> Capacity | None:
    """What this machine's trials say of a limit for such a cut; None where they say nothing of it."""
    if setting.proof is None:
        return None
    capacity = setting.proof.find(limit, process, cutter_kind(fields))
    return capacity if capacity is not None and capacity.spoke and capacity.cells else None


def cutter_kind(fields: object) -> str:
    """The kind of cutter of an operation's fields; empty where there is none."""
    return getattr(getattr(fields, "cutter", None), "kind", "") or ""


def cut_before(capacity: Capacity, share: float, fields: object) -> Good | None:
    """The newest recorded good cut of this process and kind of cutter that asked at least as much.

    It counts with its holding noted, with a stick-out that this one does not pass by more than a tenth, and
    until a later cut ended badly at no more (design, Verdicts).
    """
    if not capacity.process:
        return None
    out = getattr(getattr(fields, "cutter", None), "stick_out", None)
    for good in reversed(capacity.good):
        enough = good.share >= share * (1 - 1e-4) and bool(good.holding) and not good.overtaken
        if enough and _no_longer(out, good.stick_out):
            return good
    return None


def _no_longer(out: float | None, recorded: float | None) -> bool:
    """Whether the cutter stands out no further than then; where only one of the two is noted nobody knows."""
    if out is None or recorded is None:
        return out is recorded
    return out <= recorded * LONGER * _ROUNDING


def told(good: Good) -> str:
    """A trial in brackets: its date and its cutter, without what only counts its teeth."""
    parts = [part.strip() for part in good.cutter.split(",")]
    where = [part for part in parts[1:] if part.startswith("drawer")]
    return f"{good.date}, {', '.join([*parts[:1], *where])}"


def dots(capacity: Capacity, factor: float) -> tuple[tuple[float, bool], ...]:
    """The trials under a bar whose capacity is 1/factor of what the shares were of."""
    if not capacity.process:
        return ()
    return tuple((good.share * factor, True) for good in capacity.good) + tuple(
        (share * factor, False) for share in capacity.bad
    )


def first_end(capacity: Capacity, outcomes: tuple[str, ...]) -> Good | None:
    """The lightest cut that gave out so."""
    found = [good for good in capacity.ends if good.outcome in outcomes]
    return min(found, key=lambda good: good.share, default=None)
