"""Answers about one step come in parts, ever fuller, and nothing but the last where it cannot be reckoned."""

from __future__ import annotations

from itertools import pairwise

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.limits.each.headroom import ROOM
from jobsheet.reckoning.answers.all_answers import Answers, answers_in_parts, headroom_of
from jobsheet.reckoning.reckoner import Reckoner


def parts(job, key):
    found = Reckoner().reckon(job)
    set_up, operation = found.job.find(key)
    return list(answers_in_parts(set_up, operation, found)), found


def test_each_part_has_what_stood_in_the_one_before(hm100):
    made, _ = parts(hm100, "drill")
    assert [one.whole for one in made] == [False] * (len(made) - 1) + [True]
    for one, other in pairwise(made):
        for name in ("readings", "headroom", "neighbours", "changed", "deepest"):
            assert getattr(one, name) is None or getattr(other, name) is not None


def test_a_step_that_cannot_be_reckoned_has_no_answers(hm100):
    made, _ = parts(
        SetField("drill", "depth", "through").apply(SetField("drill", "cutter", "drill").apply(hm100)),
        "drill",
    )
    assert [(one.whole, one.neighbours, one.deepest) for one in made] == [(True, None, None)]
    assert made[-1] == Answers(whole=True)


def test_under_the_spindle_lie_work_tool_and_room(hm100):
    _, found = parts(hm100, "drill")
    setting = found.settings["drill"]
    head = headroom_of(found.job.find("drill")[1], setting)
    if head is not None:
        assert head.top == setting.top
        assert head.room == ROOM
        assert head.least < head.greatest
        assert head.work == pytest.approx(setting.extent[2])
    assert headroom_of(found.job.find("clamp")[1], setting) is None
