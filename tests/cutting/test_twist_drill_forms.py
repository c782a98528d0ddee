"""Other text-book laws for twist drills, against the first."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting import drill_forces as drill
from jobsheet.cutting import drill_lines
from jobsheet.cutting.textbook import twist_drill_forms
from jobsheet.errors import CalcError


def test_the_lips_alone_are_half_to_two_thirds_of_the_whole():
    for d, f in ((6e-3, 0.1e-3), (10e-3, 0.15e-3), (12e-3, 0.2e-3)):
        kc = 1500e6 * (twist_drill_forms.drill_chip_thickness(f, 2.06) / 1e-3) ** -0.21
        ratio = drill_lines.kienzle_drill_torque(kc, f, d) / drill.drill_torque(20000, f, d)
        assert 0.45 < ratio < 0.70


def test_a_flat_point_has_half_the_feed_on_each_lip_and_a_pointed_one_less():
    assert twist_drill_forms.drill_chip_thickness(0.2e-3, pi) == pytest.approx(0.1e-3)
    assert twist_drill_forms.drill_chip_thickness(0.2e-3, pi / 3) == pytest.approx(0.05e-3)
    flat, pointed = (
        twist_drill_forms.kienzle_drill_thrust(2000e6, 0.2e-3, 10e-3, angle) for angle in (pi, pi / 3)
    )
    assert flat == pytest.approx(0.63 * 5e-3 * 0.2e-3 * 2000e6)
    assert pointed == pytest.approx(flat / 2)


@pytest.mark.parametrize("angle", [0, -1, 3.15])
def test_a_point_of_more_than_half_a_turn_has_no_meaning(angle):
    with pytest.raises(CalcError, match="point angle"):
        twist_drill_forms.drill_chip_thickness(0.2e-3, angle)
    with pytest.raises(CalcError, match="point angle"):
        twist_drill_forms.kienzle_drill_thrust(2000e6, 0.2e-3, 10e-3, angle)
