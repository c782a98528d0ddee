"""Opens every row, box, tooltip, menu and place of a job with the same words in
every field; prints what is wrong.

In a process of its own: what it looks for hangs the window or ends the program.
"""

import contextlib
import faulthandler
import sys

import msgspec
import shiboken6
from PySide6.QtCore import QEvent, QTimer
from PySide6.QtGui import QTextDocument
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QMenu, QMessageBox, QToolTip, QWidget

from jobsheet.edit.three_ways import compared
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.forms import ask
from jobsheet.gui.ink import look
from jobsheet.gui.start import start
from tests.gui.everywhere import lay_everything

SIZE = (1024, 700)
WIDEST_TIP = 1024


class Looking:
    """What was looked at, and what was wrong with it."""

    def __init__(self, words):
        self.words = words
        self.wrong = []
        self.seen = 0

    def say(self, sentence):
        self.wrong.append(sentence)

    def window(self, name, window):
        """No widget is wider than its window, and the window asks for no more than it has."""
        QApplication.processEvents()
        wide = window.minimumSizeHint().width()
        if wide > SIZE[0] or window.width() > SIZE[0]:
            self.say(f"{name}: asks for {wide}, is {window.width()} wide")
        for one in window.findChildren(QWidget):
            # Showing a tooltip lets what arrives meanwhile take the place of what was there.
            if not shiboken6.isValid(one) or not one.isVisible() or one.window() is not window:
                continue
            if one.width() > window.width():
                self.say(f"{name}: {type(one).__name__} is {one.width()} wide")
            if isinstance(one, QLabel) and one.textFormat().name != "PlainText":
                self.say(f"{name}: a label takes rich text: {one.text()[:40]}")
            if isinstance(one, QComboBox) and one.minimumSizeHint().width() > SIZE[0] // 2:
                self.say(f"{name}: a list asks for {one.minimumSizeHint().width()}")
            if one.toolTip():
                self.tip(name, one)

    def tip(self, name, widget):
        """A tooltip as it is shown: no wider than a screen, and every letter of it there."""
        QToolTip.showText(widget.mapToGlobal(widget.rect().center()), widget.toolTip(), widget)
        self.tip_that_stands(name)

    def tip_that_stands(self, name):
        QApplication.processEvents()
        for label in QApplication.topLevelWidgets():
            if (
                isinstance(label, QLabel)
                and shiboken6.isValid(label)
                and label.isVisible()
                and label.inherits("QTipLabel")
            ):
                self.seen += 1
                if label.width() > WIDEST_TIP:
                    self.say(f"{name}: a tooltip is {label.width()} wide")
                shown = label.text()
                if label.textFormat().name != "PlainText" and shown.startswith("<p style"):
                    document = QTextDocument()
                    document.setHtml(shown)
                    shown = document.toPlainText()
                if "<img" in self.words and "x" in shown and "img src" in shown and "<img src" not in shown:
                    self.say(f"{name}: a tooltip lost what was written: {shown[:80]}")
        QToolTip.hideText()

    def box(self, ask_it):
        """A box as it is asked; it is called off at once."""

        def look_at():
            shown = QApplication.activeModalWidget()
            if shown is None:
                self.say("no box was shown")
                return
            labels = shown.findChildren(QLabel)
            if isinstance(shown, QMessageBox) and shown.textFormat().name != "PlainText":
                self.say("a box takes rich text")
            if not labels or shown.width() > SIZE[0]:
                self.say(f"a box is {shown.width()} wide")
            self.seen += 1
            shown.close()

        QTimer.singleShot(50, look_at)
        ask_it()


def look_at_rows(looking, window):
    for key in list(window.bench.column.ruled.by_key):
        window.open_key(key)
        window.later.soon()
        QTest.qWait(150)
        looking.window(f"row {key}", window)
        row = window.open_row
        margin = getattr(row, "margin", None)
        if margin is not None and not margin.more.isHidden():
            margin.more.setChecked(True)
            looking.window(f"working of {key}", window)
        if row is not None and "cutter" in row.form.fields:
            picking = window.parts.edits.rows.picking
            picking.ask(key, row.form.fields["cutter"])
            QApplication.processEvents()
            under = picking.list
            if under is None or under.geometry().right() > window.width():
                looking.say(f"the list of cutters is {under and under.width()} wide")
            looking.window(f"list of {key}", window)
            picking.leave()
        window.close_row()
    ruled = window.bench.column.ruled
    for line in ruled.by_key.values():
        place = ruled.place_of(line.key)
        if place is not None and line.is_row:
            from PySide6.QtGui import QHelpEvent

            at = place.center()
            QApplication.sendEvent(ruled, QHelpEvent(QEvent.Type.ToolTip, at, ruled.mapToGlobal(at)))
            looking.tip_that_stands("a row")


def look_at_places(looking, window):
    for way in window.parts.ways:
        before = set(QApplication.topLevelWidgets())
        window.actions_by_id[way.id].trigger()
        made = [one for one in QApplication.topLevelWidgets() if one not in before and one.isVisible()]
        made = [one for one in made if not isinstance(one, QMenu) and not one.inherits("QTipLabel")]
        if not made:
            looking.say(f"{way.id}: nothing opened")
        for one in made:
            if hasattr(one, "metals"):
                one.metals.setText(looking.words.replace(",", ""))
                one.make()
            if way.id == "prove":
                for name in ("cutter", "holding", "role"):
                    with contextlib.suppress(Exception):
                        one.desk.set(name, looking.words)
                one.refresh()
                one.start()
            one.resize(*SIZE)
            looking.window(way.id, one)
            one.close()
    window.parts.exporting.print_sheets()
    made = [one for one in window.findChildren(QWidget) if type(one).__name__ == "PrintWindow"]
    for one in made:
        one.resize(*SIZE)
        while one.waiting:
            QTest.qWait(10)
        looking.window("print", one)
        one.close()


def look_at_boxes(looking, window):
    words = looking.words
    looking.box(lambda: ask.tell(window, words))
    looking.box(lambda: ask.save_changes(window, words))
    looking.box(lambda: ask.changed_outside(window, words))
    job = window.desk.job
    theirs, mine = (msgspec.structs.replace(job, note=f"{words} {who}", why=f"{who} {words}") for who in "AB")
    looking.box(lambda: ask.by_step(window, words, compared(job, mine, theirs)))
    looking.box(lambda: ask.reason(window, words, initials=True))
    looking.box(lambda: ask.proving_initials(window))
    window.bench.status.say(words)
    looking.window("status", window)
    for name in ("[machines]", "[samples]", "[kinds]"):
        menu = QMenu(window)
        window.fill_menu(name, menu)
        if menu.sizeHint().width() > SIZE[0]:
            looking.say(f"the menu {name} is {menu.sizeHint().width()} wide")


def main():
    faulthandler.enable()
    words = sys.argv[1]
    path, counts = lay_everything(words)
    look.load_fonts()
    look.apply("light")
    opened = open_at_start(str(path))
    if opened.problem:
        sys.exit(opened.problem)
    window = start.make_window(opened)
    window.resize(*SIZE)
    window.show()
    while not window.actions_by_id:
        QTest.qWait(20)
    looking = Looking(words)
    look_at_boxes(looking, window)
    look_at_rows(looking, window)
    look_at_places(looking, window)
    print(*counts, looking.seen)
    print(*dict.fromkeys(looking.wrong), sep="\n")
    window.desk.history.mark_saved()
    window.close()


if __name__ == "__main__":
    app = QApplication(["everything"])
    broken = []
    hook = sys.excepthook
    sys.excepthook = lambda *what: (broken.append(what), hook(*what))
    main()
    sys.exit(70 if broken else 0)
