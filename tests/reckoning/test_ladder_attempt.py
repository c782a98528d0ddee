"""One cut of a ladder: reckoned from its texts, refused by its field's name;
drills and threads from the lightest.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import CalcError, CommandError
from jobsheet.reckoning.ladder.ladder_attempt import attempt, base_texts, listed, listed_texts
from jobsheet.reckoning.ladder.ladders import plan

from .ladder_begun import B1


@pytest.fixture(scope="module")
def side():
    return plan("bench-mill-b-1", **B1)


@pytest.fixture(scope="module")
def drills():
    return plan("bench-mill-b-1", cutter="drill 12 mm", material="S235", kind="drill", trials=())


def test_a_rung_s_texts_give_its_demand_again(side):
    rung = side.rungs[0]
    made = attempt(side, dict(rung.texts))
    assert {one.limit: one.demand for one in made.asked} == pytest.approx(
        {one.limit: one.demand for one in rung.asked}
    )


def test_a_field_that_the_kind_has_not_is_refused_by_name(side):
    with pytest.raises(CalcError, match="wobble"):
        attempt(side, {**dict(side.rungs[0].texts), "wobble": "1"})


def test_what_all_cuts_of_a_ladder_share_is_without_what_grows(side):
    texts = base_texts(side)
    assert side.grows not in texts
    assert texts["spindle"] == "560 rpm"


def test_drills_go_from_the_one_that_asks_least(drills):
    asked = [one.asked[0].share for one in listed(drills)]
    assert asked == sorted(asked)


def test_a_drill_is_taken_by_its_name_and_another_is_refused(drills):
    name = listed(drills)[0].name
    assert listed_texts(drills, name)["cutter"]
    with pytest.raises(CommandError, match="no “no such”"):
        listed_texts(drills, "no such")
