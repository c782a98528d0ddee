"""Mutated files of every kind: no traceback, every problem with a line; what loads goes
through figures, review and solids.

The long rounds are resumed by ranges of seeds: `JOBSHEET_ROUNDS=first-count pytest
--long tests/storage/test_mutated.py`.
"""

from __future__ import annotations

import os
import random

import msgspec
import pytest

from jobsheet.errors import DocumentError
from jobsheet.gui.desk import journal
from jobsheet.gui.desk.left_behind import left_behind
from tests.storage.mutated import (
    MATERIALS,
    READERS,
    corpora,
    every_value,
    journals,
    loaded,
    materials_from,
    mutated,
    read_through,
    rounds,
    slipped,
    what_is_wrong,
    wrong_in,
)

SEED = 12
SAMPLE, THROUGH = 2500, 25
LONG = 200_000


def wrong_of(some, through):
    """What went wrong, with the place of the file in its round; every so-manieth
    job that loads goes through all.
    """
    found, whole = [], 0
    for index, (kind, text) in enumerate(some):
        said = what_is_wrong(kind, text)
        if not said and kind == "job" and (job := loaded(text)) is not None:
            whole += 1
            if whole % through == 0:
                said = read_through(job)
        if said:
            found.append((index, kind, said))
    return found


@pytest.mark.parametrize("kind", READERS)
def test_the_good_ones_are_good(kind):
    assert corpora()[kind]
    assert not [text[:80] for text in corpora()[kind] if what_is_wrong(kind, text)]
    if kind != "log":
        for text in corpora()[kind]:
            READERS[kind](text)


def test_a_sample():
    assert not wrong_of(rounds(SAMPLE, SEED), THROUGH)


def test_journals_that_a_crash_left(own_home):
    folder = journal.folder()
    folder.mkdir(parents=True)
    good = msgspec.json.encode(journal.Entry(job=corpora()["job"][0], name="good"))
    for index, raw in enumerate(journals(200, SEED)):
        (folder / f"{index}-x.json").write_bytes(raw)
    (folder / "9999-good.json").write_bytes(good)
    os.utime(folder / "9999-good.json", (1e9, 1e9))
    assert left_behind() is not None
    for path, _ in journal.left_behind():
        if not path.name.startswith("9999"):
            path.unlink()
    assert left_behind().entry.name == "good"


def test_materials_of_ones_own():
    """Beside the five kinds: `mc: ½` passed the strict reader, and was then no number."""
    materials_from(MATERIALS)
    materials_from(MATERIALS.replace("mc: 0.27", "mc: ½"))
    changed = (mutated(MATERIALS, random.Random(f"{SEED}-{index}")) for index in range(1500))
    assert not [said for text in changed if (said := wrong_in(materials_from, text))]


@pytest.mark.long
def test_two_hundred_thousand():
    first, _, count = os.environ.get("JOBSHEET_ROUNDS", f"0-{LONG}").partition("-")
    assert not wrong_of(rounds(int(count), SEED, int(first)), 20)


def test_jobs_with_slips_go_through_figures_review_and_solids():
    """Values that a reader takes: a point lost, another step's size, a field left out."""
    jobs = ((index, loaded(text)) for index, text in slipped(120, SEED))
    assert not [(index, said) for index, job in jobs if job is not None and (said := read_through(job))]


@pytest.mark.long
def test_many_jobs_with_slips():
    jobs = ((index, loaded(text)) for index, text in slipped(10_000, SEED))
    assert not [(index, said) for index, job in jobs if job is not None and (said := read_through(job))]


@pytest.mark.long
def test_every_value_of_every_line():
    assert not wrong_of(every_value(), 20)


# --- what the rounds found ----------------------------------------------------------------------------------


def problems(kind, old, new):
    text = corpora()[kind][0]
    assert old in text
    with pytest.raises(DocumentError) as refused:
        READERS[kind](text.replace(old, new, 1))
    assert all(problem.line for problem in refused.value.problems)
    return " ".join(str(problem) for problem in refused.value.problems)


def test_a_figure_that_a_card_must_have_and_that_is_empty_is_said():
    """It was refused without a problem; of a handle, the whole handle was left out and nothing said."""
    assert "power: nothing is written here" in problems("card", "power: 0.55 kW, plate", "power:")
    assert "a turn: nothing is written here" in problems("card", "a turn: 2.5 mm", "a turn: ")


@pytest.mark.parametrize("kind", ["job", "card", "cabinet", "workshop"])
def test_an_empty_file_is_refused_by_its_first_line(kind):
    for text in ("", "\n\n", "# nothing\n"):
        with pytest.raises(DocumentError, match="line 1: the file is empty"):
            READERS[kind](text)


def test_a_field_that_stands_twice_in_two_spellings_is_said():
    assert "already" in problems("job", "set-ups:", "set_ups: []\nset-ups:")
    assert "already" in problems("workshop", "strong push: 180 N", "strong push: 180 N\nstrong_push: 90 N")


@pytest.mark.parametrize("kind", READERS)
@pytest.mark.parametrize("written", ["99", "²", "0", "-1", "1.0", "9" * 5000, "nan"])
def test_a_format_that_is_none_or_newer_is_said(kind, written):
    now = "format: 2" if kind == "job" else "format: 1"
    said = problems(kind, now, f"format: {written}")
    assert "is not a format" in said or "is newer than this program knows" in said


def test_a_count_of_five_thousand_digits_is_a_sentence():
    assert "is not a number of things" in problems("cabinet", "count: ", f"count: {'9' * 5000}")


@pytest.mark.parametrize(
    ("old", "new"), [("width: 50", "width: 0.5"), ("height: 12", "height: 0.4"), ("width: 50", "width: 1")]
)
def test_stock_that_is_gone_before_a_face_is_cut_is_a_problem_of_that_step(old, new):
    """A pass of no width, or less: an arc that there is not took the figures of all steps with it."""
    for text in corpora()["job"]:
        job = loaded(text.replace(old, new, 1))
        assert job is None or not read_through(job)


def test_figures_that_fail_fail_for_their_own_step(hm100, monkeypatch):
    from jobsheet.reckoning import by_value
    from jobsheet.reckoning.reckoner import Reckoner

    whole = by_value._by_kind

    def broken(name, fields, setting):
        if name == "face":
            raise ValueError("as if")
        return whole(name, fields, setting)

    by_value._figured.forget()
    by_value._reckoned.forget()
    monkeypatch.setattr(by_value, "_by_kind", broken)
    found = dict(Reckoner().reckon(hm100).operations)
    monkeypatch.undo()
    by_value._figured.forget()
    by_value._reckoned.forget()
    failed = [key for key, outcome in found.items() if "the program failed here" in outcome.problem]
    assert failed == ["face-rough", "face-finish"]
    assert found["drill"].figures is not None
