"""Every published number comes out, or the row says what comes out instead and why."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
import yaml

from .published import ROWS
from .row import Row


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.id}, {row.source}, {row.mark}")
def test_published_number(row: Row):
    got = row.calc()
    if row.ours is None:
        assert got == pytest.approx(row.published, abs=row.tolerance, rel=1e-9)
    else:
        assert abs(got - row.published) > row.tolerance, "it reproduces now: take the note away"
        assert got == pytest.approx(row.ours, rel=0.01)
        assert row.note


def test_every_rows_source_is_known():
    text = (Path(__file__).parents[2] / "resources" / "sources.yaml").read_text("utf-8")
    assert {row.source for row in ROWS} <= set(yaml.safe_load(text)["sources"])


def test_each_row_has_its_own_id():
    assert [key for key, count in Counter(row.id for row in ROWS).items() if count > 1] == []


def test_every_worked_example_is_there():
    assert {row.id.split()[0] for row in ROWS} >= {f"A{number}" for number in range(1, 36)}


def test_read_and_remembered_are_counted_apart():
    marks = {}
    for row in ROWS:
        head = row.id.split()[0]
        if head[0] == "A" and head[1:].isdigit():
            marks.setdefault(head, row.mark)
    assert Counter(marks.values()) == {"read": 26, "part remembered": 3, "remembered": 5, "derived": 1}
