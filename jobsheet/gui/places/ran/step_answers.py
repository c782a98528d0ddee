"""What can be pressed of the open step: its outcomes, what slipped, which layer, and what really ran."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.outcome_mark import CLEAN
from jobsheet.gui.places.ran.big_button import GAP, HIGH, BigButton, BigField
from jobsheet.gui.places.ran.ran_asked import StepAsked
from jobsheet.gui.places.ran.ran_desk import RAN, RanDesk
from jobsheet.model.trials import OUTCOMES, SLIPPED
from jobsheet.model.what_ran import NOT_CUT, Entry
from jobsheet.reckoning.run_words import number_of
from jobsheet.units.show import trimmed

translate = QCoreApplication.translate
#: One digit says which layer it was; of a later one the note says it.
MOST_LAYERS = 9


class StepAnswers(QWidget):
    """The buttons and fields of one step; the keyboard stays with the list, but for the fields."""

    outcome = Signal(int)
    layer = Signal(int)
    slipped = Signal(str)
    ran = Signal(str, str)
    ran_wanted = Signal()
    ran_left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.outcomes = [self._digit(digit, word, self.outcome) for digit, word in enumerate(OUTCOMES, 1)]
        self.outcomes.append(self._digit(0, NOT_CUT, self.outcome))
        self.what = [self._word(at, word) for at, word in enumerate(SLIPPED, 1)]
        self.layers = [self._layer(number) for number in range(MOST_LAYERS + 1)]
        self.really = self._quiet(BigButton(translate("Ran", "ran otherwise…"), self, digit="R"))
        self.really.clicked.connect(self.ran_wanted)
        names = {
            "speed": translate("Ran", "Speed that ran, rpm"),
            "depth": translate("Ran", "Depth of the layer"),
            "seconds": translate("Ran", "Seconds on the watch"),
        }
        self.fields = {name: BigField(names[name], self) for name, _, _ in RAN}
        for name, field in self.fields.items():
            field.textEdited.connect(lambda text, name=name: self.ran.emit(name, text))
            field.installEventFilter(self)
        self._asks = "outcome"
        self._shown = ""
        self._opened = ""
        self._captions: list[tuple[QRect, str]] = []
        self._several = False

    def _quiet(self, button: BigButton) -> BigButton:
        """A target for a thumb: the keyboard has the digit."""
        button.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        return button

    def _digit(self, digit: int, word: str, signal: object) -> BigButton:
        del signal
        button = self._quiet(BigButton(word, self, digit=str(digit)))
        button.clicked.connect(lambda _=False, digit=digit: self.outcome.emit(digit))
        return button

    def _word(self, at: int, word: str) -> BigButton:
        button = self._quiet(BigButton(word, self, digit=str(at)))
        button.clicked.connect(lambda _=False, word=word: self.slipped.emit(word))
        return button

    def _layer(self, number: int) -> BigButton:
        button = self._quiet(BigButton(str(number) if number else translate("Ran", "all"), self))
        button.setAccessibleName(
            translate("Ran", "layer {number}").format(number=number)
            if number
            else translate("Ran", "all layers")
        )
        button.clicked.connect(lambda _=False, number=number: self.layer.emit(number))
        return button

    def open_ran(self, step: StepAsked) -> None:
        """Show the fields of what really ran for this step."""
        self._opened = step.key

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Enter goes on to the next field, and after the last, back to the list."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            keys = QtCore.Qt.Key
            order = list(self.fields.values())
            if event.key() in (keys.Key_Return, keys.Key_Enter) and watched in order:
                at = order.index(watched)
                (order[at + 1].setFocus if at + 1 < len(order) else self.ran_left.emit)()
                return True
        return super().eventFilter(watched, event)

    @property
    def goes_on(self) -> bool:
        """Whether the hand is below the outcomes: at what slipped, at the layer, at what really ran."""
        return self._asks != "outcome" or any(field.hasFocus() for field in self.fields.values())

    # --- showing ---

    def put(self, desk: RanDesk, step: StepAsked, asks: str) -> None:
        """Show what is said of a step."""
        answer = desk.said.steps.get(step.key)
        self._asks, self._several = asks, step.layers > 1
        for button, word in zip(self.outcomes, (*OUTCOMES, NOT_CUT), strict=True):
            button.choose(answer is not None and answer.outcome == word)
        for button, word in zip(self.what, SLIPPED, strict=True):
            button.choose(answer is not None and answer.slipped == word)
            button.setVisible(answer is not None and answer.outcome == "slipped")
        trouble = answer is not None and answer.outcome not in (CLEAN, NOT_CUT)
        for number, button in enumerate(self.layers):
            button.choose(answer is not None and trouble and answer.layer == number and asks == "outcome")
            button.setVisible(trouble and self._several and number <= step.layers)
        self._put_ran(desk, step, answer)
        self.update()

    def _put_ran(self, desk: RanDesk, step: StepAsked, entry: Entry | None) -> None:
        told = entry is not None and (entry.speed, entry.depth, entry.seconds) != (None, None, None)
        unread = any(of[:2] == ("step", step.key) for of in desk.unread)
        is_open = (
            entry is not None and entry.outcome != NOT_CUT and (told or unread or self._opened == step.key)
        )
        self.really.setVisible(entry is not None and entry.outcome != NOT_CUT and not is_open)
        for name, field in self.fields.items():
            field.setVisible(is_open)
            if step.key != self._shown:
                field.clearFocus()
            text, why = desk.unread.get(("step", step.key, name), (_shown(entry, name, desk.units), ""))
            field.put(text)
            field.wrong(why)
        self._shown = step.key

    def arrange(self, width: int) -> int:
        """Outcomes in as many columns as have room for the longest word, then
        what belongs to the one chosen.
        """
        now = look()
        gap, high = now.px(GAP), now.px(HIGH)
        longest = max(now.width(big_button.text(), now.plain_head) for big_button in self.outcomes) + now.px(
            44
        )
        columns = next((count for count in (4, 3, 2) if (width - gap * (count - 1)) // count >= longest), 1)
        first = self.outcomes if columns == 3 else self.outcomes[:-1]
        top = _grid(first, QRect(0, 0, width, high), columns, gap)
        self._captions = []
        top = self._row(self.what, translate("Ran", "what slipped"), top, width)
        left, top = self._row_of_layers(top, width)
        alone = self.outcomes[-1]
        if columns != 3:
            wide = max(alone.sizeHint().width(), now.px(136))
            if left + wide > width and left:
                top += high + gap
            alone.setGeometry(width - wide, top, wide, high)
        hint = self.really.sizeHint().width()
        room = width - (0 if columns == 3 else alone.width() + gap)
        if not self.really.isHidden():
            if left + hint > room:
                top, left = top + high + gap, 0
            self.really.setGeometry(left, top, hint, high)
        if columns != 3 or left or not self.really.isHidden():
            top += high + gap
        return self._arrange_ran(top, width)

    def _row(self, buttons: list[BigButton], caption: str, top: int, width: int) -> int:
        """A caption and buttons behind it; nothing where none is shown."""
        if buttons[0].isHidden():
            return top
        now = look()
        left = self._caption(caption, top)
        for button in buttons:
            wide = min(button.sizeHint().width(), width // 3)
            button.setGeometry(left, top, wide, now.px(HIGH))
            left += wide + now.px(GAP)
        return top + now.px(HIGH) + now.px(GAP)

    def _row_of_layers(self, top: int, width: int) -> tuple[int, int]:
        """Which layer: 1 to the last, then all of them, in as many lines as they need; how far the
        last of them reaches, and its top.
        """
        shown = [big_button for big_button in (*self.layers[1:], self.layers[0]) if not big_button.isHidden()]
        if not shown:
            return 0, top
        now = look()
        first = left = self._caption(translate("Ran", "which layer"), top)
        for button in shown:
            own = now.px(64) if button is not self.layers[0] else now.px(96)
            if left + own > width:
                left, top = first, top + now.px(HIGH) + now.px(GAP)
            button.setGeometry(left, top, own, now.px(HIGH))
            left += own + now.px(GAP)
        return left, top

    def _caption(self, words: str, top: int) -> int:
        now = look()
        wide = now.width(words, now.head) + now.px(14)
        self._captions.append((QRect(0, top, wide, now.px(HIGH)), words))
        return wide

    def _arrange_ran(self, top: int, width: int) -> int:
        """The three fields in one line, their names over them."""
        if self.fields["speed"].isHidden():
            return top
        now = look()
        wide = (width - 2 * now.px(GAP)) // 3
        for at, field in enumerate(self.fields.values()):
            left = at * (wide + now.px(GAP))
            self._captions.append((QRect(left, top, wide, now.px(24)), field.accessibleName()))
            field.setGeometry(left, top + now.px(24), wide, now.px(HIGH))
        return top + now.px(24 + HIGH + GAP)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions; the one that the next digit answers is blue."""
        now = look()
        asked = {"slipped": translate("Ran", "what slipped"), "layer": translate("Ran", "which layer")}.get(
            self._asks
        )
        with QPainter(self) as painter:
            for place, words in self._captions:
                tone, font = ("blue", now.head) if words == asked else ("pencil", now.plain_head)
                ink.write(painter, now, place, words, font, tone)


def _grid(buttons: list[BigButton], first: QRect, columns: int, gap: int) -> int:
    """Buttons in rows of so many; where the next thing may stand."""
    wide = (first.width() - gap * (columns - 1)) // columns
    for at, button in enumerate(buttons):
        row, column = divmod(at, columns)
        button.setGeometry(column * (wide + gap), row * (first.height() + gap), wide, first.height())
    return -(-len(buttons) // columns) * (first.height() + gap)


def _shown(entry: Entry | None, name: str, units: str) -> str:
    """What was said of a step, as it may be typed again."""
    value = getattr(entry, name) if entry is not None else None
    if value is None:
        return ""
    if name == "speed":
        return trimmed(value * 60, 1)
    return trimmed(value, 1) if name == "seconds" else number_of(value, units)
