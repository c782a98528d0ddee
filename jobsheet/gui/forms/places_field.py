"""The places of a step as rows: number, X and Y in boxes, beside them turns and line of the dials.

What is stored stays one text, with its generators in words. A text is taken apart into rows when its box is
left, never under the cursor. Only some of many rows are shown; the arrow keys and the wheel go to the others.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, Signal, SignalInstance
from PySide6.QtGui import QFocusEvent, QMouseEvent, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.boxes import Inside
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.field import STAYING, Field
from jobsheet.gui.forms.generator_edits import GeneratorEdits
from jobsheet.gui.forms.place_cell import PlaceCell
from jobsheet.gui.forms.place_edits import PlaceEdits
from jobsheet.gui.forms.place_maker import PlaceMaker
from jobsheet.gui.forms.places_layout import SHOWN, Layout, arranged
from jobsheet.gui.forms.places_painter import paint_places
from jobsheet.gui.forms.row_words import Beside, RowWords, said_of
from jobsheet.gui.ink.look import look
from jobsheet.model.machine import Machine
from jobsheet.operations import place_rows as rows_
from jobsheet.operations.entry import Entry

translate = QCoreApplication.translate
AXES = ("x", "y")


class PlacesField(Field):
    """A table of places with the generator beside it."""

    done = Signal(str, str, str, bool)
    #: The place that the cursor is in: its number from nought, or less than nought.
    chosen = Signal(int)

    def __init__(self, entry: Entry, units: str, parent: QWidget, *, joined: bool = True) -> None:
        self.units = units
        self.pieces: rows_.Pieces = ()
        self.rows: tuple[rows_.Row, ...] = ()
        self.cells: list[tuple[PlaceCell, PlaceCell]] = []
        #: The words of each generator that stands in the list, one box each.
        self.lines: list[PlaceCell] = []
        self.words: list[RowWords] = []
        self.hand = -1
        self.note = ""
        self.first = 0
        self._dials = Beside(None)
        self.edits = PlaceEdits(self)
        self.of_lines = GeneratorEdits(self, self.edits)
        #: The list as it was last handed over, and the pieces that the boxes show.
        self._text: str | None = None
        self._filled: rows_.Pieces | None = None
        self.at: Layout | None = None
        super().__init__(entry, units, parent, joined=joined)
        #: At the row in hand, for the mouse; the keyboard has Ctrl + Del.
        self.out = Button(translate("Places", "take out"), self, Manner.LINK)
        self.out.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self.out.clicked.connect(lambda: self.edits.take_out(self.hand))
        self.maker = PlaceMaker(units, self)
        self.maker.put_in.connect(self.edits.put_in)
        self.maker.height_changed.connect(self.height_changed)
        self.fill()

    # --- boxes ---

    def make_box(self, *, joined: bool) -> Inside:  # noqa: ARG002  the box of every other field asks it
        """X of the first row."""
        return self._pair()[0]

    def _pair(self) -> tuple[PlaceCell, PlaceCell]:
        """The boxes of one more row."""
        index, pair = len(self.cells), (PlaceCell(self), PlaceCell(self))
        self.cells.append(pair)
        for cell, axis in zip(pair, AXES, strict=True):
            cell.setAlignment(QtCore.Qt.AlignmentFlag.AlignRight | QtCore.Qt.AlignmentFlag.AlignVCenter)
            cell.asked.connect(lambda asked, axis=axis: self.edits.asked(self.first + index, axis, asked))
            if cell is not self.cells[0][0]:  # the first one is heard as the box of the field
                cell.typed.connect(
                    lambda text, axis=axis: self.edits.typed_in(self.first + index, axis, text)
                )
                cell.installEventFilter(self)
        return pair

    def _line(self) -> PlaceCell:
        """The box of one more generator."""
        index, cell = len(self.lines), PlaceCell(self)
        self.lines.append(cell)
        cell.asked.connect(lambda asked: self.of_lines.asked(index, asked))
        cell.typed.connect(lambda text: self.of_lines.typed(index, text))
        cell.installEventFilter(self)
        return cell

    def stops(self) -> list[QWidget]:
        """What Tab stops at, in its order."""
        shown = [line for line in self.lines if not line.isHidden()]
        cells = [cell for pair in self.cells for cell in pair if not cell.isHidden()]
        return [*shown, *cells, *self.maker.stops()]

    @property
    def beside(self) -> PlaceMaker:
        """What stands beside the rows."""
        return self.maker

    @property
    def told(self) -> SignalInstance:
        """How an edit is told."""
        return self.done

    @property
    def ground(self) -> QWidget:
        """What is painted on."""
        return self

    def holds(self, widget: QWidget) -> bool:
        """Whether a control is part of the table or its maker."""
        return self.isAncestorOf(widget)

    def last_stop(self) -> QWidget:
        """Where Tab leaves it."""
        return self.stops()[-1]

    def holds_cursor(self) -> bool:
        """Whether the cursor is in one of its boxes."""
        focus = QApplication.focusWidget()
        return isinstance(focus, PlaceCell) and focus.parentWidget() is self

    def go_in(self) -> None:
        """To the first row that cannot be read."""
        self.go(next((row for row, words in enumerate(self.words) if words.problem), 0), "x")

    # --- what stands in it ---

    def dial_with(self, machine: Machine | None) -> None:
        """The machine whose dials stand beside the rows."""
        if machine is not self._dials.machine:
            self._dials = Beside(machine)
            self._filled = None
            self.fill()

    def has_dials(self) -> bool:
        """Whether the machine is known."""
        return self._dials.machine is not None

    def row_of(self, box: QWidget) -> int | None:
        """The row that a box stands in; none for the words of a generator."""
        return next((self.first + index for index, pair in enumerate(self.cells) if box in pair), None)

    def is_wrong(self, box: QWidget) -> bool:
        """Whether what stands in a box cannot be read."""
        row = self.row_of(box)
        if row is not None:
            words = self.words[row] if row < len(self.words) else None
            axis = "xy"[self.cells[row - self.first].index(box)] if isinstance(box, PlaceCell) else ""
            return words is not None and axis in words.wrong and not (words.half and row == self.hand)
        made = [piece for piece in self.pieces if isinstance(piece, rows_.Made)]
        index = self.lines.index(box) if isinstance(box, PlaceCell) and box in self.lines else len(made)
        return index < len(made) and made[index].problem is not None

    def put(self, text: str, understood: str, problem: QuantityError | None) -> None:
        """Show a list; what is being typed stands as it is."""
        self.problem, self.understood = problem, understood
        if text != self._text or self.pieces is not self._filled:
            self._text = text
            pieces = rows_.pieces_of(text, self.units)
            if not rows_.same(pieces, self.pieces):
                self.pieces, self.note = pieces, ""
            self.fill()

    def let_go(self) -> None:
        """Something is taken back: the rows are those of the list as it stands."""
        self.settle()

    def settle(self) -> None:
        """Take apart what was typed into boxes, now that the cursor is elsewhere."""
        pieces = rows_.pieces_of(rows_.text_of(self.pieces), self.units)
        if pieces != self.pieces:
            self.pieces = pieces
            self.fill()

    def fill(self) -> None:
        """Every box and word as the pieces have them; nothing where they are those that are shown."""
        if self.pieces is self._filled:
            self.update()
            return
        before = (len(self.rows), len(self.lines), [words.problem for words in self.words])
        self.rows = rows_.rows_of(self.pieces)
        self.words = [said_of(row, self.pieces, self.units, self._dials) for row in self.rows]
        self.first = max(0, min(self.first, len(self.rows) + 1 - SHOWN))
        self._fill_cells()
        self._fill_lines()
        self._filled = self.pieces
        self.maker.show_made([piece for piece in self.pieces if isinstance(piece, rows_.Made)])
        after = (len(self.rows), len(self.lines), [words.problem for words in self.words])
        if before != after:
            self.height_changed.emit()
        self.update()

    def _fill_cells(self) -> None:
        shown = min(len(self.rows) + 1, SHOWN)
        fresh = len(self.cells) < shown
        while len(self.cells) < shown:
            self._pair()
        for index, pair in enumerate(self.cells):
            row = self.first + index
            for cell, axis in zip(pair, AXES, strict=True):
                cell.setVisible(index < shown)
                if index < shown:
                    self._fill_cell(cell, row, axis)
        if fresh:
            self._order()

    def _fill_cell(self, cell: PlaceCell, row: int, axis: str) -> None:
        cell.put(getattr(self.rows[row], axis) if row < len(self.rows) else "")
        words = self.words[row] if row < len(self.words) else None
        cell.say(
            translate("Places", "Place {number}, {axis}").format(number=row + 1, axis=axis.upper()),
            words.spoken(axis) if words else translate("Places", "a new place"),
        )

    def _fill_lines(self) -> None:
        made = [piece for piece in self.pieces if isinstance(piece, rows_.Made)]
        fresh = len(self.lines) < len(made)
        while len(self.lines) < len(made):
            self._line()
        for index, line in enumerate(self.lines):
            line.setVisible(index < len(made))
            if index < len(made):
                line.put(made[index].text)
                problem = made[index].problem
                count = translate("Places", "{count} places").format(count=len(made[index].points))
                line.say(
                    translate("Places", "Generator {number}").format(number=index + 1),
                    str(problem) if problem else count,
                )
        if fresh:
            self._order()

    def _order(self) -> None:
        """Tab goes through generators, rows and the maker, in this order."""
        if not hasattr(self, "maker"):
            return
        stops = [*self.lines, *(cell for pair in self.cells for cell in pair), *self.maker.stops()]
        before: QWidget | None = self.box.previousInFocusChain()
        while before in stops and before is not None:
            before = before.previousInFocusChain()
        if before is None:
            return
        for stop in stops:
            QWidget.setTabOrder(before, stop)
            before = stop

    def _typed(self, text: str) -> None:
        """X of the first row shown."""
        self.edits.typed_in(self.first, "x", text)

    # --- where the cursor is ---

    def cell(self, row: int, axis: str) -> PlaceCell | None:
        """The box of a row, where it is shown."""
        index = row - self.first
        return self.cells[index][AXES.index(axis)] if 0 <= index < len(self.cells) else None

    def go(self, row: int, axis: str) -> None:
        """The cursor into a box, its text chosen; the rows move so that it is shown."""
        row = max(0, min(row, len(self.rows)))
        before = self.first
        self.first = min(max(self.first, row - SHOWN + 1), row)
        if self.first != before:
            self.edits.left()
            self._filled = None
            self.fill()
        cell = self.cell(row, axis)
        if cell is None:
            return
        if cell.hasFocus():
            cell.selectAll()
            self._entered(cell)
        else:
            cell.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def _entered(self, cell: QWidget) -> None:
        """The cursor is in this box now."""
        row = self.row_of(cell)
        hand = -1 if row is None else row
        if hand != self.hand:
            self._take_in_hand(hand)

    def _take_in_hand(self, row: int) -> None:
        """The cursor is in this row now, or in none: what stands at the row in hand moves with it."""
        self.hand = row
        self.chosen.emit(row if row < len(self.rows) else -1)
        before = self.at.height if self.at is not None else None
        if before is not None and before != self._place(self.width()).height:
            self.height_changed.emit()
        self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Which row the cursor is in; what was typed is taken apart once its box is left."""
        if event.type() == QEvent.Type.FocusIn and isinstance(watched, QWidget):
            self._entered(watched)
            self.update()
        elif isinstance(event, QFocusEvent) and event.lostFocus() and event.reason() not in STAYING:
            self._left()
        return False

    def _left(self) -> None:
        """The box was left: another of the table has the cursor now, or none."""
        self.edits.left()
        inside = self.holds_cursor()
        blank = any(isinstance(piece, rows_.Single) and piece.blank for piece in self.pieces)
        if not (inside and blank):
            self.settle()
        if not inside:
            self.note = ""
            self._take_in_hand(-1)
        self.update()

    # --- look ---

    def span(self, columns: int, one: float) -> int:  # noqa: ARG002  as every field is asked
        """A line of the form of its own."""
        return columns

    def needed_height(self, width: int) -> int:
        """Its height [px] at a width."""
        return self._place(width).height

    def _place(self, width: int) -> Layout:
        """Boxes, words of generators, and the maker at the right or below."""
        self.at = arranged(self, width)
        for box, place in self.at.boxes:
            box.setGeometry(place)
        self.maker.setGeometry(self.at.maker)
        there = 0 <= self.hand < len(self.rows)
        self.out.setVisible(there)
        if there:
            self.out.setGeometry(self.at.out)
            self.out.setAccessibleName(
                translate("Places", "Take place {number} out").format(number=self.hand + 1)
            )
        return self.at

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Its form has arranged it for this width already, unless it stands alone."""
        if self.at is None or self.at.width != self.width():
            self._place(self.width())

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Goes to the column."""
        event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A press on a row goes into it."""
        event.accept()
        if self.at is None:
            return
        y = event.position().y()
        for row, place in self.at.rows:
            if place.top() <= y <= place.bottom():
                self.go(row, "x")
                return
        self.go(0, "x")

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Heads, rows, dials, and what was understood."""
        if self.at is not None:
            paint_places(self, look(), self.at)
