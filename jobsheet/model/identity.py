"""Results remembered by which value it is, not by what is in it: hashing a whole
card costs more than it saves.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial, wraps
from typing import TypeVar
from weakref import ref

from jobsheet.remembered import forgotten_with_the_plan

Value = TypeVar("Value")
Result = TypeVar("Result")


def by_identity(most: int) -> Callable[[Callable[[Value], Result]], Callable[[Value], Result]]:
    """Remember what a function of one frozen value gives, for up to `most` values; then all are forgotten.

    The value is kept beside its result, so that its identity cannot become another's.
    """

    def decorate(function: Callable[[Value], Result]) -> Callable[[Value], Result]:
        known: dict[int, tuple[Value, Result]] = {}
        forgotten_with_the_plan(known.clear)

        @wraps(function)
        def remembered(value: Value) -> Result:
            found = known.get(id(value))
            if found is not None:
                return found[1]
            if len(known) >= most:
                known.clear()
            result = function(value)
            known[id(value)] = (value, result)
            return result

        return remembered

    return decorate


def while_it_lives(function: Callable[[Value], Result]) -> Callable[[Value], Result]:
    """Remember what a function of one frozen value gives for as long as somebody
    holds the value, and no longer.

    A step that is typed into is another value at every key. The result must not hold the value itself.
    """
    known: dict[int, tuple[ref[Value], Result]] = {}

    def forget(place: int, _: ref[Value]) -> None:
        known.pop(place, None)

    @wraps(function)
    def remembered(value: Value) -> Result:
        found = known.get(id(value))
        if found is not None and found[0]() is value:
            return found[1]
        result = function(value)
        known[id(value)] = (ref(value, partial(forget, id(value))), result)
        return result

    return remembered
