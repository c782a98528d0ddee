"""What a table of places is to those that arrange it, paint it and edit it: none of
them needs to know the field itself.
"""

from __future__ import annotations

from typing import Any, Protocol

from PySide6.QtGui import QPaintDevice
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.place_cell import PlaceCell
from jobsheet.gui.forms.row_words import RowWords
from jobsheet.operations.entry import Entry
from jobsheet.operations.place_rows import Pieces, Row


class Arranges(Protocol):
    """What stands beside the table."""

    def arrange(self, width: int) -> int:
        """Its height at a width."""
        ...


class PlaceTable(Protocol):
    """Pieces and rows, the boxes that show some of them, and where the cursor is."""

    pieces: Pieces
    rows: tuple[Row, ...]
    cells: list[tuple[PlaceCell, PlaceCell]]
    #: The words of each generator that stands in the list, one box each.
    lines: list[PlaceCell]
    words: list[RowWords]
    #: The row that the cursor is in; less than nought for none.
    hand: int
    #: What was just done, where that has to be said.
    note: str
    #: The first row that is shown.
    first: int
    units: str
    entry: Entry
    unit: str
    understood: str

    @property
    def beside(self) -> Arranges:
        """What stands beside the rows."""
        ...

    @property
    def told(self) -> Any:
        """The signal that an edit is told by: field, list, what was done,
        whether by a key of which more may come.
        """
        ...

    @property
    def ground(self) -> QPaintDevice:
        """What is painted on."""
        ...

    def has_dials(self) -> bool:
        """Whether the machine is known."""
        ...

    def row_of(self, box: QWidget) -> int | None:
        """The row that a box stands in."""
        ...

    def is_wrong(self, box: QWidget) -> bool:
        """Whether what stands in a box cannot be read."""
        ...

    def holds(self, widget: QWidget) -> bool:
        """Whether a control is part of the table or its maker."""
        ...

    def last_stop(self) -> QWidget:
        """Where Tab leaves it."""
        ...

    def fill(self) -> None:
        """Show every box and word as the pieces have them."""
        ...

    def settle(self) -> None:
        """Take apart what was typed into boxes."""
        ...

    def cell(self, row: int, axis: str) -> PlaceCell | None:
        """The box of a row, where it is shown."""
        ...

    def go(self, row: int, axis: str) -> None:
        """The cursor into a box."""
        ...
