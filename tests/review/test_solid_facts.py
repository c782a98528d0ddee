"""What the solids of a plan say: nothing of the samples, and a sentence where none could be made."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.solid_facts import facts_of, no_facts

from .views_read import sample


def facts(job):
    reckoned = Reckoner().reckon(job)
    return facts_of(reckoned.job, reckoned)


def test_the_plate_gives_nothing_to_say():
    assert [
        fact.kind for fact in facts(sample(100)) if fact.kind in ("cuts-air", "clash", "not-checked")
    ] == []


def test_a_hole_beside_the_work_cuts_only_air():
    found = facts(SetField("drill", "at", "300, 300").apply(sample(100)))
    assert "drill" in {fact.key for fact in found}


def test_where_no_solids_could_be_made_it_is_said():
    (fact,) = no_facts("the modeller is not there")
    assert (fact.kind, fact.about) == ("not-checked", "the modeller is not there")
