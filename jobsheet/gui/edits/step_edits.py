"""What a person does to steps: add, duplicate, take out, move, number anew."""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtWidgets import QMenu

from jobsheet.edit.step_commands import (
    AddOperation,
    DeleteOperation,
    DuplicateOperation,
    MoveOperation,
    Renumber,
)
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.gui.forms.plain_words import entry
from jobsheet.gui.ink.look import look
from jobsheet.model.job import Operation

translate = QCoreApplication.translate


class StepEdits:
    """Edits of steps, from keys, menus and the mouse."""

    def __init__(self, hand: Hand, rows: OpenRows, undo: Callable[[], None]) -> None:
        self._hand = hand
        self._rows = rows
        self._undo = undo

    def _keys(self) -> set[str]:
        return {operation.key for _, operation in self._hand.desk.job.operations()}

    def _new(self, before: set[str]) -> Operation:
        """The step that was not there before, which is said."""
        new = next(one for _, one in self._hand.desk.job.operations() if one.key not in before)
        self._hand.say(translate("RowEdits", "{number} added.").format(number=new.number))
        return new

    def add(self, kind: str, set_up_key: str = "") -> None:
        """A new step after the chosen one, opened to be filled in."""
        before, hand = self._keys(), self._hand
        if hand.do(AddOperation(set_up_key or hand.set_up.key, kind, hand.key or None)):
            self._rows.open(self._new(before).key)

    def ask_kind(self) -> None:
        """The kinds of step in a menu beside the row."""
        menu = QMenu(self._hand.parent)
        menu.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.fill_kinds(menu)
        ruled = self._hand.ruled
        line = ruled.place_of(ruled.chosen_key)
        menu.popup(ruled.mapToGlobal(line.bottomLeft() + QPoint(look().px(116), 1)) if line else QPoint())

    def fill_kinds(self, menu: QMenu) -> None:
        """Every kind of step; choosing one adds it."""
        from jobsheet.operations import registry

        for kind in registry.kinds():
            menu.addAction(entry(registry.title(kind))).triggered.connect(
                lambda _=False, kind=kind: self.add(kind)
            )

    def duplicate(self) -> None:
        """The same step once more."""
        before, hand = self._keys(), self._hand
        if hand.key and hand.do(DuplicateOperation(hand.key)):
            new = self._new(before)
            self._rows.close()
            hand.show(new.key)

    def delete(self) -> None:
        """Take a step out; a line in its place offers to undo."""
        hand, key = self._hand, self._hand.key
        if not key:
            return
        set_up, operation = hand.desk.job.find(key)
        keys = [line.key for line in hand.ruled.lines]
        after = next(iter(keys[keys.index(key) + 1 :]), "")
        near = [one.key for one in set_up.operations]
        place = near.index(key)
        if not hand.do(DeleteOperation(key)):
            return
        text = translate("RowEdits", "{number} removed.").format(number=operation.number)
        hand.ruled.notice(after, text, ((translate("RowEdits", "Undo"), self._undo),))
        left = [one for one in near if one != key]
        hand.ruled.focus_line(left[min(place, len(left) - 1)] if left else set_up.key)
        hand.say(text)

    def renumber(self) -> None:
        """Number all steps 10, 20, 30."""
        if self._hand.do(Renumber()):
            self._hand.say(translate("RowEdits", "All steps are numbered anew: print the sheets again."))

    # --- moving ---

    def move(self, by: int) -> None:
        """One place up or down, over the ends into the set-up beside."""
        key = self._hand.key
        if not key:
            return
        set_up, _ = self._hand.desk.job.find(key)
        place = [one.key for one in set_up.operations].index(key) + by
        set_ups = self._hand.desk.job.set_ups
        index = set_ups.index(set_up)
        if place < 0 and index:
            self.move_to(key, set_ups[index - 1].key, len(set_ups[index - 1].operations))
        elif place >= len(set_up.operations) and index + 1 < len(set_ups):
            self.move_to(key, set_ups[index + 1].key, 0)
        elif 0 <= place < len(set_up.operations):
            self.move_to(key, set_up.key, place)

    def move_up(self) -> None:
        """One place up."""
        self.move(-1)

    def move_down(self) -> None:
        """One place down."""
        self.move(1)

    def drop(self, key: str, set_up_key: str, index: int) -> None:
        """A row was let go somewhere."""
        self.move_to(key, set_up_key, index)
        self._hand.ruled.focus_line(key)

    def move_to(self, key: str, set_up_key: str, index: int) -> None:
        """Move, and say the new place."""
        hand = self._hand
        focused = hand.parent.focusWidget()
        if not hand.do(MoveOperation(key, set_up_key, index)):
            return
        set_up, operation = hand.desk.job.find(key)
        place = [one.key for one in set_up.operations].index(key) + 1
        words = translate("RowEdits", "Now {number}: place {place} of {count} in set-up {set_up}.")
        hand.say(
            words.format(
                number=operation.number, place=place, count=len(set_up.operations), set_up=set_up.number
            )
        )
        hand.column.reveal(key)
        if not hand.opened_key:
            hand.ruled.focus_line(key)
        elif focused is not None:
            focused.setFocus()
