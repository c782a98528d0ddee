"""Old sheets are put on the shelf as they are, and nothing is written over."""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite, CommandError
from jobsheet.storage.photos import old_sheets_kept
from jobsheet.storage.photos.old_sheets import FOLDER, OldSheets, read_old_sheets, sheet_bytes
from jobsheet.storage.photos.old_sheets_kept import put_on_shelf

PDF = b"%PDF-1.7\nan old sheet\n"
SAID = OldSheets(
    number="HM-077", name="Old bracket", words="was cut on B-1", drawer="3", who="AB", when="2026-11-30"
)


@pytest.fixture
def shelf(tmp_path):
    made = tmp_path / "shelf"
    made.mkdir()
    return made


@pytest.fixture
def scan(tmp_path):
    path = tmp_path / "front.pdf"
    path.write_bytes(PDF)
    return path


def test_the_file_lies_there_as_it_was_with_what_was_typed_beside_it(shelf, scan):
    path = put_on_shelf(shelf, SAID, [scan])
    found = read_old_sheets(path)
    assert (found.number, found.name, found.words, found.drawer, found.who, found.when) == (
        "HM-077", "Old bracket", "was cut on B-1", "3", "AB", "2026-11-30",
    )  # fmt: skip
    (sheet,) = found.sheets
    assert (sheet.kind, sheet.shows) == ("pdf", "front")
    assert sheet_bytes(path, sheet) == PDF
    assert scan.read_bytes() == PDF


def test_the_same_scan_twice_is_one_and_a_second_time_is_a_file_beside(shelf, scan, tmp_path):
    again = tmp_path / "copy.pdf"
    again.write_bytes(PDF)
    first = put_on_shelf(shelf, SAID, [scan, again])
    assert len(read_old_sheets(first).sheets) == 1
    kept = first.read_bytes()
    second = put_on_shelf(shelf, SAID, [scan])
    assert second != first
    assert first.read_bytes() == kept
    assert len(list((shelf / FOLDER).iterdir())) == 1


@pytest.mark.parametrize(("number", "files"), [("", True), ("  ", True), ("HM-077", False)])
def test_without_a_number_or_a_sheet_nothing_is_put_there(shelf, scan, number, files):
    with pytest.raises(CommandError):
        put_on_shelf(shelf, OldSheets(number=number), [scan] if files else [])
    assert list(shelf.iterdir()) == []


@pytest.mark.parametrize("raw", [b"", b"plain words", b"\x89PNG but no picture"])
def test_what_cannot_be_shown_is_refused_by_name(shelf, tmp_path, raw):
    path = tmp_path / "strange.bin"
    path.write_bytes(raw)
    with pytest.raises(CommandError, match=r"strange\.bin"):
        put_on_shelf(shelf, SAID, [path])
    assert list(shelf.iterdir()) == []


def test_what_is_missing_or_a_folder_or_too_large_is_refused(shelf, scan, tmp_path, monkeypatch):
    for path in (tmp_path / "gone.pdf", shelf):
        with pytest.raises(CommandError, match=path.stem):
            put_on_shelf(shelf, SAID, [path])
    monkeypatch.setattr(old_sheets_kept, "LARGEST", 5)
    with pytest.raises(CommandError, match="save it smaller"):
        put_on_shelf(shelf, SAID, [scan])


def test_a_shelf_that_cannot_be_written_to_says_so(shelf, scan):
    (shelf / FOLDER).write_text("a file where the folder should be")
    with pytest.raises(CannotWrite):
        put_on_shelf(shelf, SAID, [scan])
