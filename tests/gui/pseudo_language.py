"""Opens every row and place of a sample in a language that is two fifths longer; prints what
did not reach it and what is clipped.

Each text comes back marked and stretched, its fields and its key kept. In a process of its own: what is
translated when a module is read would otherwise depend on who read it first.
"""

import ast
import re
import sys
from pathlib import Path

import shiboken6
from PySide6.QtCore import QTranslator
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QGroupBox, QLabel, QMenu, QWidget

import jobsheet.gui
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.ink import look
from jobsheet.gui.start import start
from jobsheet.paths import sample_jobs

SIZE = (1440, 900)
LONGER = 0.4
MARK, END = "⟦", "⟧"


def stretched(text):
    """A text in the language: marked, two fifths longer, its fields and keys as they were."""
    more = "".join(" ~" if at % 6 == 5 else "~" for at in range(round(len(text) * LONGER) - 2))
    return f"{MARK}{text}{more}{END}"


class Longer(QTranslator):
    """The language."""

    def __init__(self):
        super().__init__()
        self.asked = set()

    def isEmpty(self):  # noqa: N802
        return False

    def translate(self, context, source, _meant=None, _count=-1):
        if context.startswith("Q"):
            return ""  # the toolkit's own
        self.asked.add((context, source))
        return stretched(source)


def literals():
    """Texts that could be shown and stand only in the source of `gui/`: what entries and
    rules call themselves comes from below.
    """
    ours, below = set(), set()
    here = Path(jobsheet.gui.__file__).parent
    for path in here.parent.rglob("*.py"):
        kept = ours if path.is_relative_to(here) else below
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                kept.add(node.value)
    return {text for text in ours - below if re.search(r"^[A-Z&].*[a-z]", text)}


class Looking:
    """What was looked at, what is not of the language, what has no room."""

    def __init__(self):
        self.ours, self.seen, self.wrong = literals(), 0, {}

    def text(self, where, text):
        self.seen += 1
        if text in self.ours and MARK not in text:
            self.wrong[f"{where}: not translated: {text[:60]}"] = None

    def window(self, where, window):
        QApplication.processEvents()
        self.text(where, window.windowTitle())
        if window.minimumSizeHint().width() > SIZE[0]:
            self.wrong[f"{where}: asks for {window.minimumSizeHint().width()}"] = None
        for one in window.findChildren(QWidget):
            if not shiboken6.isValid(one) or not one.isVisible() or one.window() is not window:
                continue
            text = (
                one.text()
                if isinstance(one, QLabel | QAbstractButton)
                else one.title()
                if isinstance(one, QGroupBox)
                else ""
            )
            if text:
                self.text(where, text)
                self.room(where, one, text)
            if one.accessibleName():
                self.text(f"{where}, read aloud", one.accessibleName())
            if one.toolTip():
                self.text(f"{where}, tip", one.toolTip())

    def room(self, where, one, text):
        """A button shows its whole text or has it in its tip; a label wraps, or shows all."""
        wide = max(
            (one.fontMetrics().horizontalAdvance(line) for line in text.replace("&", "").splitlines()),
            default=0,
        )
        wraps = isinstance(one, QLabel) and one.wordWrap()
        if wraps:
            short = one.height() < one.heightForWidth(one.width()) if one.hasHeightForWidth() else False
        else:
            short = wide > one.width() + 1
        if short and text not in one.toolTip() and MARK in text:
            self.wrong[f"{where}: no room for {type(one).__name__} {text[:60]} ({wide} in {one.width()})"] = (
                None
            )


def main():
    app = QApplication.instance() or QApplication(["longer"])
    language = Longer()
    app.installTranslator(language)
    look.load_fonts()
    look.apply("light")
    window = start.make_window(open_at_start(str(sample_jobs() / sys.argv[1])))
    window.resize(*SIZE)
    window.show()
    while not window.actions_by_id:
        QTest.qWait(20)
    looking = Looking()
    looking.window("window", window)
    for action in window.findChildren(QAction):
        looking.text("menu", action.text())
    for name in ("[machines]", "[samples]", "[kinds]"):
        menu = QMenu(window)
        window.fill_menu(name, menu)
    for key in list(window.bench.column.ruled.by_key):
        window.open_key(key)
        window.later.soon()
        QTest.qWait(120)
        looking.window(f"row {key}", window)
        window.close_row()
    for way in window.parts.ways:
        before = set(QApplication.topLevelWidgets())
        window.actions_by_id[way.id].trigger()
        QTest.qWait(50)
        made = [one for one in QApplication.topLevelWidgets() if one not in before and one.isVisible()]
        for one in made:
            if not isinstance(one, QMenu) and not one.inherits("QTipLabel"):
                looking.window(way.id, one)
                one.close()
    print(looking.seen, len(language.asked))
    print(*looking.wrong, sep="\n")
    window.desk.history.mark_saved()
    window.close()


if __name__ == "__main__":
    main()
