"""Angles for formulas: the functions of `math`, also for pint quantities that are pure numbers.

`math` wants a float. A ratio of two lengths with units turns itself into one when asked.
"""

from __future__ import annotations

import math


def sin(angle: float) -> float:
    """Sine of an angle in rad."""
    return math.sin(float(angle))


def cos(angle: float) -> float:
    """Cosine of an angle in rad."""
    return math.cos(float(angle))


def tan(angle: float) -> float:
    """Tangent of an angle in rad."""
    return math.tan(float(angle))


def acos(ratio: float) -> float:
    """Angle in rad whose cosine is `ratio`; rounding just past the ends counts as the end."""
    return math.acos(_clean(float(ratio)))


def asin(ratio: float) -> float:
    """Angle in rad whose sine is `ratio`; rounding just past the ends counts as the end."""
    return math.asin(_clean(float(ratio)))


def _clean(ratio: float) -> float:
    """Take off the last bit that 1 - 2 ae/D leaves over when ae is D."""
    return math.copysign(1.0, ratio) if 1.0 < abs(ratio) <= 1.0 + 1e-12 else ratio
