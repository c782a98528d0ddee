"""Old sheets are put on the shelf after two questions; each can be called
off, and what goes wrong is said.
"""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms import ask
from jobsheet.gui.places.shelf.old_sheet_put import put_old_sheets
from jobsheet.storage.photos.old_sheets import ENDING, read_old_sheets


@pytest.fixture
def answers(qtbot, tmp_path, monkeypatch):
    parent, shelf, scan = QWidget(), tmp_path / "shelf", tmp_path / "front.pdf"
    qtbot.addWidget(parent)
    shelf.mkdir()
    scan.write_bytes(b"%PDF-1.7\n")
    given = {
        "files": [scan],
        "said": ("HM-077", "Old bracket", "on B-1", "3", "AB"),
        "told": [],
        "parent": parent,
        "shelf": shelf,
    }
    monkeypatch.setattr(ask, "scans", lambda *_: given["files"])
    monkeypatch.setattr(ask, "old_sheet", lambda *_: given["said"])
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: given["told"].append(sentence))
    return given


def _put(answers):
    return put_old_sheets(answers["parent"], answers["shelf"], "2026-11-30")


def test_what_is_on_the_shelf_now_is_said(answers):
    assert _put(answers) == "HM-077 is on the shelf: files: 1."
    (path,) = answers["shelf"].glob(f"*{ENDING}")
    found = read_old_sheets(path)
    assert (found.number, found.name, found.words, found.drawer, found.who, found.when) == (
        "HM-077", "Old bracket", "on B-1", "3", "AB", "2026-11-30",
    )  # fmt: skip


@pytest.mark.parametrize(("question", "answer"), [("files", []), ("said", None)])
def test_each_question_can_be_called_off(answers, question, answer):
    answers[question] = answer
    assert _put(answers) == ""
    assert list(answers["shelf"].iterdir()) == []
    assert answers["told"] == []


def test_what_goes_wrong_is_said(answers):
    answers["said"] = ("", "", "", "", "")
    assert _put(answers) == ""
    assert answers["told"] == ["The part has no number: write the number that stands on the old sheet."]
