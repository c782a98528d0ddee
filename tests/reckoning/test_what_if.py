"""A step reckoned with something else in its fields: kept nowhere, and never an
exception for what cannot be reckoned.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import CalcError, QuantityError
from jobsheet.reckoning.what_if import YES_OR_NO, Tried, at_speed, sentence_of, tried, with_texts
from tests.reckoning.adviser.made_up import limit, outcome
from tests.reckoning.steps import around, step

DRILL = {"cutter": "drill 10 mm", "at": "10, 10", "depth": "12", "feed": "0.13", "spindle": "320 rpm"}


def drilled(machine="bench-mill-b-1", **change):
    return tried("drill", step("drill", **{**DRILL, **change}).fields, around(machine))


def test_what_cannot_be_reckoned_is_a_sentence():
    found = drilled(cutter="drill")
    assert found.figures is None
    assert found.limits == ()
    assert found.problem[0].isupper()
    assert found.problem.endswith(".")
    assert sentence_of(ValueError("no size")) == "No size."


def test_a_limit_is_found_by_its_name_and_what_stops_it_is_beyond():
    """Scenario section 9: 10 mm from solid, 0.13 on B-1 pushes harder than a hand."""
    found = drilled()
    assert found.limit("quill-push").name == "quill-push"
    assert found.limit("no such") is None
    assert found.stopped_by.verdict == "beyond"
    assert not found.carried
    assert drilled(feed="0.03", cutter="drill 4 mm", spindle="900 rpm").stopped_by is None


def test_texts_are_read_as_if_they_were_typed():
    fields = step("drill", **DRILL).fields
    changed = with_texts("drill", fields, (("feed", "0.05"), ("depth", "through")), "mm")
    assert changed.feed.value == pytest.approx(0.05e-3)
    assert changed.depth.through
    assert fields.feed.value == pytest.approx(0.13e-3)
    with pytest.raises(CalcError, match="field"):
        with_texts("drill", fields, (("no_such", "1"),), "mm")
    with pytest.raises(QuantityError):
        with_texts("drill", fields, (("feed", "quick"),), "mm")


def test_a_speed_is_typed_or_left_to_be_chosen():
    fields = step("drill", **DRILL).fields
    assert at_speed(fields, 900 / 60).spindle.text == "900 rpm"
    assert at_speed(fields, None).spindle is None


def test_what_says_yes_or_no_goes_before_what_weighs_whatever_stands_first():
    """And among those the order of `YES_OR_NO`; of two that weigh the first that stands there."""
    weighs, other = limit("beyond", name="torque"), limit("beyond", name="chatter")
    no, later = limit("beyond", name=YES_OR_NO[0]), limit("beyond", name=YES_OR_NO[2])
    assert outcome(weighs, other).stopped_by is weighs
    assert outcome(weighs, later).stopped_by is later
    assert outcome(weighs, later, no, other).stopped_by is no
    assert outcome(limit("tight")).stopped_by is None
    assert outcome().stopped_by is None


def test_what_is_hard_is_beyond_tight_or_lucky():
    """Cut before, but one in ten gives out, is no longer as expected (design, Verdicts)."""
    tight, lucky = limit("tight"), limit("cut before", chance=0.1)
    assert outcome(limit("expected"), tight).hard is tight
    assert outcome(lucky).hard is lucky
    assert outcome(limit("cut before", chance=0.09)).hard is None
    assert outcome(limit("expected")).easy
    assert not outcome(tight).easy
    assert outcome(tight).carried
    nothing = Tried(fields=None, setting=around("bench-mill-b-1"), problem="No.")
    assert (nothing.easy, nothing.carried, nothing.value("torque"), nothing.shown("torque")) == (
        False,
        False,
        None,
        "",
    )
