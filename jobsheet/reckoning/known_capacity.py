"""What is known of a machine before a ladder: learned from its trials, or what the card alone says.

A clean cut that is only planned is put on top by the same likelihood, so that each rung's chance is the one
that holds once all rungs below it were clean.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.limits.each.chatter import is_measured
from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.model.shop import Shop
from jobsheet.model.trials import LEARNED, MILLED, MILLING, Trial
from jobsheet.proving.assumed import BIAS, WRONG, spread_of
from jobsheet.reckoning.worked_anew import anew


def snapshot_of(machine: str, trials: Sequence[Trial] | None, today: str, shop: Shop) -> Snapshot | None:
    """What the machine's trials teach; None where there are none."""
    from jobsheet.storage.records.proof_log import read_log

    found = read_log(machine).teaching if trials is None else tuple(trials)
    if not any(not trial.changed for trial in found):
        return None
    from jobsheet.proving.learned import snapshot  # numpy: only where something is to be learned

    return snapshot(anew(found), machine, today, shop, measured=frame_measured(machine))


def frame_measured(machine: str) -> bool:
    """Whether the card of that machine has a frame that was measured; no where there is no card."""
    from jobsheet.storage.card_files import find_card

    try:
        return is_measured(find_card(machine))
    except JobsheetError:
        return False


def prior(limit: str, process: str, cutter_kind: str, *, measured: bool = False) -> Capacity:
    """A capacity before any trial: the card's or the class's value, with its spread and that of a process."""
    spread = math.hypot(spread_of(limit, measured=measured), BIAS)
    places = [4 * spread * step / 60 for step in range(-60, 61)]
    weights = [math.exp(-0.5 * (place / spread) ** 2) for place in places]
    total = sum(weights)
    far = math.exp(1.6448536269514722 * spread)
    return Capacity(
        limit=limit, process=process, cutter_kind=cutter_kind, low=1 / far, median=1.0, high=far,
        cells=tuple((place, weight / total) for place, weight in zip(places, weights, strict=True)),
    )  # fmt: skip


def capacities_of(
    known: Snapshot | None, process: str, cutter_kind: str, *, measured: bool = False
) -> tuple[Capacity, ...]:
    """What is known of every limit that such cuts ask."""
    limits = LEARNED if process in (*MILLING, *MILLED) else LEARNED[:1]
    found = []
    for limit in limits:
        capacity = known.find(limit, process, cutter_kind) if known is not None else None
        found.append(capacity or prior(limit, process, cutter_kind, measured=measured))
    return tuple(found)


def after_clean(capacity: Capacity, share: float) -> Capacity:
    """What would be known after one more clean cut at this share, noise and wrong labels in it."""
    return _after(capacity, share, 1)


def after_end(capacity: Capacity, share: float) -> Capacity:
    """What would be known after a cut at this share that ended badly."""
    return _after(capacity, share, -1)


def _after(capacity: Capacity, share: float, way: int) -> Capacity:
    weighed = []
    for place, weight in capacity.cells:
        right = 0.5 * math.erfc(way * (math.log(share) - place) / (capacity.noise * math.sqrt(2)))
        weighed.append((place, weight * ((1 - WRONG) * right + WRONG * (1 - right))))
    total = sum(weight for _, weight in weighed)
    return replace(capacity, cells=tuple((place, weight / total) for place, weight in weighed))


def last_clean(capacity: Capacity) -> float | None:
    """The most that was cut cleanly before, below everything that ended badly."""
    worst = min(capacity.bad, default=math.inf)
    return max((good.share for good in capacity.good if good.share < worst), default=None)
