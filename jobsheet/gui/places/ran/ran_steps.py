"""The steps, one open: digits say how it went, the next opens by itself; which
layer only where there were several.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.outcome_mark import CLEAN, draw_outcome
from jobsheet.gui.places.ran.big_button import GAP, HIGH, heading
from jobsheet.gui.places.ran.ran_asked import StepAsked
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.gui.places.ran.step_answers import StepAnswers
from jobsheet.model.trials import OUTCOMES, SLIPPED
from jobsheet.model.what_ran import NOT_CUT
from jobsheet.reckoning.run_words import outcome_words

translate = QCoreApplication.translate
ROW, HEAD, SIDE = 64, 50, 28


class RanSteps(QWidget):
    """The list has the keyboard; what is pressed in it are targets for a thumb."""

    said = Signal()
    moved = Signal()

    def __init__(self, desk: RanDesk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self._desk = desk
        self.at = 0
        #: What the next digit says of the open step: how it went, then what slipped, then which layer.
        self.asks = "outcome"
        self.answers = StepAnswers(self)
        self.answers.outcome.connect(self.outcome)
        self.answers.layer.connect(self.layer)
        self.answers.slipped.connect(self.slipped)
        self.answers.ran.connect(self._ran)
        self.answers.ran_wanted.connect(self.open_ran)
        self.answers.ran_left.connect(self.setFocus)
        self._tops: list[tuple[int, int]] = []

    # --- what is said ---

    @property
    def steps(self) -> tuple[StepAsked, ...]:
        """Those of the set-up that cut."""
        return self._desk.asked.steps if self._desk.asked is not None else ()

    @property
    def step(self) -> StepAsked | None:
        """The open one."""
        return self.steps[self.at] if self.at < len(self.steps) else None

    def begin(self) -> None:
        """Open the first step of which nothing is said."""
        free = (at for at, step_asked in enumerate(self.steps) if step_asked.key not in self._desk.said.steps)
        self._open(next(free, 0))

    def _open(self, at: int, asks: str = "outcome") -> None:
        self.at = max(0, min(at, len(self.steps) - 1))
        self.asks = asks
        self.moved.emit()

    def outcome(self, digit: int) -> None:
        """How the open step went; the next opens by itself, unless something of this one is still asked."""
        step = self.step
        if step is None:
            return
        word = OUTCOMES[digit - 1] if digit else NOT_CUT
        self._desk.outcome(step, word)
        self.said.emit()
        self._next("slipped" if word == "slipped" else self._asks_layer(step, word))

    @staticmethod
    def _asks_layer(step: StepAsked, word: str) -> str:
        return "layer" if step.layers > 1 and word not in (CLEAN, NOT_CUT) else ""

    def _next(self, asks: str) -> None:
        """What is asked next: of this step, or the next step; the last one stays open."""
        if asks:
            self._open(self.at, asks)
        else:
            self._open(self.at + 1)

    def slipped(self, what: str) -> None:
        """What slipped."""
        step = self.step
        if step is not None:
            self._desk.set(step, slipped=what)
            self.said.emit()
            self._next(self._asks_layer(step, "slipped"))

    def layer(self, layer: int) -> None:
        """Which layer it was; 0 for all of them."""
        step = self.step
        if step is not None:
            self._desk.set(step, layer=layer)
            self.said.emit()
            self._next("")

    def back(self) -> None:
        """One back: from the layer to the outcome; then the outcome is forgotten."""
        step = self.step
        if step is None:
            return
        if self.asks == "outcome":
            self._desk.forget(step)
        self.said.emit()
        self._open(self.at)

    def _ran(self, name: str, text: str) -> None:
        if self.step is not None:
            self._desk.ran(self.step, name, text)
            self.said.emit()

    def open_ran(self) -> None:
        """What really ran, where it was not as planned."""
        step = self.step
        entry = self._desk.said.steps.get(step.key) if step is not None else None
        if step is not None and entry is not None and entry.outcome != NOT_CUT:
            self.answers.open_ran(step)
            self.moved.emit()
            self.answers.fields["speed"].setFocus()
            self.moved.emit()

    # --- keys and mouse ---

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Digits answer what is asked; arrows walk; Backspace goes one back; R opens what really ran."""
        keys, key = QtCore.Qt.Key, event.key()
        plain = not event.modifiers() & ~QtCore.Qt.KeyboardModifier.KeypadModifier
        digit = key - keys.Key_0
        if plain and 0 <= digit <= 9 and self.step is not None:
            self._digit(int(digit))
        elif plain and key in (keys.Key_Up, keys.Key_Down):
            self._open(self.at + (1 if key == keys.Key_Down else -1))
        elif plain and key in (keys.Key_Return, keys.Key_Enter):
            self._open(self.at + 1)
        elif key in (keys.Key_Backspace, keys.Key_Delete):
            self.back()
        elif plain and key == keys.Key_R:
            self.open_ran()
        else:
            super().keyPressEvent(event)

    def _digit(self, digit: int) -> None:
        """A digit, by what is asked; one that is no answer says nothing."""
        assert self.step is not None
        if self.asks == "slipped":
            if 1 <= digit <= len(SLIPPED):
                self.slipped(SLIPPED[digit - 1])
        elif self.asks == "layer":
            if digit <= self.step.layers:
                self.layer(digit)
        elif digit <= len(OUTCOMES):
            self.outcome(digit)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A row is opened by pressing it."""
        self.setFocus()
        y = event.position().toPoint().y()
        for at, (top, high) in enumerate(self._tops):
            if top <= y < top + high and at != self.at:
                self._open(at)
                return

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The edge of the open step is blue."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """And no longer."""
        super().focusOutEvent(event)
        self.update()

    # --- placing ---

    def open_place(self) -> QRect:
        """Where the open step stands."""
        top, high = self._tops[self.at] if self.at < len(self._tops) else (0, 0)
        return QRect(0, top, self.width(), high)

    def arrange(self, width: int) -> int:
        """Place rows and answers; the height needed."""
        now = look()
        top = now.px(HEAD)
        self._tops = []
        self.answers.setVisible(self.step is not None)
        for at, step in enumerate(self.steps):
            high = now.px(ROW)
            if at == self.at:
                self.answers.put(self._desk, step, self.asks)
                inside = width - 2 * now.px(SIDE)
                needed = self.answers.arrange(inside)
                self.answers.setGeometry(now.px(SIDE), top + now.px(ROW) - now.px(4), inside, needed)
                high += needed + now.px(GAP)
            self._tops.append((top, high))
            top += high
        self.setAccessibleName(self._spoken())
        return max(top, now.px(HEAD + HIGH))

    def _spoken(self) -> str:
        """The open step and how far it is, as a screen reader says it."""
        step = self.step
        if step is None:
            return translate("Ran", "No step of this set-up cuts")
        asked = {
            "outcome": translate("Ran", "how did it go?"),
            "layer": translate("Ran", "which layer?"),
            "slipped": translate("Ran", "what slipped?"),
        }[self.asks]
        return f"{step.number} {step.words}: {self._words(step)[0]}; {asked}"

    # --- painting ---

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The heading, then every step with its mark."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            place = QRect(now.px(SIDE), 0, self.width() - 2 * now.px(SIDE), now.px(HEAD))
            heading(
                painter,
                place,
                translate("Ran", "What did each step do?"),
                translate("Ran", "press its digit; the next step opens by itself"),
            )
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD) - 1)
            if not self.steps:
                words = translate("Ran", "No step of this set-up cuts.")
                ink.write(painter, now, place.translated(0, now.px(HEAD)), words, now.large, "pencil")
            for at, (step, (top, high)) in enumerate(zip(self.steps, self._tops, strict=False)):
                self._paint_step(painter, step, QRect(0, top, self.width(), high), is_open=at == self.at)

    def _paint_step(self, painter: QPainter, step: StepAsked, place: QRect, *, is_open: bool) -> None:
        now = look()
        if is_open:
            painter.fillRect(place, now.colour("field"))
            if self.hasFocus() or self.isAncestorOf(self.focusWidget() or self):
                painter.fillRect(QRect(0, place.top(), now.px(6), place.height()), now.colour("bluemark"))
        high = now.px(ROW)
        font = now.title if is_open else now.large
        number = QRect(0, place.top(), now.px(80), high)
        ink.write(painter, now, number, str(step.number), font, "ink" if is_open else "pencil", ink.RIGHT)
        signs.draw(painter, step.icon, now.tokens.ink, now.px(98), place.top() + high / 2, now.px(34))
        right = place.width() - now.px(SIDE)
        left = now.px(148)
        if is_open:
            words, tone = step.planned, "pencil"
            used = min(now.width(words, now.plain_head), (right - left) // 2)
            ink.write(
                painter,
                now,
                QRect(right - used, place.top(), used, high),
                words,
                now.plain_head,
                tone,
                ink.RIGHT,
            )
        else:
            used = self._paint_outcome(painter, step, QRect(left, place.top(), right - left, high))
        ink.write(
            painter, now, QRect(left, place.top(), right - left - used - now.px(16), high), step.words, font
        )
        tone = "ink" if is_open else "rule"
        ink.horizontal(painter, now.colour(tone), 0, place.width(), place.bottom())

    def _words(self, step: StepAsked) -> tuple[str, str]:
        """How it went, and its tone; what was taken back is said in pencil."""
        entry = self._desk.said.steps.get(step.key)
        if entry is not None:
            return outcome_words(entry, self._desk.units), "ink" if entry.outcome != NOT_CUT else "pencil"
        back = self._desk.back.get(("step", step.key), ())
        if back:
            words = translate("Ran", "not entered; {outcome} was taken back")
            return words.format(outcome=outcome_words(back[-1], self._desk.units)), "pencil"
        return translate("Ran", "not entered"), "pencil"

    def _paint_outcome(self, painter: QPainter, step: StepAsked, place: QRect) -> int:
        """The mark of the outcome and its word at the right; how wide both are."""
        now = look()
        words, tone = self._words(step)
        font = now.title if tone == "ink" else now.large
        wide = min(now.width(words, font), place.width() // 2)
        box = QRect(place.right() - wide, place.top(), wide, place.height())
        ink.write(painter, now, box, words, font, tone, ink.RIGHT)
        mark = box.left() - now.px(34)
        entry = self._desk.said.steps.get(step.key)
        draw_outcome(painter, entry.outcome if entry is not None else "", mark, box.center().y(), 22)
        return wide + now.px(34)
