"""A step at the bench: minutes, deeds in words, and no metal."""

from __future__ import annotations

import pytest

from jobsheet.operations.kinds.bench_step import KIND
from jobsheet.operations.shared.tally import Tally
from tests.operations.hole_steps import Step

STEEL = {"material": "S235"}


def test_only_its_minutes_are_reckoned():
    step = Step("bench-step", {"does": "deburr", "minutes": "5 min"}, **STEEL)
    assert step.value("bench_minutes") == pytest.approx(300)
    assert [one.name for one in step.figures.items] == ["bench_minutes"]
    assert Step("bench-step", {"does": "deburr"}, **STEEL).figures == Tally("mm").done()


def test_a_person_s_own_words_go_before_those_of_its_deeds():
    assert Step("bench-step", {"does": "measure, deburr"}, **STEEL).row.do.startswith(
        "Measure; break the edges"
    )
    assert Step("bench-step", {"does": "measure", "what": "Feel the jaw"}, **STEEL).row.do.startswith(
        "Feel the jaw"
    )


def test_nothing_comes_off_and_no_hole_is_left():
    step = Step("bench-step", {"does": "saw"}, **STEEL)
    assert step.shapes == ()
    assert step.holes == ()
    assert KIND.takes_off(step.fields) == 0


def test_it_is_to_others_what_it_says_that_it_does():
    step = Step("bench-step", {"does": "find zero, clamp"}, **STEEL)
    assert KIND.plays(step.fields).does == ("find zero", "clamp")
