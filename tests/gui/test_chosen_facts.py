"""The chosen job of the shelf: what its file says, what happened at the
machine, and what is wrong with it.
"""

from __future__ import annotations

import shutil

import pytest

from jobsheet.gui.places.shelf.chosen_facts import DIFFERENT, facts_of
from jobsheet.model.what_ran import Entry
from jobsheet.paths import sample_jobs
from jobsheet.storage.records.run_log import record


@pytest.fixture
def path(qapp, tmp_path):
    made = tmp_path / "cover.yaml"
    shutil.copy(sample_jobs() / "hm-104-cover-plate.yaml", made)
    return made


def test_what_the_file_says_stands_there_and_what_it_does_not_has_no_line(path):
    found = facts_of(path, lambda name: f"the {name}")
    facts = dict(found.facts)
    assert found.title.startswith("HM-104 ")
    assert facts["File"] == "cover.yaml"
    assert facts["Machine"].startswith("the ")
    assert all(words.strip(" ,") for words in facts.values())
    assert dict(found.blocks)["At the machine"] == (("", "nothing is written down yet"),)


def test_what_happened_at_the_machine_is_told(path):
    record(path, (Entry(
        job="HM-104", plan="D495-6QV9-7Y6", revision=1, machine="m", date="2026-12-02", about="step", key="drill", number=34, step="Drill",
        outcome="noisy",
    ),))  # fmt: skip
    lines = dict(facts_of(path).blocks)["At the machine"]
    assert any("noisy" in " ".join(words) for words in lines)


def test_another_plan_of_the_part_is_compared_and_the_rest_counted(path, tmp_path):
    other = tmp_path / "other.yaml"
    shutil.copy(path, other)
    ((_, lines),) = [block for block in facts_of(path, others=(other,)).blocks if "other.yaml" in block[0]]
    assert lines == (("", "nothing is different"),)
    shutil.copy(sample_jobs() / "hm-101-setting-block.yaml", other)
    ((_, lines),) = [block for block in facts_of(path, others=(other,)).blocks if "other.yaml" in block[0]]
    assert 1 < len(lines) <= DIFFERENT + 1
    other.write_text("job: [")
    assert not [block for block in facts_of(path, others=(other,)).blocks if "other.yaml" in block[0]]


@pytest.mark.parametrize("text", ["", "job: [", "job: {}\n"])
def test_a_broken_one_gives_its_first_problems(path, text):
    path.write_text(text)
    found = facts_of(path)
    assert found.title == "cover.yaml"
    assert found.problem
    assert found.problem.count("\n") < 6
    assert found.facts == ()
