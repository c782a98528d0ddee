"""Stepping from row to row, open or closed."""

from __future__ import annotations

from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows


class Stepping:
    """Page Up and Page Down."""

    def __init__(self, hand: Hand, rows: OpenRows) -> None:
        self._hand = hand
        self._rows = rows

    def step(self, by: int) -> None:
        """The next or previous operation; an open row stays open by opening that one."""
        key = self._hand.ruled.step(by, rows_only=True)
        if not key:
            return
        if self._hand.opened_key:
            self._rows.open(key)
        else:
            self._hand.show(key)
