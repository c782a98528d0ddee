"""Verdicts and pictures are kept by content: found by their word, drawn again as
they were, let go with the file.
"""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Drawing, Ellipse, Line, Text
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find
from jobsheet.shelf.worked_kept import Worked, keep, packed, to_work, unpacked, worked_of

DRAWING = Drawing(
    67.0, 42.0, (Line(((0.0, 1.5), (2.25, 3.0)), "cut", closed=True), Ellipse(1, 2, 3, 4), Text(5, 6, "A"))
)


@pytest.fixture
def index(samples, tmp_path, own_home):
    for name in ("hm-102-slide-plate", "hm-103-pivot-block"):
        (tmp_path / f"{name}.yaml").write_bytes((samples / f"{name}.yaml").read_bytes())
    made = Index(tmp_path, tmp_path / "index.sqlite")
    made.refresh()
    yield made
    made.close()


def test_a_drawing_comes_back_as_it_was():
    assert unpacked(packed(DRAWING)) == DRAWING
    assert unpacked(packed(None)) is None
    assert unpacked(packed(DRAWING)[:20]) is None


def test_what_is_worked_is_found_by_its_word_and_asked_for_once(index):
    left = to_work(index)
    assert sorted(left.values()) == ["hm-102-slide-plate.yaml", "hm-103-pivot-block.yaml"]
    content = next(one for one, path in left.items() if "103" in path)
    assert worked_of(index, content) is None
    worked = Worked(content=content, verdict="tight", at="step 40", small=DRAWING)
    keep(index, worked)
    assert worked_of(index, content) == worked
    assert [hit.number for hit in find(index, "tight").hits] == ["HM-103"]
    assert [hit.number for hit in find(index, "not yet worked").hits] == ["HM-102"]
    assert list(to_work(index).values()) == ["hm-102-slide-plate.yaml"]


def test_what_no_file_says_any_more_is_let_go(index):
    for content in to_work(index):
        keep(index, Worked(content=content, verdict="expected"))
    path = index.shelf / "hm-103-pivot-block.yaml"
    path.write_text(path.read_text("utf-8").replace("quantity: 1", "quantity: 2"), encoding="utf-8")
    index.refresh()
    assert list(to_work(index).values()) == ["hm-103-pivot-block.yaml"]
    assert index.database.execute("select count(*) from worked").fetchone() == (1,)
