"""The program as a person starts it, but it tells by files in its home: keys and menus are
there; what was remarked; what is where.

Nothing that an X display shows tells these moments, and a key that is pressed before one goes nowhere. Where
things are is told as a screen reader hears it: name, role and place on the screen of all that can be seen.
"""

import json
import os
import sys
from pathlib import Path

READY = "ready"
REMARKS = "remarks"
#: Asked for by a file of this name, answered by one of the other.
WHERE_ASKED, WHERE = "where-asked", "where"


def main():
    from jobsheet.gui.start.app import main as start
    from jobsheet.gui.window.window import Window

    begin = Window._begin

    def begin_and_tell(window):
        begin(window)
        Path(os.environ["JOBSHEET_HOME"], READY).touch()

    Window._begin = begin_and_tell

    from jobsheet.gui.desk.reading_through import ReadingThrough

    read = ReadingThrough.read

    def read_and_tell(reading, facts):
        new = read(reading, facts)
        rules = " ".join(remark.rule for remark in reading._desk.remarks)
        Path(os.environ["JOBSHEET_HOME"], REMARKS).write_text(rules, encoding="utf-8")
        return new

    ReadingThrough.read = read_and_tell
    tell_where_things_are()
    return start(sys.argv[1] if len(sys.argv) > 1 else None)


def tell_where_things_are():
    """Answer the question where things are, as long as the program runs."""
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    asked, answer = (Path(os.environ["JOBSHEET_HOME"], name) for name in (WHERE_ASKED, WHERE))

    def look():
        if asked.exists():
            asked.unlink()
            beside = answer.with_suffix(".new")
            beside.write_text(json.dumps(seen()), encoding="utf-8")
            beside.replace(answer)

    execute = QApplication.exec

    def watched(_app):
        timer = QTimer()
        timer.timeout.connect(look)
        timer.start(40)
        return execute()

    QApplication.exec = watched


def seen():
    """Name, role and place of everything that can be seen, the topmost window first."""
    from PySide6.QtGui import QAccessible
    from PySide6.QtWidgets import QApplication

    found = []

    def walk(one, depth):
        if one is None or not one.isValid() or depth > 40 or one.state().invisible:
            return
        rect = one.rect()
        name = one.text(QAccessible.Text.Name)
        if rect.width() > 1 and rect.height() > 1:
            found.append((name, one.role().name, rect.x(), rect.y(), rect.width(), rect.height()))
        for index in range(one.childCount()):
            walk(one.child(index), depth + 1)

    tops = [one for one in QApplication.topLevelWidgets() if one.isVisible()]
    front = (
        QApplication.activePopupWidget() or QApplication.activeModalWidget() or QApplication.activeWindow()
    )
    for window in sorted(tops, key=lambda one: one is not front):
        walk(QAccessible.queryAccessibleInterface(window), 0)
    return found


if __name__ == "__main__":
    sys.exit(main())
