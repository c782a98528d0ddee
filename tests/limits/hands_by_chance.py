"""Chances of a hand by the normal distribution of the standard library, which the program does not use."""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from jobsheet.model.shop import Shop

from .one_cut import BELTS, around

NORMAL = NormalDist()


def with_own(machine=BELTS, **own):
    """A setting with the workshop's own numbers."""
    return around(machine, shop=Shop(**own))


def chance(share, spread):
    return pytest.approx(NORMAL.cdf(math.log(share) / spread), abs=1e-9)
