"""How much the next test cut may ask: a small chance of ending badly, and one
step above the last clean one.
"""

from __future__ import annotations

from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import CHANCE, FINER_CHANCES, FINER_GROWTH, GROWTH
from jobsheet.proving.chance import largest_share


def next_share(
    capacity: Capacity, last_clean: float | None, chance: float = CHANCE, growth: float = GROWTH
) -> float | None:
    """The share that the next rung may ask of this limit, or None where the ladder has ended.

    It ends at the first soft sign or bad end (`capacity.bad`), and where nothing above the last clean cut has
    so small a chance. Without a clean cut it begins where the chance allows.

    Parameters
    ----------
    last_clean : float or None
        Share of the largest clean cut so far
    chance : float, optional
        With which the rung may end badly, that is: in any way but clean
    growth : float, optional
        The most that it may ask as a multiple of the last clean one
    """
    if capacity.bad:
        return None
    share = largest_share(capacity, chance)
    if not last_clean:
        return share or None
    if share <= last_clean:
        return None
    return min(share, growth * last_clean)


def finer_share(capacity: Capacity, last_clean: float | None, chance: float = CHANCE) -> float | None:
    """The share that the next rung of a finer ladder may ask, after an end; None where nothing
    above the last has so small a chance.

    It narrows what the first sign left open: from where a ladder would begin, in small steps, each with
    three times the chance of ending badly.

    Parameters
    ----------
    last_clean : float or None
        Share of the largest clean cut since the newest end; None or 0 where there is none yet
    """
    begin = largest_share(capacity, chance)
    if not last_clean or last_clean < begin:
        return begin or None
    share = min(FINER_GROWTH * last_clean, largest_share(capacity, min(0.5, FINER_CHANCES * chance)))
    return share if share > last_clean else None
