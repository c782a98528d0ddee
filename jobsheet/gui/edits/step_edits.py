"""What a person does to steps: add, duplicate, take out, move, number anew."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QMenu

from jobsheet.edit.numbering import in_words, numbers_of
from jobsheet.edit.several_steps import DeleteSteps, DuplicateSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation, Renumber
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.gui.forms.plain_words import entry
from jobsheet.model.job import Operation, SetUp

if TYPE_CHECKING:
    from jobsheet.gui.edits.insertion import Insertion

translate = QCoreApplication.translate


class StepEdits:
    """Edits of steps, from keys, menus and the mouse."""

    def __init__(self, hand: Hand, rows: OpenRows, undo: Callable[[], None]) -> None:
        self._hand = hand
        self._rows = rows
        self._undo = undo
        self._inserting: Insertion | None = None

    def _keys(self) -> set[str]:
        return {operation.key for _, operation in self._hand.desk.job.operations()}

    def _new(self, before: set[str]) -> Operation:
        """The step that was not there before, which is said."""
        new = next(
            operation for _, operation in self._hand.desk.job.operations() if operation.key not in before
        )
        self._hand.say(translate("RowEdits", "{number} added.").format(number=new.number))
        return new

    def add(self, kind: str, set_up_key: str = "") -> None:
        """A new step after the chosen one, opened to be filled in."""
        before, hand = self._keys(), self._hand
        if hand.do(AddOperation(set_up_key or hand.set_up.key, kind, hand.key or None)):
            self._rows.open(self._new(before).key)

    def insert_below(self) -> None:
        """Ask which kind, in a row below the chosen line."""
        self._insert(above=False)

    def insert_above(self) -> None:
        """Ask which kind, in a row above the chosen line."""
        self._insert(above=True)

    def _insert(self, *, above: bool) -> None:
        from jobsheet.gui.edits.insertion import Insertion

        hand = self._hand
        set_up, index = self._place_of(above=above)
        if self._inserting is not None:
            self._inserting.close()
        hand.ruled.notice("", "", ())
        self._inserting = Insertion(hand, self._rows, set_up, index)
        self._inserting.open()

    def _place_of(self, *, above: bool) -> tuple[SetUp, int]:
        """The set-up and the place in it, beside the chosen line; above a
        heading is the end of the set-up before.
        """
        hand = self._hand
        set_ups = hand.desk.job.set_ups
        for place, set_up in enumerate(set_ups):
            if set_up.key == hand.chosen:
                before = set_ups[place - 1] if above and place else None
                return (before, len(before.operations)) if before is not None else (set_up, 0)
            for index, operation in enumerate(set_up.operations):
                if operation.key == hand.chosen:
                    return set_up, index if above else index + 1
        return hand.set_up, len(hand.set_up.operations)

    def fill_kinds(self, menu: QMenu) -> None:
        """Every kind of step; choosing one adds it."""
        from jobsheet.operations import registry

        for kind in registry.kinds():
            menu.addAction(entry(registry.title(kind))).triggered.connect(
                lambda _=False, kind=kind: self.add(kind)
            )

    def duplicate(self) -> None:
        """The same steps once more."""
        before, hand = self._keys(), self._hand
        if hand.keys and hand.do(DuplicateSteps(hand.keys)):
            new = [operation for _, operation in hand.desk.job.operations() if operation.key not in before]
            self._rows.close()
            hand.show_all(operation.key for operation in new)
            hand.say(translate("RowEdits", "Added: {steps}.").format(steps=in_words(numbers_of(new))))

    def delete(self) -> None:
        """Take steps out."""
        self.take_out(self._hand.keys, translate("RowEdits", "{steps} removed."))

    def take_out(self, keys: tuple[str, ...], words: str, label: str = "take out steps") -> bool:
        """Take steps out; a line in their place offers to undo."""
        hand = self._hand
        if not keys:
            return False
        steps = [operation for _, operation in hand.desk.job.operations() if operation.key in keys]
        lines = [line.key for line in hand.ruled.lines if line.is_painted]
        last = lines.index(steps[-1].key)
        after = next(iter(lines[last + 1 :]), "")
        set_up, _ = hand.desk.job.find(steps[-1].key)
        if not hand.do(DeleteSteps(keys, label)):
            return False
        numbers = in_words(numbers_of(steps))
        text = words.format(steps=numbers[:1].upper() + numbers[1:] if len(steps) > 1 else steps[0].number)
        hand.ruled.notice(after, text, ((translate("RowEdits", "Undo"), self._undo),))
        near = [operation.key for operation in set_up.operations if operation.key not in keys]
        behind = [key for key in near if lines.index(key) > last]
        hand.ruled.focus_line(behind[0] if behind else near[-1] if near else set_up.key)
        hand.say(text)
        return True

    def renumber(self) -> None:
        """Number all steps 10, 20, 30."""
        if self._hand.do(Renumber()):
            self._hand.say(translate("RowEdits", "All steps are numbered anew: print the sheets again."))

    # --- moving ---

    def move(self, by: int) -> None:
        """One place up or down, over the ends into the set-up beside; several rows go together."""
        keys = self._hand.keys
        if not keys:
            return
        job = self._hand.desk.job
        ends = [key for key in (operation.key for _, operation in job.operations()) if key in keys]
        set_up, edge = job.find(ends[0] if by < 0 else ends[-1])
        before = set_up.operations[: set_up.operations.index(edge)]
        place = len([operation for operation in before if operation.key not in keys]) + by
        rest = [operation for operation in set_up.operations if operation.key not in keys]
        index = job.set_ups.index(set_up)
        if place < 0 and index:
            above = job.set_ups[index - 1]
            self.move_to(
                keys,
                above.key,
                len([operation for operation in above.operations if operation.key not in keys]),
            )
        elif place > len(rest) and index + 1 < len(job.set_ups):
            self.move_to(keys, job.set_ups[index + 1].key, 0)
        elif 0 <= place <= len(rest):
            self.move_to(keys, set_up.key, place)

    def move_up(self) -> None:
        """One place up."""
        self.move(-1)

    def move_down(self) -> None:
        """One place down."""
        self.move(1)

    def drop(self, keys: tuple[str, ...], set_up_key: str, index: int) -> None:
        """Rows were let go somewhere."""
        self.move_to(keys, set_up_key, index)
        self._hand.show_all(keys)

    def move_to(self, keys: tuple[str, ...], set_up_key: str, index: int) -> None:
        """Move, and say the new place."""
        hand = self._hand
        focused = hand.parent.focusWidget()
        if not hand.do(MoveSteps(keys, set_up_key, index)):
            return
        set_up, first = hand.desk.job.find(keys[0])
        here = [operation for operation in set_up.operations if operation.key in keys]
        place = set_up.operations.index(here[0]) + 1
        words = translate("RowEdits", "Now {steps}: place {place} of {count} in set-up {set_up}.")
        if len(keys) > 1:
            words = translate("RowEdits", "Now {steps}: from place {place} of {count} in set-up {set_up}.")
        numbers = str(first.number) if len(keys) == 1 else in_words(numbers_of(here))
        count = len(set_up.operations)
        hand.say(words.format(steps=numbers, place=place, count=count, set_up=set_up.number))
        hand.column.reveal(here[-1 if index else 0].key)
        if not hand.opened_key:
            hand.show_all(keys)
        elif focused is not None:
            focused.setFocus()
