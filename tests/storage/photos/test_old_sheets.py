"""Old sheets of a part without a plan: kept as they are, found by the words beside them, and
told where they are others by now.
"""

from __future__ import annotations

from hashlib import sha256

import pytest

from jobsheet.errors import CommandError, DocumentError
from jobsheet.shelf.checking import checked
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find
from jobsheet.storage.photos.old_sheets import OldSheets, read_old_sheets, sheet_bytes
from jobsheet.storage.photos.old_sheets_kept import put_on_shelf
from tests.photographs_made import photograph

SAID = OldSheets(number="HM-77", name="Gudgeon", words="milled from bar, drill 6.8", drawer="green box", who="B", when="2026-11-30")  # fmt: skip


@pytest.fixture
def files(tmp_path):
    """A scan with two sheets, and a photograph as a telephone makes it."""
    scan, shot = tmp_path / "front.pdf", tmp_path / "back.jpg"
    scan.write_bytes(b"%PDF-1.4\n% nothing in it\n")
    shot.write_bytes(photograph(orientation=6))
    return scan, shot


@pytest.fixture
def shelf(tmp_path, own_home):
    there = tmp_path / "shelf"
    there.mkdir()
    return there


def test_what_is_put_there_is_read_again_and_named_by_its_content(shelf, files):
    record = put_on_shelf(shelf, SAID, files)
    said = read_old_sheets(record)
    assert (said.number, said.name, said.words, said.drawer) == ("HM-77", "Gudgeon", "milled from bar, drill 6.8", "green box")  # fmt: skip
    scan, shot = said.sheets
    assert scan.content == sha256(files[0].read_bytes()).hexdigest()
    assert sheet_bytes(record, scan) == files[0].read_bytes()
    assert (shot.kind, shot.shows) == ("jpg", "back")
    assert sorted(path.name for path in (shelf / "old-sheets").iterdir()) == sorted((scan.name, shot.name))


def test_nothing_is_written_over(shelf, files):
    first, second = put_on_shelf(shelf, SAID, files[:1]), put_on_shelf(shelf, SAID, files)
    assert first != second
    assert len(read_old_sheets(first).sheets) == 1
    assert len(read_old_sheets(second).sheets) == 2


def test_they_are_found_as_a_part_by_words_and_sizes(shelf, files, samples):
    put_on_shelf(shelf, SAID, files)
    (shelf / "hm-103.yaml").write_bytes((samples / "hm-103-pivot-block.yaml").read_bytes())
    index = Index(shelf)
    index.refresh()
    found = {question: sorted(hit.number for hit in find(index, question).hits) for question in ("gudgeon", "green box", "old sheet", "6.8", "hm-7", "pivot")}  # fmt: skip
    wrong = [one for one in checked(index) if not isinstance(one, int)]
    index.close()
    assert found == {"gudgeon": ["HM-77"], "green box": ["HM-77"], "old sheet": ["HM-77"], "6.8": ["HM-103", "HM-77"], "hm-7": ["HM-77"], "pivot": ["HM-103"]}  # fmt: skip
    assert wrong == []


def test_one_that_is_gone_or_another_by_now_is_said_by_check(shelf, files):
    record = put_on_shelf(shelf, SAID, files)
    scan, shot = read_old_sheets(record).sheets
    (shelf / "old-sheets" / scan.name).write_bytes(b"%PDF another")
    (shelf / "old-sheets" / shot.name).unlink()
    with pytest.raises(CommandError, match="front is another file now"):
        sheet_bytes(record, scan)
    index = Index(shelf)
    index.refresh()
    wrong = [str(one) for one in checked(index) if not isinstance(one, int)]
    index.close()
    assert len(wrong) == 2
    assert "back is not there any more" in wrong[1]


@pytest.mark.parametrize(
    ("number", "name", "content", "sentence"),
    [
        ("", "a.pdf", b"%PDF", "The part has no number"),
        ("X", "a.tif", b"II*\x00", "a.tif is no JPEG or PNG picture, whatever its name says; save the photograph as JPEG, or as PDF."),
        ("X", "gone.pdf", None, "gone.pdf cannot be read"),
    ],
)  # fmt: skip
def test_what_cannot_be_put_there_is_one_sentence_and_nothing_is_left(
    shelf, tmp_path, number, name, content, sentence
):
    if content is not None:
        (tmp_path / name).write_bytes(content)
    with pytest.raises(CommandError) as refused:
        put_on_shelf(shelf, OldSheets(number=number), [tmp_path / name])
    assert str(refused.value).startswith(sentence)
    assert list(shelf.iterdir()) == []


def test_a_broken_record_says_its_line(shelf, files):
    record = put_on_shelf(shelf, SAID, files)
    text = record.read_text("utf-8")
    record.write_text(
        text.replace("drawer: green box", "drwer: 4").replace("content: ", "content: x", 1), encoding="utf-8"
    )
    with pytest.raises(DocumentError) as refused:
        read_old_sheets(record)
    said = [str(problem) for problem in refused.value.problems]
    assert any(one.startswith("line 5: drwer: unknown field") for one in said)
    assert any("SHA-256" in one for one in said)
