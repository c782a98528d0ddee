"""A fix in words: changes of one step behind its number, what ends and what stays; or why none is offered."""

from __future__ import annotations

from jobsheet.model.remark import Remark
from jobsheet.review.engine import title_of
from jobsheet.review.mending.fix_tried import FixTried
from jobsheet.review.mending.fix_words import by_hand, ends_and_leaves, refusal, together


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


def test_those_that_end_and_stay_are_named_by_title_with_their_steps(hm100):
    """Four at most are named, the rest is counted; one of several steps once, its steps rising."""
    number = {one.key: one.number for _, one in hm100.operations()}
    me = remark(operations=("drill",))
    others = [remark(rule="deburr-after-last-cut", operations=(key,)) for key in ("tap", "spot", "tap")]
    found = FixTried(
        fix=None, job=hm100, ends=(me, *others), leaves=(remark(rule="name-the-datum", operations=()),)
    )
    assert ends_and_leaves(me, found, hm100) == (
        f"Ends this and “Deburr after the last cut” (steps {number['spot']}, {number['tap']}); leaves “{title_of('name-the-datum')}”."
    )
    alone = FixTried(fix=None, job=hm100, ends=(me,), leaves=(others[0],))
    assert (
        ends_and_leaves(me, alone, hm100)
        == f"Ends this; leaves “Deburr after the last cut” (step {number['tap']})."
    )
    assert (
        ends_and_leaves(me, FixTried(fix=None, job=hm100, ends=(me,)), hm100)
        == "Ends this; leaves no remark."
    )
    ids = [
        "deburr-after-last-cut",
        "name-the-datum",
        "slot-in-layers",
        "chamfer-before-tap",
        "hole-missing",
        "nothing-beyond",
    ]
    for count, end in ((4, "“Chamfer before the tap”."), (5, ", and 1 more."), (6, ", and 2 more.")):
        many = FixTried(fix=None, job=hm100, leaves=tuple(remark(rule=one) for one in ids[:count]))
        assert ends_and_leaves(me, many, hm100).endswith(end)


def test_why_none_is_offered_and_what_a_person_could_do():
    tried = FixTried(fix=None, job=None, why_not="it would change nothing")
    assert refusal(remark(by_hand="hold it deeper"), tried) == (
        "No fix is offered: it would change nothing. By hand: hold it deeper."
    )
    assert refusal(remark(rule="a-rule-of-old"), tried) == "No fix is offered: it would change nothing."
    assert by_hand(remark(by_hand=lambda: "asked late")) == "asked late"
    assert by_hand(remark()).startswith("for example spot")


def test_changes_of_several_steps_stand_behind_each_number_and_others_as_they_are():
    said = [
        "step 50, feed: 0.1 → 0.08",
        "set-up 2, number: 2 → 3",
        "step 50, layer: – → 1",
        "adds a step 45",
        "stock, height: 12 → 14",
    ]
    assert together(said) == (
        "Changes step 50: feed 0.1 → 0.08, layer – → 1; changes set-up 2: number 2 → 3; adds a step 45; changes stock: height 12 → 14."
    )
