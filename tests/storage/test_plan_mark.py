"""Revisions of a plan by letters: those that are taken for others are left out
(lessons-and-shelf section 9, check 8).
"""

from __future__ import annotations

import pytest

from jobsheet.storage.kept.closed_plans import ClosedPlan
from jobsheet.storage.plan_mark import in_letters, plan_mark


@pytest.mark.parametrize(
    ("number", "letters"),
    [
        (1, "A"), (8, "H"), (9, "J"), (14, "P"), (15, "R"), (16, "T"), (20, "Y"), (21, "AA"), (40, "AY"), (41, "BA"), (420, "YY"),
        (421, "421"), (0, "0"),
    ],
)  # fmt: skip
def test_letters_of_the_standard(number, letters):
    assert in_letters(number) == letters


def test_none_of_them_is_taken_for_another():
    assert not set("".join(in_letters(number) for number in range(1, 421))) & set("IOQSXZ")
    assert len({in_letters(number) for number in range(1, 421)}) == 420


def test_a_workshop_says_it_and_every_sentence_follows(own_home, tmp_path):
    plan = ClosedPlan(path=tmp_path / "x", number=3, date="2026-11-30", how="printed", code="")
    assert (plan_mark(3), plan.words()) == ("3", "plan 3, printed 2026-11-30")
    (own_home / "workshop.yaml").write_text("format: 1\nplan marks: letters\n", encoding="utf-8")
    assert (plan_mark(3), plan.words()) == ("C", "plan C, printed 2026-11-30")
    (own_home / "workshop.yaml").write_text("format: 1\nplan marks: runes\n", encoding="utf-8")
    assert plan_mark(3) == "3"
