"""The lessons that are shipped: written as a trainer would, and every exercise that they name can be made."""

from __future__ import annotations

import shlex

import pytest

from jobsheet.__main__ import main
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

LESSONS = sorted((sample_jobs() / "lessons").glob("*.md"))
COMMANDS = [
    line.strip()
    for path in LESSONS
    for line in path.read_text(encoding="utf-8").splitlines()
    if line.startswith("    jobsheet")
]


def test_there_are_four_of_them_with_aim_and_source():
    assert len(LESSONS) == 4
    for path in LESSONS:
        text = path.read_text(encoding="utf-8")
        for head in ("## Aim", "## What to know", "## Exercise", "## Talk about it", "Source of the order: "):
            assert head in text, path.name


@pytest.mark.parametrize("command", COMMANDS)
def test_every_exercise_that_they_name_can_be_made(command, tmp_path, capsys):
    """Two sheets in place of a class: a dozen of them only take longer."""
    words = shlex.split(command)[1:]
    words[words.index("--class") + 1] = "2"
    words = [str(sample_jobs().parent / one) if one.startswith("sample_jobs/") else one for one in words]
    assert main([*words, "-o", str(tmp_path)]) == 0
    assert len(list(tmp_path.glob("*.pdf"))) == 2
    assert "page" in capsys.readouterr().out


def test_the_step_and_the_threads_have_ten_right_orders(samples):
    """As the fourth lesson says, and as can be counted: two lanes of two and three behind the
    zero are mixed in 5! / (2! 3!) ways.
    """
    reckoned = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    assert order_exercise(reckoned, 1, 5, 1, (5,)).asked.count() == 10
