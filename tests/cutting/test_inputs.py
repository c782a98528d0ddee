"""What a formula refuses, named with its value and what it must be."""

from __future__ import annotations

import math

import pytest

from jobsheet.cutting.inputs import angle_below, finite, not_negative, positive, share
from jobsheet.errors import CalcError


@pytest.mark.parametrize(
    ("check", "good", "bad"),
    [
        (positive, [1, 1e-300], [0, -1, math.inf, math.nan]),
        (not_negative, [0, 1], [-1e-300, math.inf, math.nan]),
        (finite, [0, -1, 1e300], [math.inf, -math.inf, math.nan]),
        (share, [1e-9, 0.5, 1], [0, 1.001, -1, math.nan]),
        (lambda **named: angle_below(math.pi, **named), [0.1, 3], [0, math.pi, 4, math.nan]),
    ],
)
def test_checks(check, good, bad):
    for value in good:
        check(one=value)
    for value in bad:
        with pytest.raises(CalcError, match=r"^one is .*; it must be "):
            check(one=value)
