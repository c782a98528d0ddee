"""What a drill would ask from the solid, or after another hole."""

from __future__ import annotations

import pytest

from jobsheet.review.plan.from_solid import drilled, eased, push_from_solid
from tests.reckoning.steps import around, step

B1 = around("bench-mill-b-1")


def drill(size, feed, spindle="320 rpm"):
    return step("drill", cutter=f"drill {size} mm", at="10, 10", depth="12", feed=str(feed), spindle=spindle)


def test_the_smaller_the_hole_before_it_the_more_it_asks():
    pushes = [drilled(drill(10, 0.13), B1, hole)[0].value("lever_push") for hole in (None, 3e-3, 6e-3)]
    assert pushes == sorted(pushes, reverse=True)
    assert push_from_solid(drill(10, 0.13), B1) == pytest.approx(pushes[0])


def test_a_pilot_eases_what_a_hand_cannot_push():
    """Scenario section 9: 10 mm at 0.13 from the solid is beyond the hand on B-1."""
    assert "quill-push" in {one.name for one in eased(drill(10, 0.13), B1, 4e-3, enough=False)}
    assert eased(drill(4, 0.04, "900 rpm"), B1, 2e-3) == ()
