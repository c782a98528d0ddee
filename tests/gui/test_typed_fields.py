"""Key by key: every beginning of a usual entry raises nothing and rewrites
nothing, and the whole ends in its value.
"""

import os
import random
import tempfile
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from jobsheet.edit.commands import ChangeUnits, entry_of, value_of
from jobsheet.edit.kept_steps import STEPS
from jobsheet.gui.column.header_form import HeaderForm
from jobsheet.gui.column.open_row import OpenRow
from tests.gui.usual_entries import SPOTS, every

#: Entries of the suite; all of them are typed with `--long`.
SOME = 140
#: What a hand strikes beside what it meant.
SLIPS = "xqm7 ,"


class Hand:
    """Types as a hand does, into one window, and looks at the box after each key."""

    def __init__(self, window, qtbot, home):
        self.window, self.qtbot, self.home = window, qtbot, home
        # A rest of the hand is as long as the window thinks it is: what follows it is all that counts here.
        for wait in ("_rest", "_typing"):
            getattr(window.later, wait).setInterval(1)

    def units(self, units):
        if self.window.desk.job.units != units:
            self.window.close_row()
            self.window.desk.do(ChangeUnits(units))

    def box(self, owner, name):
        """The box of a field, opened as a person opens it."""
        part, _, key = owner.partition(":")
        self.window.open_key("job" if part == "job" else key or owner)
        opened = self.window.bench.column.ruled.opened
        form = opened.forms[owner] if isinstance(opened, HeaderForm) else opened.form
        if isinstance(opened, OpenRow) and name == "at":
            self.only_one(form.rows)
        box = form.fields[name].box
        box.setFocus()
        return box

    def only_one(self, rows):
        """An entry is a whole list here: the other rows are taken out by key, as a person does."""
        rows.settle()
        while len(rows.rows) > 1:
            rows.go(1, "x")
            self.qtbot.keyClick(rows.cells[1][0], Qt.Key.Key_Delete, Qt.KeyboardModifier.ControlModifier)

    def press(self, box, key, expected):
        if isinstance(key, str) and not key.isascii():
            for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
                QApplication.sendEvent(box, QKeyEvent(kind, 0, Qt.KeyboardModifier.NoModifier, key))
        else:
            self.qtbot.keyClick(box, key)
        assert box.text() == expected

    def rest(self):
        """The hand rests: suggestions, answers and review come."""
        self.qtbot.wait(3)
        self.qtbot.waitUntil(lambda: not self.window.later.waiting)
        answering = self.window.parts.answering
        while not answering.done:
            answering._timer.stop()
            answering._next()

    def type(self, kind, text, *, slip=-1, pause=-1):
        """An entry, with a wrong letter before the key at `slip` that is mended,
        and a rest before the key at `pause`.
        """
        owner, name, *_ = SPOTS[kind]
        box = self.box(owner, name)
        history = self.window.desk.history
        history.break_merge()
        before, steps = history.job, history._at
        box.selectAll()
        self.press(box, Qt.Key.Key_Delete, "")
        for at, letter in enumerate(text):
            if at == slip:
                wrong = SLIPS[at % len(SLIPS)]
                self.press(box, wrong, text[:at] + wrong)
                self.press(box, Qt.Key.Key_Backspace, text[:at])
            if at == pause:
                self.rest()
                assert box.text() == text[:at]
            self.press(box, letter, text[: at + 1])
        self.arrived(owner, name, text)
        assert before is not history.job
        assert history._at == min(steps + 1, STEPS - 1)
        assert not (self.home / "problems.log").exists()

    def arrived(self, owner, name, text):
        """The text stands in the job as what it means."""
        job = self.window.desk.job
        value = entry_of(job, owner, name).read(text, job.units)
        assert value_of(job, owner, name) == ("" if value is None else value)
        assert (owner, name) not in self.window.desk.history.drafts


@pytest.fixture
def hand(window, qtbot, home):
    return Hand(window, qtbot, home)


def type_all(hand, entries, dice):
    """Type entries, now and then with a slip or a rest."""
    for units, kind, text in entries:
        hand.units(units)
        slip = dice.randrange(len(text)) if dice.random() < 0.3 else -1
        pause = dice.randrange(1, len(text) + 1) if dice.random() < 0.15 else -1
        try:
            hand.type(kind, text, slip=slip, pause=pause)
        except AssertionError as error:
            raise AssertionError(f"{units} {kind}: {text!r}, slip {slip}, pause {pause}: {error}") from error
        yield units, kind, text


@pytest.mark.parametrize("units", ["mm", "in"])
def test_usual_entries_of_every_kind_of_field(hand, units):
    dice = random.Random(12)
    mine = [one for one in every() if one[0] == units]
    kinds = {kind: [one for one in mine if one[1] == kind] for kind in SPOTS}
    chosen = [dice.choice(entries) for entries in kinds.values()]
    chosen += dice.sample(mine, SOME // 2 - len(chosen))
    assert len(list(type_all(hand, chosen, dice))) == SOME // 2


@pytest.mark.long
@pytest.mark.parametrize("kind", list(SPOTS))
def test_all_usual_entries(hand, kind):
    """What was typed stands in a file beside the temporary ones, so that a run
    that was stopped goes on from there.
    """
    done = Path(tempfile.gettempdir()) / f"jobsheet-typed-{os.getuid()}-{kind.replace(' ', '-')}"
    typed = set(done.read_text(encoding="utf-8").splitlines()) if done.exists() else set()
    entries = [one for one in every() if one[1] == kind and repr(one) not in typed]
    dice = random.Random(kind)
    with done.open("a", encoding="utf-8") as file:
        for one in type_all(hand, entries, dice):
            file.write(f"{one!r}\n")
            file.flush()
    done.unlink()


def test_a_choice_is_made_by_keys_and_never_by_letters_on_the_way(hand, qtbot):
    box = hand.box("face-rough", "along")
    for digit, choice in (("2", "y"), ("1", "x")):
        qtbot.keyClick(QApplication.focusWidget(), digit)
        assert hand.window.desk.job.find("face-rough")[1].fields.along == choice == box.text()
    box = hand.box("setup:set-up-1", "up")
    for _ in range(3):
        qtbot.keyClick(box, Qt.Key.Key_Down)
        assert hand.window.desk.job.set_ups[0].up == box.text()
    box = hand.box("job", "trainee")
    qtbot.keyClick(QApplication.focusWidget(), "1")
    assert hand.window.desk.job.trainee
    qtbot.keyClick(QApplication.focusWidget(), "2")
    assert not hand.window.desk.job.trainee
