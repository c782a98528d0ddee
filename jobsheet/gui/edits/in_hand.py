"""What the hand has hold of: the desk, the ruled column, and a way to say
something. All edits work through it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QWidget

from jobsheet.edit.commands import Command
from jobsheet.errors import JobsheetError
from jobsheet.gui.column.column import Column
from jobsheet.gui.column.ruled_list import RuledList
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.job import SetUp


class Hand:
    """One desk and the column that shows it; the column is asked for each time,
    since another look makes it anew.
    """

    def __init__(
        self, desk: Desk, parent: QWidget, column: Callable[[], Column], say: Callable[[str], None]
    ) -> None:
        self.desk = desk
        self.parent = parent
        self._column = column
        self.say = say
        #: The way to a place by its id, and to the card of a machine; the window says how.
        self.go: Callable[[str], object] = lambda _id: None
        self.open_card: Callable[[str], object] = lambda _name: None

    @property
    def column(self) -> Column:
        """The ruled column."""
        return self._column()

    @property
    def ruled(self) -> RuledList:
        """The lines in it."""
        return self._column().ruled

    @property
    def opened_key(self) -> str:
        """The key of what is open, or nothing."""
        opened = self.ruled.opened
        return opened.key if opened is not None else ""

    @property
    def chosen(self) -> str:
        """The line meant: the open one, else the one under the keyboard."""
        return self.opened_key or self.ruled.chosen_key

    @property
    def key(self) -> str:
        """The operation meant; nothing on a heading."""
        key = self.chosen
        return key if any(operation.key == key for _, operation in self.desk.job.operations()) else ""

    @property
    def keys(self) -> tuple[str, ...]:
        """The operations meant: the open one, else those that are chosen; none on a heading."""
        return tuple(filter(None, (self.key,))) if self.opened_key else self.ruled.marked

    @property
    def set_up(self) -> SetUp:
        """The set-up meant."""
        chosen = self.chosen
        for set_up in self.desk.job.set_ups:
            if set_up.key == chosen or any(operation.key == chosen for operation in set_up.operations):
                return set_up
        return self.desk.job.set_ups[-1]

    def set_up_at(self, at: QPoint) -> SetUp:
        """The set-up whose heading or rows lie at a place of the screen; the one meant where that is none."""
        ruled = self.ruled
        inside = ruled.mapFromGlobal(at)
        line = ruled.standing.at(inside.y()) if ruled.rect().contains(inside) else None
        key = line.key if line is not None else ""
        for set_up in self.desk.job.set_ups:
            if key and key in (set_up.key, *(operation.key for operation in set_up.operations)):
                return set_up
        return self.set_up

    def do(self, command: Command) -> bool:
        """Make an edit, or say why it cannot be made."""
        try:
            self.desk.do(command)
        except JobsheetError as error:
            self.say(str(error))
            return False
        return True

    def show_all(self, keys: Iterable[str]) -> None:
        """Choose these rows, give the keyboard to the last and bring it into view."""
        several = tuple(keys)
        self.ruled.choose_these(several)
        if several:
            self.ruled.focus_line(self.ruled.chosen_key, lambda _key: None)
            self.column.reveal(self.ruled.chosen_key)

    def show(self, key: str) -> None:
        """Give the keyboard to a line, and bring it into view."""
        self.ruled.focus_line(key)
        self.column.reveal(key)
