"""A fix in words: changes of one step behind its number, what ends and what stays; or why none is offered."""

from __future__ import annotations

from jobsheet.model.remark import Remark
from jobsheet.review.mending.fix_words import by_hand, together


def remark(**more):
    return Remark(**{"rule": "spot-before-drilling", "severity": "scrap", "message": "", "why": "", **more})


def test_changes_of_one_step_stand_behind_its_number():
    assert (
        together(["step 50, depth per layer: – → 1.3 mm", "step 50, feed: 0.1 → 0.08"])
        == "Changes step 50: depth per layer – → 1.3 mm, feed 0.1 → 0.08."
    )
    assert together(["adds a step 45"]) == "Adds a step 45."


def test_what_a_person_can_do_is_said_by_the_remark_or_shown_by_its_rule():
    assert by_hand(remark(by_hand="hold it deeper")) == "hold it deeper"
    assert by_hand(remark(by_hand=lambda: "ask the foreman")) == "ask the foreman"
    from jobsheet.review.engine import rules

    assert {one.id for one in rules()} >= {"spot-before-drilling"}
    assert by_hand(remark()).startswith("for example ")
    assert by_hand(remark(rule="no-such-rule")) == ""
