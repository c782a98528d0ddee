"""Where the quill stop of a hole stands: as deep as it is, and a lead beyond the work where it goes through."""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step

#: Texts, the hole that is there [m], and how much further the stop stands for what goes through [mm]:
#: a millimetre, for the lead of a reamer two (common practice).
STEPS = {
    "drill": ({"cutter": "drill 5 mm", "feed": "0.1 mm"}, None, 1.0),
    "enlarge": ({"cutter": "drill 8 mm", "feed": "0.1 mm"}, 5e-3, 1.0),
    "plunge": ({"cutter": "slot drill 10 mm", "feed": "0.03 mm"}, None, 1.0),
    "ream": ({"cutter": "reamer 8 mm H7, 6 edges", "feed": "0.2 mm"}, 7.8e-3, 2.0),
}


def stop(name, depth):
    """The depth of its row [mm], in a piece of 20 mm under the knee mill's quill."""
    texts, pilot, _ = STEPS[name]
    texts = {"at": "10, 10", "spindle": "400 rpm", "depth": depth, **texts}
    return float(Step(name, texts, material="S235", thickness=0.02, pilot=pilot).row.depth)


@pytest.mark.parametrize("name", STEPS)
def test_two_blind_holes_differ_by_their_depths(name):
    assert stop(name, "12 mm") - stop(name, "7 mm") == pytest.approx(5)
    assert 12 <= stop(name, "12 mm") < 12 + 8 * 0.31  # a point of 118 degrees is 0.3 of the diameter long


@pytest.mark.parametrize(("name", "lead"), [(name, lead) for name, (_, _, lead) in STEPS.items()])
def test_a_through_hole_stops_a_lead_further_beyond_the_work_than_a_blind_one_beyond_its_depth(name, lead):
    assert stop(name, "through") - stop(name, "12 mm") == pytest.approx(20 - 12 + lead)
