"""Labels, boxes and lists that take words of a person: nothing in them is read as anything but words."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from jobsheet.gui.forms.plain_widgets import LINES, SHOWN, WORD, Choices, Label, PaintedText, box, named


@pytest.mark.parametrize("words", ["<b>bold</b>", "a & b", "&File", "<a href='x'>here</a>"])
def test_a_label_shows_letters_as_letters(qtbot, words):
    label = Label(words, None)
    qtbot.addWidget(label)
    assert label.text() == words
    assert label.textFormat() == Qt.TextFormat.PlainText


def test_a_long_text_is_shortened_with_all_of_it_on_hover(qtbot):
    long = "word " * SHOWN
    label = Label(long, None)
    qtbot.addWidget(label)
    assert len(label.text()) <= SHOWN + 1
    assert label.toolTip()
    label.say("short")
    assert (label.text(), label.toolTip()) == ("short", "")


def test_a_word_that_is_longer_than_a_line_can_break(qtbot):
    label = Label("x" * (2 * WORD + 5), None)
    qtbot.addWidget(label)
    assert label.text().count("\u200b") == 2
    assert label.text().replace("\u200b", "") == "x" * (2 * WORD + 5)
    label.say("x" * WORD)
    assert "\u200b" not in label.text()


def test_a_box_with_many_lines_keeps_its_buttons_in_sight(qtbot):
    short, long = box(None, "One sentence."), box(None, "\n".join(f"line {at}" for at in range(60)))
    assert short.text() == "One sentence."
    assert short.detailedText() == ""
    assert len(long.text().split("\n")) == LINES
    assert long.text().endswith("…")
    assert "line 59" in long.detailedText()
    assert short.textFormat() == Qt.TextFormat.PlainText
    for one in (short, long):
        one.deleteLater()


def test_a_list_is_named_and_is_as_wide_as_its_room(qtbot):
    choices = Choices(None)
    qtbot.addWidget(choices)
    before = choices.sizeHint().width()
    choices.offer("w" * 500, 7)
    assert choices.itemData(0) == 7
    assert choices.sizeHint().width() == before
    named(choices, "Machine")
    assert choices.accessibleName() == "Machine"


def test_painted_words_are_plain(qtbot):
    made = PaintedText(None)
    qtbot.addWidget(made)
    assert made.textFormat() == Qt.TextFormat.PlainText
