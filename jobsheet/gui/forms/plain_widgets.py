"""Labels, boxes and lists of choices that take words of a person: plain, and no width comes from them."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtWidgets import QComboBox, QLabel, QMessageBox, QSizePolicy, QWidget

from jobsheet.gui.forms.plain_words import ENTRY, folded, hover, literal, shortened, tip
from jobsheet.units.lazily import pattern

#: What a label shows of a text, in letters: several lines, and never a whole window.
SHOWN = 700
#: Lines of a box that stay in sight; common practice, no source.
LINES = 20
#: Letters of a word after which a line may break inside it.
WORD = 30
_LONG_WORD = pattern(rf"\S{{{WORD}}}(?=\S)")


def box(parent: QWidget | None, sentence: str) -> QMessageBox:
    """A box that says a sentence, with the program's name on it."""
    made = QMessageBox(parent)
    # Not "delete on close": whoever asked still wants to know which button was pressed.
    made.finished.connect(made.deleteLater)
    made.setTextFormat(QtCore.Qt.TextFormat.PlainText)
    made.setWindowTitle(QtCore.QCoreApplication.translate("Ask", "Job sheet"))
    whole = folded(sentence)
    lines = whole.split("\n")
    if len(lines) > LINES:  # a box that is higher than the screen has its buttons below it
        made.setDetailedText(literal(sentence))
        whole = "\n".join([*lines[: LINES - 1], "…"])
    made.setText(whole)
    return made


class Label(QLabel):
    """Words that wrap at the width they are given and ask for none; all of them on hover where they were shortened."""

    def __init__(self, words: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        policy = self.sizePolicy()
        policy.setHorizontalPolicy(QSizePolicy.Policy.Ignored)
        self.setSizePolicy(policy)
        self.say(words)

    def say(self, words: str) -> None:
        """Show these words."""
        shown = shortened(literal(words), SHOWN)
        # The sign without a width lets a line break where a word is longer than a line.
        self.setText(_LONG_WORD.sub(lambda part: f"{part[0]}\u200b", shown))
        hover(self, words if len(words) > SHOWN else "")


class PaintedText(QLabel):
    """Words that a widget paints itself: to a screen reader they are a text, by their accessible name."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)


def named(box: QComboBox, words: str) -> None:
    """Name a list of choices: the toolkit takes what is chosen in it for its name, unless a label stands for it."""
    box.setAccessibleName(words)
    label = QLabel(words, box.parentWidget())
    label.setTextFormat(QtCore.Qt.TextFormat.PlainText)
    label.setBuddy(box)
    label.hide()


class Choices(QComboBox):
    """A list whose width comes from the room it has, not from the longest name in it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(18)

    def offer(self, words: str, value: object) -> None:
        """One more to choose; all of its words on hover where they are many."""
        self.addItem(shortened(literal(words), ENTRY), value)
        self.setItemData(self.count() - 1, tip(words), QtCore.Qt.ItemDataRole.ToolTipRole)
