"""Types without a pause into the real window until something ends the program;
each key is told to a file at once.

A line of the file is the time, a blank, and the text that stands in the box after the key, told just before
it: what the journal is held against when the program was killed.
"""

import itertools
import os
import sys
import time

from PySide6.QtCore import QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.desk.keeping_pace import write_all
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.ink import look
from jobsheet.gui.start import guard, start
from jobsheet.gui.start.signals import hear_signals

#: A text is begun anew before it is as long as a field takes.
LONG = 200


def letters():
    """A text that is never the same twice, key by key."""
    for count in itertools.count(1):
        yield from f"{count:x} "


def main():
    told = os.open(sys.argv[1], os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    sys.excepthook = guard.Guard()
    app = QApplication(["typist"])
    look.load_fonts()
    look.apply("light", bench=False)
    window = start.make_window(open_at_start(None))
    window.show()
    hear_signals(window)
    keys = letters()

    def press():
        box = window.open_row.form.fields["note"].box
        if len(box.text()) > LONG:
            box.selectAll()
        letter = next(keys)
        os.write(told, f"{time.monotonic()} {'' if box.hasSelectedText() else box.text()}{letter}\n".encode())
        QTest.keyClick(box, letter)

    def begin():
        if not window.actions_by_id:
            return
        first.stop()
        window.open_key("drill")
        box = window.open_row.form.fields["note"].box
        box.setFocus()
        box.selectAll()
        timer.start()

    timer = QTimer()
    timer.timeout.connect(press)
    first = QTimer()
    first.timeout.connect(begin)
    first.start(10)
    code = app.exec()
    write_all()
    return code


if __name__ == "__main__":
    sys.exit(main())
