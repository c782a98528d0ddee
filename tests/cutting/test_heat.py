"""Growth by warming."""

from __future__ import annotations

import pytest

from jobsheet.cutting.heat import STEEL_EXPANSION, expansion
from jobsheet.errors import CalcError


def test_a_metre_of_steel_grows_twelve_micrometres_a_kelvin():
    assert expansion(1.0, 1.0, STEEL_EXPANSION) == pytest.approx(12e-6)


def test_colder_is_shorter():
    assert expansion(0.1, -10, STEEL_EXPANSION) < 0


def test_refuses_no_length():
    with pytest.raises(CalcError, match="length"):
        expansion(0, 10, STEEL_EXPANSION)
