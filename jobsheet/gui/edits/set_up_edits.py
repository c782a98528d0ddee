"""What a person does to set-ups: add, take out, move."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from jobsheet.edit.numbering import in_words, numbers_of
from jobsheet.edit.several_steps import RepeatSetUp
from jobsheet.edit.step_commands import AddSetUp, DeleteSetUp, MoveSetUp
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows

if TYPE_CHECKING:
    from jobsheet.gui.edits.squaring_edit import SquaringBox

translate = QCoreApplication.translate


class SetUpEdits:
    """Edits of set-ups, from the menu."""

    def __init__(self, hand: Hand, rows: OpenRows, undo: Callable[[], None]) -> None:
        self._hand = hand
        self._rows = rows
        self._undo = undo

    def add(self) -> None:
        """A new set-up, opened to be filled in."""
        hand = self._hand
        before = {set_up.key for set_up in hand.desk.job.set_ups}
        if hand.do(AddSetUp(hand.set_up.key)):
            self._rows.open(next(set_up.key for set_up in hand.desk.job.set_ups if set_up.key not in before))

    def repeat(self) -> None:
        """The set-up once more with its steps, right behind it; the keyboard is on the new heading."""
        hand = self._hand
        before = {set_up.key for set_up in hand.desk.job.set_ups}
        old = hand.set_up
        if hand.do(RepeatSetUp(old.key)):
            new = next(set_up for set_up in hand.desk.job.set_ups if set_up.key not in before)
            self._rows.close()
            hand.show(new.key)
            words = translate("RowEdits", "Set-up {old} is repeated as set-up {new}: {steps}.")
            steps = (
                in_words(numbers_of(new.operations)) if new.operations else translate("RowEdits", "no step")
            )
            hand.say(words.format(old=old.number, new=new.number, steps=steps))

    def square(self) -> SquaringBox:
        """Ask for the finished sizes of a block, and square its six faces."""
        from jobsheet.gui.edits.squaring_edit import SquaringEdit

        return SquaringEdit(self._hand, self._rows).ask()

    def delete(self) -> None:
        """Take out a set-up with its steps; a line in its place offers to undo."""
        hand, set_up = self._hand, self._hand.set_up
        index = hand.desk.job.set_ups.index(set_up)
        if hand.do(DeleteSetUp(set_up.key)):
            left = hand.desk.job.set_ups
            after = left[index].key if index < len(left) else ""
            text = translate("RowEdits", "Set-up {number} removed.").format(number=set_up.number)
            hand.ruled.notice(after, text, ((translate("RowEdits", "Undo"), self._undo),))
            hand.say(text)

    def _move(self, by: int) -> None:
        """A set-up one place up or down."""
        set_up = self._hand.set_up
        self._hand.do(MoveSetUp(set_up.key, self._hand.desk.job.set_ups.index(set_up) + by))

    def move_up(self) -> None:
        """A set-up one place up."""
        self._move(-1)

    def move_down(self) -> None:
        """A set-up one place down."""
        self._move(1)
