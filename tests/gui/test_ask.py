"""Boxes that stop and wait: on the screen whatever they say, and no question of
the toolkit's own about a name.
"""

import pytest
from PySide6 import QtCore
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from jobsheet.gui.forms import ask

TELL, SAVE_CHANGES, SAVE_PATH = ask.tell, ask.save_changes, ask.save_path
#: The smallest usual screen, less its edges.
SIZE = (1024, 700)
WORDS = {"long": "W" * 3000, "lines": "what is wrong in this line\n" * 200}


def when_it_is_there(do):
    """Do something with the box as soon as it waits for an answer."""
    box = QApplication.activeModalWidget()
    if box is None:
        QtCore.QTimer.singleShot(10, lambda: when_it_is_there(do))
    else:
        do(box)


@pytest.mark.parametrize("asked", [TELL, SAVE_CHANGES], ids=["tell", "save"])
@pytest.mark.parametrize("words", WORDS.values(), ids=WORDS)
def test_a_box_is_never_larger_than_the_screen(window, asked, words):
    seen = []

    def look(box):
        seen.append((box.width(), box.height(), box.detailedText()))
        box.reject()

    QtCore.QTimer.singleShot(0, lambda: when_it_is_there(look))
    asked(window, words)
    ((wide, high, whole),) = seen
    assert (wide <= SIZE[0], high <= SIZE[1]) == (True, True), (wide, high)
    assert words.strip() in whole


def test_a_file_that_is_there_is_asked_about_in_words_of_our_own(window, monkeypatch, tmp_path):
    """The toolkit's own question takes the name for markup, and does not see the ending that is added."""
    name = tmp_path / "<b>plate<br>"
    there = name.with_suffix(".yaml")
    there.write_text("mine", encoding="utf-8")
    options = []

    def chosen(*_args, **named):
        options.append(named["options"])
        return str(name), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    said = []

    def answer(button):
        def press(box):
            said.append((box.textFormat(), box.text()))
            box.button(button).click()

        QtCore.QTimer.singleShot(0, lambda: when_it_is_there(press))

    answer(QMessageBox.StandardButton.Cancel)
    assert SAVE_PATH(window, there) is None
    answer(QMessageBox.StandardButton.Yes)
    assert SAVE_PATH(window, there) == there
    there.unlink()
    assert SAVE_PATH(window, there) == there
    assert len(said) == 2
    assert all(
        format_ == QtCore.Qt.TextFormat.PlainText and "<b>plate<br>.yaml" in text for format_, text in said
    )
    assert all(one & QFileDialog.Option.DontConfirmOverwrite for one in options)


def test_a_name_that_differs_by_case_alone_is_not_taken(window, monkeypatch, tmp_path):
    (tmp_path / "hm-100.yaml").write_text("mine", encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, **__: (str(tmp_path / "HM-100.yaml"), ""))
    said = []
    monkeypatch.setattr(ask, "tell", lambda _, sentence: said.append(sentence))
    assert SAVE_PATH(window, tmp_path / "HM-100.yaml") is None
    assert said == [
        "“hm-100.yaml” is there already, and some computers take “HM-100.yaml” for the same name: choose another one."
    ]
