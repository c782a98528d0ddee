"""Results remembered by which value it is, not by what is in it: hashing a whole card costs more than it saves."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

Value = TypeVar("Value")
Result = TypeVar("Result")


def by_identity(most: int) -> Callable[[Callable[[Value], Result]], Callable[[Value], Result]]:
    """Remember what a function of one frozen value gives, for up to `most` values; then all are forgotten.

    The value is kept beside its result, so that its identity cannot become another's.
    """

    def decorate(function: Callable[[Value], Result]) -> Callable[[Value], Result]:
        known: dict[int, tuple[Value, Result]] = {}

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
