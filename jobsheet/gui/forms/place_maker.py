"""Writes the words of a generator from a few sizes: row, grid or pitch circle. *Put in*
replaces only what it made before.
"""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.field import Field
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.operations.entry import Entry
from jobsheet.operations.patterns import read_pattern, written
from jobsheet.operations.place_rows import Made

GAP, ACROSS = 8, 4
#: Wider boxes would stand far from their labels.
WIDEST = 440
translate = QCoreApplication.translate


def _size(name: str, title: str, *, optional: bool = False) -> Entry:
    return Entry(name=name, title=title, asks="length", optional=optional)


def _count(name: str, title: str, low: str = "2") -> Entry:
    return Entry(name=name, title=title, asks="count", low=low, high="200")


_FROM = (_size("x", "First X"), _size("y", "First Y"))
_TURNED = Entry(name="angle", title="Turned", asks="angle", optional=True, hint="0° is along x")
#: What each asks, and the words that it writes.
_ASKS: dict[str, tuple[Entry, ...]] = {
    "row": (_count("count", "Holes"), *_FROM, _size("step", "Apart"), _TURNED),
    "grid": (
        _count("count", "Across", "1"), _count("rows", "Up", "1"), *_FROM, _size("step", "Apart in X"), _size("step2", "Apart in Y"),
    ),
    "circle": (
        _count("count", "Holes"), _size("on", "Circle ⌀"), _size("x", "Centre X"), _size("y", "Centre Y"),
        Entry(name="angle", title="First at", asks="angle", optional=True, hint="0° is along x"),
    ),
}  # fmt: skip
_WORDS = {
    "row": "row of {count} from {x}, {y}, step {step}",
    "grid": "grid of {count} × {rows} from {x}, {y}, step {step} × {step2}",
    "circle": "circle of {count} on {on} around {x}, {y}",
}
_ANGLE = {"row": " at {angle}", "circle": ", first at {angle}"}
_NAMES = ("row", "grid", "pitch circle")


class PlaceMaker(QWidget):
    """Three boxes side by side; the one that is chosen shows what it asks."""

    put_in = Signal(str, str)
    height_changed = Signal()

    def __init__(self, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._units = units
        self.setAccessibleName(translate("Places", "Generator"))
        self.kinds = Joined(_NAMES, translate("Places", "Generator"), self)
        self.kinds.typed.connect(self._choose)
        self.form = ""
        #: What is written for each form, by the name of its field.
        self.texts: dict[str, dict[str, str]] = {form: {} for form in _ASKS}
        self.fields: dict[str, dict[str, Field]] = {}
        self.button: Button | None = None
        self._problem = ""
        self._problem_at = QRect()
        #: The words that *Put in* replaces: what it made before.
        self.made = ""

    # --- what is asked ---

    def show_made(self, made: list[Made]) -> None:
        """The generators that stand in the list: the first is the one that is
        made here, until another is put in.
        """
        texts = [other.text for other in made]
        if self.made in texts:
            return
        readable = [other.text for other in made if other.problem is None]
        self.made = readable[0] if readable else ""
        found = written(self.made) if self.made else None
        if found is not None and not self._held():
            form, sizes = found
            self.texts[form] = sizes
            self.kinds.put(_NAMES[list(_ASKS).index(form)])
            self._show(form)

    def _held(self) -> bool:
        """Whether somebody writes in it."""
        focus = self.focusWidget()
        return focus is not None and focus.hasFocus() and self.isAncestorOf(focus)

    def _choose(self, name: str) -> None:
        self._show(list(_ASKS)[_NAMES.index(name)] if name in _NAMES else "")

    def _show(self, form: str) -> None:
        """The fields of a form, made when they are first asked for."""
        self.form, self._problem = form, ""
        if form and form not in self.fields:
            self.fields[form] = {entry.name: self._field(entry) for entry in _ASKS[form]}
        if self.button is None:
            self.button = Button(translate("Places", "Put in"), self, in_row=True)
            hover(self.button, translate("Places", "Replaces only what was put in before"))
            self.button.clicked.connect(self._put_in)
        for one, fields in self.fields.items():
            for field in fields.values():
                field.setVisible(one == form)
                if one == form:
                    self._fill(field)
        self.button.setVisible(bool(form))
        self._order()
        self.height_changed.emit()

    def _field(self, entry: Entry) -> Field:
        field = Field(entry, self._units, self)
        field.typed.connect(self._typed)
        return field

    def _fill(self, field: Field) -> None:
        text = self.texts[self.form].get(field.entry.name, "")
        try:
            value = field.entry.read(text, self._units) if text else None
            field.put(text, field.entry.understood(value, self._units) if text else "", None)
        except QuantityError as problem:
            field.put(text, "", problem)

    def _typed(self, name: str, text: str) -> None:
        self.texts[self.form][name] = text
        self._problem = ""
        self._fill(self.fields[self.form][name])
        self.update()

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        boxes: list[QWidget] = [field.box for field in self.fields.get(self.form, {}).values()]
        kinds: list[QWidget] = list(self.kinds.halves)
        return [*kinds, *boxes, *([self.button] if self.button is not None and self.form else [])]

    def _order(self) -> None:
        stops = self.stops()
        for widget, after in pairwise(stops):
            QWidget.setTabOrder(widget, after)

    # --- what it writes ---

    def words(self) -> str:
        """The generator in words."""
        sizes = {entry.name: self.texts[self.form].get(entry.name, "").strip() for entry in _ASKS[self.form]}
        text = _WORDS[self.form].format(**sizes)
        return text + (_ANGLE[self.form].format(**sizes) if sizes.get("angle") else "")

    def _put_in(self) -> None:
        """Write it, or say what is missing."""
        try:
            for name, field in self.fields[self.form].items():
                field.entry.read(self.texts[self.form].get(name, ""), self._units)
            read_pattern(self.words(), self._units)
        except QuantityError as error:
            self._problem = str(error)
            self.height_changed.emit()
            return
        before, self.made = self.made, self.words()
        self._problem = ""
        self.put_in.emit(self.made, before)
        self.height_changed.emit()

    # --- look ---

    def arrange(self, width: int) -> int:
        """Boxes, fields three across, and the button; the height."""
        now = look()
        high = now.px(28)
        self.kinds.setGeometry(0, 0, min(width, now.px(330)), high)
        if not self.form:
            return high
        gap, top, column, deepest = now.px(GAP), high + now.px(6), 0, 0
        one = (min(width, now.px(WIDEST)) - gap * (ACROSS - 1)) // ACROSS
        for field in self.fields[self.form].values():
            if column == ACROSS:
                top, column, deepest = top + deepest, 0, 0
            needed = field.needed_height(one)
            field.setGeometry(column * (one + gap), top, one, needed)
            deepest, column = max(deepest, needed), column + 1
        top = self._place_button(top, column, deepest, one + gap)
        if self._problem:
            wide = min(width, now.px(WIDEST))
            tall = ink.paragraph_height(now, self._problem, now.caption_bold, wide - now.px(16)) + now.px(4)
            self._problem_at = QRect(0, top, wide, tall)
            top += tall
        return top

    def _place_button(self, top: int, column: int, deepest: int, step: int) -> int:
        """In the next free place, level with the boxes; where the bottom is then."""
        now = look()
        if self.button is None:
            return top + deepest
        hint = self.button.sizeHint()
        if column == ACROSS:
            self.button.setGeometry(-now.px(4), top + deepest, hint.width(), hint.height())
            return top + deepest + hint.height()
        self.button.setGeometry(column * step, top + now.px(17), hint.width(), hint.height())
        return top + max(deepest, now.px(17) + hint.height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """What is missing, under the fields."""
        if not self._problem:
            return
        now = look()
        with QPainter(self) as painter:
            place = self._problem_at
            signs.draw(painter, "problem-caret", now.tokens.vermmark, 0, place.top() + now.px(9), now.px(13))
            ink.paragraph(
                painter, now, place.adjusted(now.px(16), 1, 0, 0), self._problem, now.caption_bold, "verm"
            )
