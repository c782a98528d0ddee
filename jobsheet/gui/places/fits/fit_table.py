"""The steps of a job as they are and as they would be on another machine, side by side."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.plain_widgets import PaintedText
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.reckoning.answers.fits_answer import Fit, Side, StepFit

translate = QCoreApplication.translate
#: Height of a step and of the head above them [px at 100 %].
ROW, HEAD = 44, 28


def _side_words(side: Side | None) -> tuple[str, str]:
    """What is set, and what is nearest to giving out."""
    if side is None:
        return "–", ""
    if side.problem:
        return side.problem, ""
    set_at = ", ".join(part for part in (side.spindle, side.seconds and f"{side.seconds} a turn") if part)
    share = (
        translate("Fits", "{share} % torque").format(share=round(side.torque_share * 100))
        if side.torque_share
        else ""
    )
    return set_at or translate("Fits", "nothing to set"), share


class FitRow(PaintedText):
    """One row, as a screen reader meets it: it paints nothing, the table does."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)


class FitTable(QWidget):
    """A row a step: number and title, as planned, as it would be."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.fit: Fit | None = None
        self._steps: tuple[StepFit, ...] = ()
        self._rows: list[FitRow] = []

    def put(self, fit: Fit) -> None:
        """Show a job on another card."""
        self.fit = fit
        self._steps = fit.steps
        self._fit_height()
        self.setAccessibleName(translate("Fits", "The steps on {machine}").format(machine=fit.machine.title))
        self._say_rows()
        self.update()

    def _say_rows(self) -> None:
        """A row for a screen reader at the place of each that is painted."""
        while len(self._rows) < len(self._steps):
            self._rows.append(FitRow(self))
        top, width = look().px(HEAD), max(self.width(), look().px(500))
        for place, row in enumerate(self._rows):
            row.setVisible(place < len(self._steps))
            if place < len(self._steps):
                high = self._high(self._steps[place], width)
                row.setGeometry(0, top, width, high)
                row.setAccessibleName(self._spoken(self._steps[place]))
                top += high

    def _said_high(self, step: StepFit, width: int) -> int:
        """How high the words under a row stand at a width."""
        now = look()
        words = self._says(step)
        return ink.paragraph_height(now, words, now.caption, width - now.px(74)) + now.px(4) if words else 0

    def _high(self, step: StepFit, width: int) -> int:
        return look().px(ROW) + self._said_high(step, width)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Words that wrap need another height."""
        super().resizeEvent(event)
        self._fit_height()
        self._say_rows()

    def _fit_height(self) -> None:
        width = max(self.width(), look().px(500))
        self.setMinimumHeight(look().px(HEAD) + sum(self._high(step, width) for step in self._steps))

    @staticmethod
    def _says(step: StepFit) -> str:
        """What no longer fits, or that the speed is another."""
        said = []
        for limit in step.no_longer:
            words = limit.sentence or f"{limit.title}: {limit.shown}"
            said.append(f"{words[:1].upper()}{words[1:]}".rstrip(". ") + ".")
        if step.retyped:
            words = translate("Fits", "Its speed is none of this machine's: {speed} is nearest.")
            said.append(words.format(speed=step.retyped))
        return " ".join(said)

    def _spoken(self, step: StepFit) -> str:
        after = " ".join(_side_words(step.after))
        word = verdict_word(step.after.verdict) if step.after.verdict in VERDICTS else ""
        return f"{step.number} {step.title}: {after} {word} {self._says(step)}".strip()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions, and the rows."""
        if self.fit is None:
            return
        now, width = look(), self.width()
        name = now.px(60)
        first, second = round(width * 0.40), round(width * 0.68)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            head = now.px(HEAD)
            for x, words in (
                (name, translate("Fits", "step")),
                (first, translate("Fits", "as planned")),
                (second, self.fit.machine.title),
            ):
                ink.write(painter, now, QRect(x, 0, width - x, head), words, now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, width, head - 1)
            top = head
            for step in self._steps:
                high = now.px(ROW)
                quiet = "ink" if step.changed else "pencil"
                ink.write(
                    painter,
                    now,
                    QRect(0, top, now.px(46), high),
                    str(step.number),
                    now.body,
                    "pencil",
                    ink.RIGHT,
                )
                ink.write(
                    painter,
                    now,
                    QRect(name, top, first - name - now.px(8), high),
                    step.title,
                    now.body,
                    quiet,
                )
                self._side(painter, QRect(first, top, second - first - now.px(8), high), step.before, quiet)
                self._side(painter, QRect(second, top, width - second - now.px(8), high), step.after, quiet)
                if words := self._says(step):
                    under = self._said_high(step, width)
                    place = QRect(name, top + high - now.px(4), width - now.px(74), under)
                    tone = "verm" if step.no_longer else "pencil"
                    ink.paragraph(painter, now, place, words, now.caption, tone)
                top += self._high(step, width)
                ink.horizontal(painter, now.colour("rule"), 0, width, top - 1)

    @staticmethod
    def _side(painter: QPainter, place: QRect, side: Side | None, tone: str) -> None:
        now = look()
        upper, lower = _side_words(side)
        half = place.height() // 2
        at = place.left()
        if side is not None and side.verdict in VERDICTS:
            icon, _, token = VERDICTS[side.verdict]
            if icon:
                signs.draw(painter, icon, getattr(now.tokens, token), at, place.top() + half, now.px(16))
            lower = ", ".join(
                part for part in (lower, f"{verdict_word(side.verdict)}: {side.governing.lower()}") if part
            )
        at += now.px(23)
        wide = place.right() - at
        ink.write(painter, now, QRect(at, place.top() + now.px(3), wide, half), upper, now.body, tone)
        under = QRect(at, place.top() + half - now.px(2), wide, half)
        ink.write(painter, now, under, lower, now.caption, "pencil")
