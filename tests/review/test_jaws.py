"""How the work sits in jaws, worked by hand: an 80 x 50 x 12 plate in the 80 mm vice of the bench mill
(jaws 80 wide, 25 deep, opens 75).
"""

from __future__ import annotations

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.jaws import end_cuts, jaw_cuts, sits
from jobsheet.review.rule import View
from tests.review.test_rules import edited


def sitting(job, *edits):
    job = edited(job, edits)
    reckoned = Reckoner().reckon(job)
    ((set_up, steps),) = plan_of(View(reckoned.job, reckoned)).groups()
    return sits(set_up, steps[0]), steps


HOLDING = "holding:set-up-1"


def test_what_is_said_and_what_must_hang_over(hm100):
    found, _ = sitting(hm100)
    assert (found.long, found.wide, found.above) == pytest.approx((0.080, 0.050, 0.006))
    assert found.least == (0.0, 0.0)
    assert found.held == pytest.approx(0.080)


def test_longer_than_the_jaws_hangs_over_by_half_of_it_at_least(hm100):
    """100 long: 20 more than the jaws; with 15 said at the left, 5 are left for the right."""
    found, _ = sitting(hm100, ("job:stock", "length", "100"))
    assert found.least == pytest.approx((0.010, 0.010))
    found, _ = sitting(hm100, ("job:stock", "length", "100"), (HOLDING, "over_left", "15"))
    assert found.least == pytest.approx((0.015, 0.005))
    assert found.held == pytest.approx(0.080)


def test_jaws_that_run_front_to_back_have_other_ends(hm100):
    found, _ = sitting(hm100, ("setup:set-up-1", "fixed_jaw", "left"))
    assert (found.long, found.wide) == pytest.approx((0.050, 0.080))
    assert found.ends == ("front", "rear")


def test_what_stands_above_follows_from_what_it_sits_on(hm100):
    """12 high on the bed of jaws 25 deep lies 13 below their top; on parallels of 18 it stands 5 above."""
    found, _ = sitting(hm100, (HOLDING, "above_jaws", ""), (HOLDING, "rests_on", "bed"))
    assert found.above == pytest.approx(-0.013)
    found, _ = sitting(hm100, (HOLDING, "above_jaws", ""), (HOLDING, "parallels", "18"))
    assert found.above == pytest.approx(0.005)
    found, _ = sitting(hm100, (HOLDING, "above_jaws", ""))
    assert found.above is None


def test_nothing_sits_in_jaws_under_straps(hm100):
    found, _ = sitting(hm100, (HOLDING, "kind", "straps"))
    assert found is None


@pytest.mark.parametrize(
    ("side", "at_an_end"), [("left", True), ("right", True), ("front", False), ("rear", False)]
)
def test_a_wall_goes_along_an_end_or_along_a_jaw(hm100, side, at_an_end):
    """Face-finish leaves the top half a millimetre lower: 3 deep there is 3.5 from where it lay."""
    found, steps = sitting(
        hm100, ("face-finish", "add side-mill", ""), ("side-mill-1", "side", side), ("side-mill-1", "width", "2"),
        ("side-mill-1", "depth", "3"),
    )  # fmt: skip
    ends, jaws = list(end_cuts(found, steps[0], steps)), list(jaw_cuts(found, steps[0], steps))
    assert (len(ends), len(jaws)) == ((1, 0) if at_an_end else (0, 1))
    deep = ends[0][3] if at_an_end else jaws[0][2]
    assert deep == pytest.approx(0.0035)


@pytest.mark.parametrize(
    ("left", "right", "least", "held"),
    [
        (None, None, (10, 10), 80),
        ("15", None, (15, 5), 80),
        (None, "4", (16, 4), 80),
        ("30", "4", (30, 4), 66),
        ("25", None, (25, 0), 75),
    ],
)
def test_what_hangs_over_on_one_side_is_left_for_the_other(hm100, left, right, least, held):
    """100 long in jaws of 80: 20 hang over in all at least."""
    said = [(HOLDING, name, text) for name, text in (("over_left", left), ("over_right", right)) if text]
    found, _ = sitting(hm100, ("job:stock", "length", "100"), *said)
    assert found.least == pytest.approx(tuple(one * 1e-3 for one in least))
    assert found.held == pytest.approx(held * 1e-3)


def test_of_a_vice_that_the_card_does_not_have_nothing_must_hang_over(hm100):
    found, _ = sitting(hm100, ("job:stock", "length", "100"), (HOLDING, "vice", "a stranger's"))
    assert (found.vice, found.least) == (None, (0.0, 0.0))
    shorter, _ = sitting(hm100, ("job:stock", "length", "60"))
    assert shorter.least == (0.0, 0.0)
