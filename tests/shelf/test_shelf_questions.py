"""Words and sizes find what has them; the question is told back."""

from __future__ import annotations

import pytest

from jobsheet.model.what_ran import Entry
from jobsheet.shelf.shelf_questions import asked_by, find
from jobsheet.storage.records.run_log import record

from .numbers_found import numbers


@pytest.mark.parametrize(
    ("question", "wanted"),
    [
        ("drill 6.8", ["HM-103"]), ("drill 6.80 mm", ["HM-103"]), ("drill 6,8", ["HM-103"]), ("6.8 drill", ["HM-103"]),
        ("slot 10", ["HM-102"]), ("M8", ["HM-103"]), ("16 H7", ["HM-103"]), ("HM-104", ["HM-104"]), ("hm-10", ["HM-100", "HM-101", "HM-102", "HM-103", "HM-104"]),
        ("pivot", ["HM-103"]), ("PIVOT block", ["HM-103"]), ("6082", ["HM-102"]), ("no such thing", []), ("drill 6.81", []), ("cover plate", ["HM-104"]),
        ("0.2677 in", ["HM-103"]), ("bench-mill-b-2", ["HM-100"]), ('"* AND ( zzz', []), ("%", []), ("'; drop table jobs; --", []),
    ],
)  # fmt: skip
def test_words_and_sizes_find_what_has_them(index, question, wanted):
    assert numbers(index, question) == wanted


def test_nothing_asked_is_all_and_the_last_made_comes_first(index, shelf):
    assert find(index, "").count == 7
    entry = Entry(
        job="HM-102",
        plan="",
        revision=0,
        machine="knee-mill-k-2",
        date="2026-11-20",
        about="step",
        key="a",
        number=90,
        outcome="broke",
    )
    record(shelf / "hm-102-slide-plate.yaml", (entry,))
    entry = Entry(
        job="HM-101",
        plan="",
        revision=0,
        machine="bench-mill-b-1",
        date="2026-11-25",
        about="step",
        key="a",
        number=30,
        outcome="clean",
    )
    record(shelf / "hm-101-setting-block.yaml", (entry,))
    index.refresh()
    assert [hit.number for hit in find(index, "").hits[:2]] == ["HM-101", "HM-102"]
    first = find(index, "trouble first").hits[0]
    assert (first.number, first.went, first.made, first.times) == (
        "HM-102",
        "stopped at 90: broke",
        "2026-11-20",
        1,
    )
    assert find(index, "hm-101").hits[0].went == "clean"


def test_where_it_was_found_stands_beside_it(index):
    (hit,) = find(index, "drill 6.8").hits
    assert hit.where.startswith("cutter: drill 6.8")
    (hit,) = find(index, "slot 10").hits
    assert "slot 10 +0.05/0" in hit.where


def test_the_question_is_told_back():
    assert asked_by("drill 6.8 brass trouble first").said == "drill 6.8 · brass · trouble first"
    assert asked_by("1/4 in M8").said == "6.35 mm · M8"
