"""Which rows are chosen together: from the row where choosing began to the one
under the keyboard, or each by itself.
"""

from __future__ import annotations

from collections.abc import Collection


class Choice:
    """Keys of rows; the lines themselves are not known here."""

    def __init__(self) -> None:
        self.keys: frozenset[str] = frozenset()
        #: Where choosing several begins.
        self.anchor = ""

    def alone(self, key: str) -> None:
        """One line and no other."""
        self.anchor = key
        self.keys = frozenset((key,)) if key else frozenset()

    def reach(self, key: str, order: list[str], rows: Collection[str]) -> None:
        """Every row from where choosing began up to this line."""
        if self.anchor not in order:
            self.anchor = key
        one, other = sorted((order.index(self.anchor), order.index(key)))
        self.keys = frozenset(found for found in order[one : other + 1] if found in rows) or frozenset((key,))

    def turn(self, key: str, rows: Collection[str]) -> None:
        """Choose a row too, or no longer; headings are chosen alone."""
        self.anchor = key
        left = frozenset(other for other in self.keys ^ {key} if other in rows)
        self.keys = left or frozenset((key,))

    def only(self, known: Collection[str]) -> None:
        """Forget those that are gone."""
        if not all(key in known for key in self.keys):
            self.keys = frozenset(key for key in self.keys if key in known)
