"""What is remembered of the plan on the desk, so that it can be forgotten with it.

A function whose results are remembered by value keeps those of texts and steps that nobody comes back to once
another job lies on the desk. Each such memory has a room, and is named here; laying another job forgets them
all, which costs that job one calculation of what the two had in common.
"""

from __future__ import annotations

import atexit
from collections.abc import Callable
from functools import lru_cache
from typing import ParamSpec, TypeVar

Given = ParamSpec("Given")
Result = TypeVar("Result")

_FORGET: list[Callable[[], object]] = []


def forgotten_with_the_plan(forget: Callable[[], object]) -> None:
    """Have this called when another plan is laid on the desk."""
    _FORGET.append(forget)


def remembered(room: int) -> Callable[[Callable[Given, Result]], Callable[Given, Result]]:
    """Remember the last results of a function by value, so many of them, and only as
    long as the plan lies on the desk.
    """

    def decorate(function: Callable[Given, Result]) -> Callable[Given, Result]:
        kept = lru_cache(maxsize=room)(function)
        forgotten_with_the_plan(kept.cache_clear)
        return kept  # type: ignore[return-value]  # what the library gives has no parameters of its own

    return decorate


def forget_the_plan() -> None:
    """Forget what is remembered of the plans so far."""
    for forget in _FORGET:
        forget()


def _forget_all() -> None:
    forget_the_plan()
    _FORGET.clear()


# The modeller complains at the end of the program about solids that something still holds.
atexit.register(_forget_all)
