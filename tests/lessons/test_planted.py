"""A planted mistake has one cause and one remark."""

from __future__ import annotations

from jobsheet.lessons.planted import Ground, missing_ones, wrong_ones


def test_a_mistake_that_spoils_a_second_thing_is_not_planted(pivot):
    """The middle drill of the bore taken out leaves too much for the reamer, and that alone; the
    first face brings more than one remark.
    """
    ground = Ground(pivot)
    plants = {one.at: one for one in missing_ones(ground)}
    assert ground.planted(plants["bore-15-7"]).remark.rule == "reaming-allowance"
    assert ground.planted(plants["base-clean"]) is None


def test_the_speed_of_the_drill_at_the_reamer_is_one_of_them(pivot):
    ground = Ground(pivot)
    reamers = [one for one in wrong_ones(ground) if one.at == "ream" and one.sort == "speed"]
    assert {made.remark.rule for one in reamers if (made := ground.planted(one)) is not None} == {
        "reamer-slower-than-the-drill"
    }
