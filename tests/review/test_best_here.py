"""The best cut as a fix: it changes only this step, and is none where nothing is better."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.best_here import LABEL, _stays, best_here, no_cut_goes
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


def value(name, text):
    return SimpleNamespace(name=name, text=text)


def gives_out(title, share, sentence="", verdict="beyond"):
    return SimpleNamespace(title=title, share=share, sentence=sentence, verdict=verdict)


def test_what_stays_is_the_worst_limit_in_its_own_words_behind_the_other_way():
    """A cut that clears is said with its values, those that are left empty not."""
    values = (value("feed_per_tooth", "0.05"), value("layer", ""), value("spindle", "300 rpm"))
    stays = (gives_out("Chatter", 1.2), gives_out("Spindle torque", 1.5, "a lighter cut"))
    for found, words in (
        ({"clears": True, "stays": stays}, "the best cut of this kind is feed per tooth 0.05, spindle 300 rpm"),
        ({"clears": False, "stays": ()}, "the best cut of this kind is feed per tooth 0.05, spindle 300 rpm"),
        (
            {"clears": False, "stays": stays, "other_way": "Drill it out"},
            "drill it out; with the best cut of this kind spindle torque stays beyond, a lighter cut",
        ),
        (
            {"clears": False, "stays": stays[:1], "other_way": ""},
            "another tool or another machine; with the best cut of this kind chatter stays beyond",
        ),
    ):  # fmt: skip
        assert _stays(SimpleNamespace(values=values, **found)) == words
