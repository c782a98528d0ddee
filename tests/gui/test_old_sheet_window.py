"""Old sheets in the window: put on the shelf by key, found as a part, opened, and read as they are."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QLabel, QLineEdit, QWidget
from reportlab.pdfgen.canvas import Canvas

from jobsheet.gui.forms import ask
from jobsheet.gui.places.shelf.old_sheet_window import OldSheetWindow
from jobsheet.gui.places.shelf.shelf_window import ShelfWindow
from jobsheet.storage.kept.shelf_kept import keep_shelf
from jobsheet.storage.photos.old_sheets import OldSheets
from jobsheet.storage.photos.old_sheets_kept import put_on_shelf
from tests.gui.test_shelf_window import typed
from tests.photographs_made import photograph


@pytest.fixture
def place(window, qtbot, tmp_path):
    there = tmp_path / "shelf"
    there.mkdir()
    keep_shelf(there)
    window.actions_by_id["shelf"].trigger()
    found = next(one for one in window.findChildren(ShelfWindow) if one.isVisible())
    qtbot.waitUntil(lambda: "no job in this folder" in found.said.text())
    yield found
    for one in window.findChildren(QDialog):
        one.close()


def test_from_the_scanner_to_the_screen_by_key(place, qtbot, tmp_path, monkeypatch):
    scan, shot = tmp_path / "front.pdf", tmp_path / "back.jpg"
    canvas = Canvas(str(scan))
    canvas.drawString(72, 700, "Lever, milled from bar")
    canvas.save()
    shot.write_bytes(photograph(900, 600))
    monkeypatch.setattr(ask, "scans", lambda *_: (scan, shot))

    def write() -> None:
        box = next(one for one in QApplication.topLevelWidgets() if one.isVisible() and one.findChildren(QLineEdit) and not isinstance(one, ShelfWindow) and isinstance(one, QDialog))  # fmt: skip
        for line, text in zip(
            box.findChildren(QLineEdit), ("HM-77", "Lever", "gudgeon", "drawer 4", "B"), strict=True
        ):
            typed(line, text)
        box.accept()

    QTimer.singleShot(200, write)
    place.old.setFocus()
    QTest.keyClick(place.old, Qt.Key.Key_Space)
    assert place.said.text() == "HM-77 is on the shelf: files: 2."
    place.line.setFocus()
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == 1)
    typed(place.line, "gudgeon")
    assert place.list.said(place.found.hits[0]).startswith(
        "HM-77 Lever, no plan yet, old sheet, Enter shows it"
    )
    qtbot.waitUntil(lambda: place.facts.facts.title == "HM-77 Lever")
    assert ("Drawer", "drawer 4") in place.facts.facts.facts
    QTest.keyClick(place.line, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(place.findChildren(OldSheetWindow)))
    (sheets,) = place.findChildren(OldSheetWindow)
    assert [page.accessibleName() for page in sheets.pages] == ["front, page 1", "back, page 1"]
    assert sheets.problems == []
    assert all(page.pixmap().width() > 400 for page in sheets.pages)
    QTest.keyClick(sheets, Qt.Key.Key_Escape)
    assert place.isVisible()


def test_a_damaged_one_is_said_and_the_others_are_shown(place, tmp_path):
    scan, shot = tmp_path / "torn.pdf", tmp_path / "back.png"
    scan.write_bytes(b"%PDF-1.4 nothing")
    shot.write_bytes(photograph(kind="PNG"))
    record = put_on_shelf(place.index.shelf, OldSheets(number="X"), (scan, shot))
    sheets = OldSheetWindow(place, record)
    assert sheets.problems == ["torn is damaged: it cannot be drawn. Fetch it again from where it came."]
    assert [page.accessibleName() for page in sheets.pages] == ["back, page 1"]
    sheets.close()


def test_pages_that_are_not_shown_are_counted(qtbot, tmp_path, monkeypatch):
    scan = tmp_path / "book.pdf"
    canvas = Canvas(str(scan))
    for number in range(3):
        canvas.drawString(72, 700, f"page {number}")
        canvas.showPage()
    canvas.save()
    record = put_on_shelf(tmp_path, OldSheets(number="HM-78"), [scan])
    monkeypatch.setattr("jobsheet.gui.places.shelf.old_sheet_window.MOST", 2)
    parent = QWidget()
    qtbot.addWidget(parent)
    parent.resize(800, 600)
    shown = OldSheetWindow(parent, record)
    assert len(shown.pages) == 2
    assert "Pages of book that are not shown here: 1. Open its file to see them." in [
        one.text() for one in shown.findChildren(QLabel)
    ]
    shown.close()
