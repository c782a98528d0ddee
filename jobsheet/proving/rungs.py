"""How much the next test cut may ask: a small chance of ending badly, and one step above the last clean one."""

from __future__ import annotations

from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import CHANCE, GROWTH
from jobsheet.proving.chance import largest_share


def next_share(
    capacity: Capacity, last_clean: float | None, chance: float = CHANCE, growth: float = GROWTH
) -> float | None:
    """The share that the next rung may ask of this limit, or None where the ladder has ended.

    It ends at the first soft sign or bad end (`capacity.bad`), and where nothing above the last clean cut has so
    small a chance. Without a clean cut it begins where the chance allows.

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
