"""A hand that does anything, by seed: keys, words, clicks, the wheel, sizes, looks,
rows, places, undo. Ends by itself.

Run in a process of its own: `python -m tests.gui.hand_of_chance SEED SECONDS`. It ends with 0 where
nothing went wrong; the last line it prints is how many things it did and how the memory went [MB], after a
minute (or a third) and at the end.
"""

import contextlib
import ctypes
import faulthandler
import gc
import os
import random
import sys
import time
from pathlib import Path

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QPixmapCache, QWheelEvent
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QMenu, QWidget

from jobsheet.edit.three_ways import MINE, THEIRS
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.forms import ask
from jobsheet.gui.ink import look
from jobsheet.gui.start import start
from jobsheet.gui.start.collecting import Collecting
from jobsheet.paths import sample_jobs

KEYS = [
    getattr(Qt.Key, f"Key_{name}")
    for name in ["Tab", "Backtab", "Return", "Escape", "Up", "Down", "Left", "Right", "Home", "End", "PageUp", "PageDown", "Delete", "Backspace", "Space", "Insert", "F1", "F2", "F4", "F6", "F7", "F8", "F9"]
]  # fmt: skip
WITH = [
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
]
WORDS = (
    "end mill 10 mm, 4 teeth", "0.5", "60", "-1", "1e9 mm", "10 m", "20, 20; 40, 20", "grid 3 x 3 by 20", ";", "",
    "S235", "6082-T6", "<b>x</b><img src=/dev/zero>", "W" * 3000, "&A [*] \t\n", "\u202eturned", "\x85\ufffe\U0001f600",
    "450 rpm", "as deep as it goes", "1/0", "nan", "inf", "½", "²", "0", "99999999999999999999",
)  # fmt: skip
ACTIONS = (
    "undo", "undo", "redo", "next", "previous", "bring-back", "edit-job", "add-set-up", "delete-set-up", "set-up-up",
    "set-up-down", "renumber", "insert", "duplicate", "delete", "up", "down", "toggle", "moment", "light", "dark", "bench",
    "keys", "about", "export", "print", "save", "save-as", "new", "open",
)  # fmt: skip
#: No more windows than a person has open.
MOST_WINDOWS = 3


def memory():
    """What the process holds just now [MB]."""
    for line in Path("/proc/self/status").read_text(encoding="ascii").splitlines():
        if line.startswith("VmRSS:"):
            return int(line.split()[1]) / 1024
    return 0.0


class Hand:
    """Does one thing after another until its time is over."""

    def __init__(self, seed, seconds, folder):
        self.random = random.Random(seed)
        self.folder = folder
        self.samples = sorted(sample_jobs().glob("*.yaml"))
        self.until = time.monotonic() + seconds
        self.done = 0
        self.window = None
        self.stood = None
        self.begin()

    def begin(self):
        """A new window with a sample."""
        self.window = start.make_window(open_at_start(str(self.random.choice(self.samples))))
        self.window.resize(1200, 800)
        self.window.show()
        while not self.window.actions_by_id:
            QTest.qWait(20)

    def let_go_of_menus(self):
        """Close a menu that has stood for a second: some wait inside the click that
        opened them, and nobody else is there.
        """
        shown = QApplication.activePopupWidget()
        if shown is not None and shown is self.stood:
            shown.close()
        self.stood = shown

    # --- what a person is asked ---

    def answers(self):
        pick = self.random.choice
        ask.save_changes = lambda *_: pick(("throw away", "throw away", "save", "cancel"))
        ask.changed_outside = lambda *_: pick(("overwrite", "cancel", "save as", "both"))
        ask.by_step = lambda _parent, _name, both: pick(
            (None, tuple((one.item, pick((MINE, THEIRS))) for one in both.choices))
        )
        ask.open_path = lambda *_: pick((None, *self.samples))
        ask.save_path = lambda *_: pick((None, self.folder / f"{pick('abc')}.yaml"))
        ask.export_path = lambda *_: pick((None, self.folder / f"{pick('abc')}.pdf"))
        ask.picture_path = lambda *_: pick((None, self.folder / "there-is-none.png", self.samples[0]))
        ask.folder = lambda *_: pick((None, self.folder))
        ask.tell = lambda *_: None
        ask.reason = lambda *_, **__: pick((None, (pick(WORDS), pick(WORDS))))
        ask.proving_initials = lambda *_: pick((None, (pick(WORDS), "B", "")))

    # --- what a hand does ---

    def front(self):
        """The window under the hand: a box, a menu, or one of those that are open."""
        for one in (QApplication.activePopupWidget(), QApplication.activeModalWidget()):
            if one is not None:
                return one
        shown = [
            one for one in QApplication.topLevelWidgets() if one.isVisible() and not one.inherits("QTipLabel")
        ]
        return self.random.choice(shown) if shown else self.window

    def some(self, window):
        """A widget of it that can be seen, rather one that takes the keyboard.

        Found by pointing, as a hand does: to list all the children of a window makes a Python object for
        every part of the toolkit's own boxes, and those outlive the boxes.
        """
        found = window
        for _ in range(12):
            at = QPoint(
                self.random.randrange(max(1, window.width())), self.random.randrange(max(1, window.height()))
            )
            found = window.childAt(at) or window
            if found.isEnabled() and found.focusPolicy() != Qt.FocusPolicy.NoFocus:
                break
        return found

    def do_key(self):
        focus = QApplication.focusWidget() or self.front()
        for _ in range(self.random.randint(1, 6)):
            QTest.keyClick(focus, self.random.choice(KEYS), self.random.choice(WITH))
            focus = QApplication.focusWidget() or self.front()

    def do_words(self):
        one = self.some(self.front())
        one.setFocus()
        words = self.random.choice(WORDS)
        if hasattr(one, "insert") and len(words) > 200:
            one.insert(words)  # as if pasted
            return
        for sign in words[:200]:  # the toolkit's own typist knows only letters without accents
            target = QApplication.focusWidget() or one
            for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
                QApplication.sendEvent(target, QKeyEvent(kind, 0, Qt.KeyboardModifier.NoModifier, sign))

    def do_click(self):
        one = self.some(self.front())
        at = QPoint(self.random.randrange(max(1, one.width())), self.random.randrange(max(1, one.height())))
        QTest.mouseClick(one, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)

    def do_drag(self):
        one = self.window.bench.column.ruled
        x, high = 20, max(2, one.height())
        QTest.mousePress(
            one,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
            QPoint(x, self.random.randrange(high)),
        )
        for _ in range(3):
            QTest.mouseMove(one, QPoint(x, self.random.randrange(high)))
        QTest.mouseRelease(
            one,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
            QPoint(x, self.random.randrange(high)),
        )

    def do_wheel(self):
        one = self.some(self.front())
        at = QPointF(one.rect().center())
        turn = QPoint(0, self.random.choice((-360, -120, 120, 360)))
        event = QWheelEvent(
            at, QPointF(one.mapToGlobal(at.toPoint())), QPoint(), turn, Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(one, event)

    def do_size(self):
        self.front().resize(self.random.randint(320, 1900), self.random.randint(240, 1100))

    def do_action(self):
        if QApplication.activeModalWidget() is None:
            self.window.actions_by_id[self.random.choice(ACTIONS)].trigger()

    def do_place(self):
        open_now = [one for one in QApplication.topLevelWidgets() if one.isVisible()]
        if len(open_now) <= MOST_WINDOWS and QApplication.activeModalWidget() is None:
            self.window.actions_by_id[self.random.choice(self.window.parts.ways).id].trigger()

    def do_row(self):
        keys = list(self.window.bench.column.ruled.by_key)
        if keys:
            self.window.open_key(self.random.choice(keys))

    def do_close(self):
        one = self.front()
        if one is not self.window:
            one.close()

    def do_sample(self):
        if QApplication.activeModalWidget() is None:
            self.window.parts.files.open_sample(self.random.choice(self.samples))

    def do_rest(self):
        QTest.qWait(self.random.choice((10, 70, 400)))

    def step(self):
        acts = (
            [self.do_key] * 8 + [self.do_words] * 8 + [self.do_click] * 8 + [self.do_row] * 3 + [self.do_action] * 4
            + [self.do_drag, self.do_wheel, self.do_size, self.do_place, self.do_close, self.do_close, self.do_rest]
        )  # fmt: skip
        if self.random.random() < 0.01:
            acts = [self.do_sample]
        with contextlib.suppress(
            RuntimeError
        ):  # the widget went away under the hand; what a slot raises is not raised here
            self.random.choice(acts)()
        self.done += 1
        QApplication.processEvents()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    def visit_everything(self):
        """Every step of every sample and its sheets, and every place once: what is
        loaded for the first time is no growth.
        """
        for one in self.samples:
            self.window.parts.files.open_sample(one)
            # What is remembered by value has bounds: they are reached here.
            for _, operation in self.window.desk.job.operations():
                self.window.open_key(operation.key)
                QTest.qWait(20)
            self.visit("print")
        for way in self.window.parts.ways:
            self.visit(way.id)

    def visit(self, way):
        """Open a place and close it."""
        self.window.actions_by_id[way].trigger()
        QTest.qWait(50)
        self.close_what_is_beside()

    def close_what_is_beside(self):
        """Close what is beside the job; what was typed there is thrown away."""
        asked, ask.save_changes = ask.save_changes, lambda *_: "throw away"
        for one in QApplication.topLevelWidgets():
            if one is not self.window and one.isVisible() and isinstance(one, QWidget):
                one.close()
        QTest.qWait(20)
        ask.save_changes = asked

    def memory_at_rest(self):
        """What is held [MB] with the same job in a window of the same size, and nothing beside it.

        Without what may be let go of at any time: pictures the toolkit keeps up
        to a bound, free pieces of the heap.
        """
        self.close_what_is_beside()
        self.window.resize(1200, 800)
        asked, ask.save_changes = ask.save_changes, lambda *_: "throw away"
        self.window.parts.files.open_sample(self.samples[0])
        ask.save_changes = asked
        for _ in range(100):
            QTest.qWait(20)
            if not self.window.parts.solids.waiting:
                break
        QTest.qWait(200)
        gc.collect()
        QPixmapCache.clear()
        with contextlib.suppress(OSError, AttributeError):
            ctypes.CDLL("libc.so.6").malloc_trim(0)
        return memory()


def main(seed, seconds):
    faulthandler.enable()
    faulthandler.dump_traceback_later(seconds + 25, exit=True)
    wrong = []
    hook = sys.excepthook
    sys.excepthook = lambda *what: (wrong.append(what), hook(*what))
    app = QApplication(["chance"])
    app.setQuitOnLastWindowClosed(False)
    Collecting(app).begin()  # as the program has it: no other thread lets a piece of the window go
    QDialog.exec = lambda self: (QTimer.singleShot(30, self.close), self.open(), 0)[-1]
    # The system's own boxes: nobody is there to press anything in them.
    QPrintDialog.exec = lambda _self: 0
    QFileDialog.getOpenFileName = QFileDialog.getSaveFileName = lambda *_, **__: ("", "")
    QFileDialog.getExistingDirectory = lambda *_, **__: ""
    QMenu.exec = lambda self, *_: self.popup(QPoint(100, 100))
    look.load_fonts()
    look.apply("light")
    folder = Path(os.environ["JOBSHEET_HOME"])
    folder.mkdir(parents=True, exist_ok=True)
    hand = Hand(seed, seconds, folder)
    hand.answers()
    menus = QTimer()
    menus.timeout.connect(hand.let_go_of_menus)
    menus.start(1000)
    if (
        seconds >= 120
    ):  # where the memory is looked at; a short run does what chance says from its first second
        hand.visit_everything()
    look_at = time.monotonic() + min(60, seconds / 3)
    first, told = 0.0, time.monotonic() + 60
    while time.monotonic() < hand.until and not wrong:
        hand.step()
        if not hand.window.isVisible():
            hand.window.deleteLater()
            hand.begin()
        if not first and time.monotonic() > look_at:
            first = hand.memory_at_rest()
        if time.monotonic() > told:
            told += 60
            counts = (
                len(QApplication.topLevelWidgets()),
                len(QApplication.allWidgets()),
                len(gc.get_objects()),
            )
            print("memory", round(hand.memory_at_rest(), 1), *counts, file=sys.stderr, flush=True)
    print(hand.done, round(first, 1), round(hand.memory_at_rest(), 1), flush=True)
    os._exit(70 if wrong else 0)


if __name__ == "__main__":
    main(int(sys.argv[1]), float(sys.argv[2]))
