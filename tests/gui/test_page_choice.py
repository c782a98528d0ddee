"""In the print place, by keys: which pages, which steps, and what this workshop always wants."""

from __future__ import annotations

import io
import threading
import time

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.gui.desk import job_pdf
from jobsheet.gui.pages.print_window import PrintWindow
from jobsheet.storage.shop_file import NAME, workshop
from tests.gui.conftest import PATIENCE

Key = Qt.Key


@pytest.fixture
def preview(window, qtbot):
    made = PrintWindow(window.desk, window.parts.exporting.write, window)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    made_there(made)
    return made


def made_there(preview):
    """Wait for the pages: they are made beside the window."""
    until = time.monotonic() + PATIENCE / 1000
    while preview.waiting:
        assert time.monotonic() < until
        QTest.qWait(10)


def tick(preview, name):
    box = preview.choice.boxes[name]
    box.setFocus()
    QTest.keyClick(box, Key.Key_Space)
    made_there(preview)


def text(preview) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(preview.pdf)).pages)


def test_the_keyboard_reaches_every_box_in_order(preview):
    preview.choice.boxes["whole"].setFocus()
    met = []
    for _ in range(5):
        met.append(preview.focusWidget())
        QTest.keyClick(preview.focusWidget(), Key.Key_Tab)
    assert [box for box in met if box in preview.choice.boxes.values()] == list(preview.choice.boxes.values())


def test_a_card_for_typed_steps(preview, qtbot):
    tick(preview, "whole")
    assert preview.pdf == b""
    assert preview.view.count == 0
    assert "No page is chosen" in preview.count.text()
    assert not any(button.isEnabled() for button in preview.out)
    tick(preview, "step")
    assert preview.view.count > 1
    box = preview.choice.steps
    box.setFocus()
    for letter in "60, x":
        QTest.keyClick(box, letter)
    preview.make()
    made_there(preview)
    assert "“x” is no number of a step" in preview.count.text()
    assert preview.pdf == b""
    QTest.keyClick(box, Key.Key_Backspace)
    qtbot.waitUntil(lambda: preview.view.count == 1)
    assert "60 · set-up 1 of 1" in text(preview)
    assert all(button.isEnabled() for button in preview.out)


def test_a_step_that_the_job_does_not_have_is_said(preview):
    tick(preview, "step")
    preview.choice.steps.setFocus()
    for letter in "7":
        QTest.keyClick(preview.choice.steps, letter)
    preview.make()
    made_there(preview)
    assert "There is no step 7 in this job" in preview.count.text()


def test_a_route_list_comes_with_the_sheet_and_is_kept(preview, window, qtbot, home):
    before = preview.view.count
    tick(preview, "route")
    assert preview.view.count == before + 1
    preview.always.setFocus()
    QTest.keyClick(preview.always, Key.Key_Space)
    assert "always prints these pages" in preview.count.text()
    assert (home / NAME).is_file()
    assert workshop().prints.pages == ("whole", "route")
    again = PrintWindow(window.desk, window.parts.exporting.write, window)
    qtbot.addWidget(again)
    made_there(again)
    assert again.choice.boxes["route"].isChecked()
    assert again.view.count == before + 1


def test_an_export_without_looking_has_what_is_always_wanted(window, home, tmp_path, monkeypatch):
    from jobsheet.gui.forms import ask

    (home / NAME).write_text(
        "format: 1\nprint whole: no\nprint route: yes\npaper: letter\n", encoding="utf-8"
    )
    monkeypatch.setattr(ask, "export_path", lambda *_: tmp_path / "x.pdf")
    assert window.parts.exporting.export_pdf()
    (page,) = PdfReader(tmp_path / "x.pdf").pages
    assert "Route list" in page.extract_text()
    assert float(page.mediabox.height) == 792


def test_a_broken_file_of_the_workshop_is_said(window, home, monkeypatch):
    from jobsheet.gui.forms import ask

    (home / NAME).write_text("format: 1\npaper: a3\n", encoding="utf-8")
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    window.parts.exporting.print_sheets()
    assert "a4" in said[0]


def test_the_window_goes_on_while_pages_are_made(preview, qtbot, monkeypatch):
    """Nothing that was made before is printed meanwhile, and what is asked last is what is shown."""
    began, goes_on = threading.Event(), threading.Event()

    def slowly(*given):
        began.set()
        goes_on.wait(30)
        return made_as_ever(*given)

    made_as_ever = job_pdf._made
    monkeypatch.setattr(job_pdf, "_made", slowly)
    preview.choice.boxes["route"].setFocus()
    QTest.keyClick(preview.choice.boxes["route"], Key.Key_Space)
    assert began.wait(30)
    assert preview.waiting
    assert not any(button.isEnabled() for button in preview.out)
    assert "being made" in preview.count.text()
    QTest.keyClick(preview.choice.boxes["route"], Key.Key_Space)
    preview.choice.boxes["whole"].setFocus()
    QTest.keyClick(preview.choice.boxes["whole"], Key.Key_Space)
    goes_on.set()
    made_there(preview)
    assert "No page is chosen" in preview.count.text()
    assert preview.pdf == b""


def test_a_window_that_is_closed_meanwhile_is_told_nothing(window, qtbot):
    made = PrintWindow(window.desk, window.parts.exporting.write, window)
    made.show()
    told = []
    work = made._work
    work._arrived = told.append
    made.reject()
    assert not work.waiting
    qtbot.wait(400)
    assert told == []
