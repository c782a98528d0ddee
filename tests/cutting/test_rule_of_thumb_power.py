"""Power by rule of thumb beside the power by force."""

from __future__ import annotations

import pytest

from jobsheet.cutting.textbook.rule_of_thumb_power import thumb_power


def test_the_rule_of_thumb_for_aluminium_asks_a_fifth_of_steel():
    assert thumb_power(1e-6, 0.4e-9) == pytest.approx(5 * thumb_power(1e-6, 2e-9))
