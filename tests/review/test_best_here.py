"""The best cut as a fix: it changes only this step, and is none where nothing is better."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.best_here import LABEL, best_here, no_cut_goes
from jobsheet.review.mending.fixes import NotMended

from .views_read import sample


def fix_of(job, key):
    reckoned = Reckoner().reckon(job)
    return best_here(reckoned.job.find(key)[1], reckoned.settings[key])


def test_a_feed_that_is_far_too_high_is_mended_in_its_step_alone():
    job = SetField("face-rough", "feed_per_tooth", "0.9").apply(
        SetField("face-rough", "feed", "").apply(sample(100))
    )
    fix = fix_of(job, "face-rough")
    assert fix.label == LABEL
    mended = fix.mend(job)
    assert mended != job
    for _, operation in job.operations():
        if operation.key != "face-rough":
            assert mended.find(operation.key)[1] == operation


def test_where_nothing_is_better_it_is_no_mend_and_twice_is_once():
    job = SetField("face-rough", "feed_per_tooth", "0.9").apply(
        SetField("face-rough", "feed", "").apply(sample(100))
    )
    mended = fix_of(job, "face-rough").mend(job)
    with pytest.raises(NotMended):
        fix_of(mended, "face-rough").mend(mended)


def test_a_step_without_a_cutter_says_what_a_person_could_do():
    reckoned = Reckoner().reckon(sample(100))
    words = no_cut_goes(reckoned.job.find("drill")[1], reckoned.settings["drill"])()
    assert words
    assert not words.endswith(".")
