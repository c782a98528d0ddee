"""Results remembered by value, as many as the plan on the desk needs and not many more.

A step that is typed into gives another value at every key: with room for thousands of them, a day of work is
kept that nobody comes back to, some 300 small objects each. Undo and another setting find the last few again.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from jobsheet.remembered import forgotten_with_the_plan

#: Room for a short plan and what is undone in it; so many for each step of a long one.
LEAST, FOR_EACH = 64, 2


class Roomy:
    """A function whose last results are remembered; its room follows the plan."""

    def __init__(self, function: Callable[..., Any]) -> None:
        self._function = function
        self._room = 0
        self.make_room(0)
        forgotten_with_the_plan(self.forget)

    def make_room(self, steps: int) -> None:
        """Room for a plan of so many steps; what is remembered is forgotten
        where the room becomes another.
        """
        needed = max(LEAST, FOR_EACH * steps)
        room = 1 << (needed - 1).bit_length()
        if self._room < room or self._room > 4 * room:
            self._room = room
            self._known = lru_cache(maxsize=room)(self._function)

    def __call__(self, *given: Any) -> Any:
        """The result, remembered or made."""
        return self._known(*given)

    @property
    def misses(self) -> int:
        """How often it had to be made."""
        return self._known.cache_info().misses

    def forget(self) -> None:
        """Begin anew."""
        self._known.cache_clear()
