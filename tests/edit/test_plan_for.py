"""Planning for another machine is one edit: the whole other job, by its machine's name."""

from __future__ import annotations

from jobsheet.edit.history import History
from jobsheet.edit.plan_for import PlanFor
from jobsheet.storage.card_files import planned_for


def test_the_other_plan_stands_and_one_undo_brings_the_first_back(hm100):
    other = planned_for(hm100, "knee-mill-k-2")
    history = History(hm100)
    history.do(PlanFor(other, "Knee mill K-2"))
    assert history.job == other
    history.undo()
    assert history.job is hm100


def test_undo_calls_it_by_the_machine(hm100):
    assert PlanFor(hm100, "Knee mill K-2").label == "plan for Knee mill K-2"
