"""How it went in one word: what the record says, and what a question asks by it (look-2, on the shelf)."""

from __future__ import annotations

import pytest

from jobsheet.model.what_ran import Entry, Runs
from jobsheet.shelf.how_it_went import asked_how, went_of
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import asked_by, find
from jobsheet.storage.records.run_log import record


def step(outcome, number=40, date="2026-11-20"):
    return Entry(job="X", plan="", revision=0, machine="knee-mill-k-2", date=date, about="step", key="a", number=number, outcome=outcome)  # fmt: skip


@pytest.mark.parametrize(
    ("outcomes", "how", "words"),
    [
        (("clean", "clean"), "cut before", "clean"),
        (("clean", "noisy"), "tight", "trouble at 40: noisy"),
        (("noisy", "stalled"), "beyond", "stopped at 40: stalled"),
        (("not cut",), "no record", ""),
    ],
)
def test_how_it_went_is_one_word(outcomes, how, words):
    went = went_of(Runs(entries=tuple(map(step, outcomes))))
    assert (went.how, went.words, went.made) == (how, words, "2026-11-20")


def test_what_was_never_made_has_no_word_of_its_own():
    assert went_of(Runs()).how == ""


def test_only_the_last_day_says_how_it_went():
    went = went_of(Runs(entries=(step("broke", date="2026-01-02"), step("clean", date="2026-03-04"))))
    assert (went.how, went.made, went.times) == ("cut before", "2026-03-04", 2)


def test_its_words_are_taken_out_of_a_question_and_longer_ones_stay():
    assert asked_how("M8 Cut before brass") == (("cut before",), "M8   brass")
    assert asked_how("tighten it") == ((), "tighten it")
    asked = asked_by("trouble first tight lot 12")
    assert asked.said == "lot 12 · how it went: tight · trouble first"


def test_it_is_found_by_its_word(samples, tmp_path, own_home):
    for name, outcome in (("hm-102-slide-plate", "noisy"), ("hm-104-cover-plate", "clean")):
        path = tmp_path / f"{name}.yaml"
        path.write_bytes((samples / f"{name}.yaml").read_bytes())
        record(path, (step(outcome),))
    (tmp_path / "never.yaml").write_bytes((samples / "hm-103-pivot-block.yaml").read_bytes())
    index = Index(tmp_path, tmp_path / "index.sqlite")
    index.refresh()
    found = {
        word: [hit.number for hit in find(index, word).hits]
        for word in ("tight", "cut before", "not yet worked", "beyond")
    }
    index.close()
    assert found == {
        "tight": ["HM-102"],
        "cut before": ["HM-104"],
        "not yet worked": ["HM-103"],
        "beyond": [],
    }
