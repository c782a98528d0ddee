"""What a hand does in the words of a generator, which stand above the rows that it makes."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.forms.place_edits import PlaceEdits
from jobsheet.gui.forms.place_table import PlaceTable
from jobsheet.operations import place_rows as rows_

translate = QCoreApplication.translate


class GeneratorEdits:
    """Typing, and the keys of the table: they act on the generator as a whole."""

    def __init__(self, field: PlaceTable, edits: PlaceEdits) -> None:
        self._field = field
        self._edits = edits

    def _at(self, index: int) -> int:
        """Where the generator stands among the pieces."""
        return [number for number, piece in enumerate(self._field.pieces) if isinstance(piece, rows_.Made)][
            index
        ]

    def typed(self, index: int, text: str) -> None:
        """As long as the cursor is there what is typed stays its words."""
        at, pieces = self._at(index), self._field.pieces
        after = rows_.made_of(text, self._field.units)
        words = translate("Places", "change the generator")
        self._edits.do((*pieces[:at], after, *pieces[at + 1 :]), words, (), by_key=True)

    def asked(self, index: int, asked: str) -> None:
        """A key of the table."""
        at, pieces = self._at(index), self._field.pieces
        if asked in ("tab", "back"):
            self._field.lines[index].go_on(forward=asked == "tab")
        elif asked == "out":
            words = translate("Places", "take out the generator")
            self._edits.do((*pieces[:at], *pieces[at + 1 :]), words, ())
            self._field.go(self._first(at), "x")
        elif asked in ("up", "down"):
            self._move(at, 1 if asked == "down" else -1)
        elif asked == "insert":
            self._field.pieces = (*pieces[:at], rows_.Single(), *pieces[at:])
            self._field.fill()
            self._field.go(self._first(at), "x")
        elif asked == "paste":
            new = self._edits.lines_pasted()
            first = self._first(at)
            self._edits.put_pasted((*pieces[:at], *new, *pieces[at:]), "", first + len(new) - 1, len(new))
        else:
            self._leave(at, down=asked != "above")

    def _first(self, at: int) -> int:
        """The first row of a piece, or the row that stands where it would."""
        rows = [number for number, row in enumerate(self._field.rows) if row.piece >= at]
        return rows[0] if rows else len(self._field.rows)

    def _move(self, at: int, by: int) -> None:
        """All that it makes goes before or behind what stands beside it."""
        pieces, other = list(self._field.pieces), at + by
        if not 0 <= other < len(pieces):
            return
        pieces[at], pieces[other] = pieces[other], pieces[at]
        up, down = (
            translate("Places", "move the generator up"),
            translate("Places", "move the generator down"),
        )
        self._edits.do(tuple(pieces), up if by < 0 else down, ())
        moved = [number for number, piece in enumerate(self._field.pieces) if isinstance(piece, rows_.Made)]
        self._field.lines[moved.index(other)].setFocus()

    def _leave(self, at: int, *, down: bool) -> None:
        """Enter and Down to its first row, Up to the row above it."""
        self._field.settle()
        self._field.go(self._first(at) - (0 if down else 1), "x")
