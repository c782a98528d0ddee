"""What bolts of class 8.8 stand, against published torques."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.threads import read_thread
from jobsheet.review.rules.holding.no_more_than_the_bolt_stands import USUAL, stands


# Tightening torques of class 8.8 as handbooks print them, N·m (from memory of VDI
# 2230 tables, friction 0.12 to 0.14).
@pytest.mark.parametrize(
    ("name", "torque"), [("M6", 10.0), ("M8", 25.0), ("M10", 49.0), ("M12", 85.0), ("M16", 210.0)]
)
def test_the_usual_torque_is_the_handbooks(name, torque):
    assert stands(read_thread(name), USUAL) == pytest.approx(torque, rel=0.12)
