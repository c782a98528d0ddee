"""What a formula refuses: inputs that have no meaning, each named with its value and what it must be."""

from __future__ import annotations

import math
from typing import NoReturn

from jobsheet.errors import CalcError


def finite(**named: float) -> None:
    """Refuse infinities and not-a-number.

    Raises
    ------
    CalcError
        Naming the first input that is not a finite number.
    """
    for name, value in named.items():
        if value - value != 0:  # also true of not-a-number
            refuse(name, value, "a finite number")


def positive(**named: float) -> None:
    """Refuse all that is not a finite number above zero.

    Raises
    ------
    CalcError
        Naming the first input that is not.
    """
    for value in named.values():
        if not value > 0 or value - value != 0:
            break
    else:
        return  # the usual case, asked for millions of times where the best of many cuts is looked for
    for name, value in named.items():
        if not value > 0:
            refuse(name, value, "above zero")
    finite(**named)


def not_negative(**named: float) -> None:
    """Refuse all that is not a finite number of zero or more.

    Raises
    ------
    CalcError
        Naming the first input that is not.
    """
    for name, value in named.items():
        if not value >= 0:
            refuse(name, value, "zero or more")
    finite(**named)


def share(**named: float) -> None:
    """Refuse all that is not above zero and at most 1, as an efficiency must be.

    Raises
    ------
    CalcError
        Naming the first input that is not.
    """
    for name, value in named.items():
        if not 0 < value <= 1:
            refuse(name, value, "above zero and at most 1")


def angle_below(limit: float, **named: float) -> None:
    """Refuse all angles that are not above zero and below `limit`, in rad.

    Raises
    ------
    CalcError
        Naming the first input that is not.
    """
    for name, value in named.items():
        if not 0 < value < limit:
            refuse(name, value, f"between 0 and {math.degrees(limit):.0f} degrees")


def refuse(name: str, value: object, must: str) -> NoReturn:
    """Say that an input has no meaning.

    Raises
    ------
    CalcError
        Always.
    """
    raise CalcError(name, value, must)
