"""Days in a question: a month by its name, with a year or without, and a day as it is written down."""

from __future__ import annotations

import pytest

from jobsheet.shelf.days_asked import asked_when
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import asked_by, find


@pytest.mark.parametrize(
    ("text", "patterns", "rest"),
    [
        ("October", ["____-10%"], ""), ("M8 october 2026 brass", ["2026-10%"], "M8   brass"), ("2026-10", ["2026-10%"], ""),
        ("2026-10-14", ["2026-10-14%"], ""), ("may break", [], "may break"), ("May", ["____-05%"], ""), ("may 2025", ["2025-05%"], ""),
        ("HM-2026-10", [], "HM-2026-10"), ("2026-13", [], "2026-13"), ("marching", [], "marching"),
    ],
)  # fmt: skip
def test_days_are_taken_out_of_a_question(text, patterns, rest):
    found, left = asked_when(text)
    assert [one.pattern for one in found] == patterns
    assert left.strip() == rest


def test_jobs_are_found_by_their_day(samples, tmp_path, own_home):
    for name, day in (("hm-102-slide-plate", "2026-10-14"), ("hm-103-pivot-block", "2025-05-02")):
        text = (samples / f"{name}.yaml").read_text("utf-8")
        line = next(line for line in text.splitlines() if line.startswith("planned on:"))
        (tmp_path / f"{name}.yaml").write_text(text.replace(line, f"planned on: {day}"), encoding="utf-8")
    index = Index(tmp_path)
    index.refresh()
    found = {question: [hit.number for hit in find(index, question).hits] for question in ("October", "october 2025", "2025-05", "May slot", "2026-10-14")}  # fmt: skip
    index.close()
    assert found == {"October": ["HM-102"], "october 2025": [], "2025-05": ["HM-103"], "May slot": [], "2026-10-14": ["HM-102"]}  # fmt: skip
    assert asked_by("October 2026 M8").said == "M8 · day: October 2026"
