"""What two people changed in one plan, side by side: which of the two counts is
chosen line by line, by key alone.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from jobsheet.edit.three_ways import MINE, THEIRS, Both, Choice, Item
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style

translate = QCoreApplication.translate
PAD, HEAD, BOX = 12, 30, 12
#: Lines of one side that are shown; the rest is counted.
MOST = 12


class TwoSides(QWidget):
    """Up and down go from line to line, left takes the own plan, right the other
    one; the space bar changes sides.
    """

    wanted = Signal()
    reached = Signal(int, int)

    def __init__(self, parent: QWidget, choices: tuple[Choice, ...]) -> None:
        super().__init__(parent)
        self.choices = choices
        self.takes = [MINE for _ in choices]
        self.at = 0
        self._tops: list[int] = []
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(translate("TwoPlans", "Changed by both"))
        self._tell()

    @property
    def chosen(self) -> tuple[tuple[Item, str], ...]:
        """Which plan counts for each line."""
        return tuple((choice.item, takes) for choice, takes in zip(self.choices, self.takes, strict=True))

    def _lines(self, lines: tuple[str, ...]) -> str:
        if len(lines) <= MOST:
            return "\n".join(lines)
        more = translate("TwoPlans", "and {count} more").format(count=len(lines) - MOST + 1)
        return "\n".join((*lines[: MOST - 1], more))

    def _half(self) -> int:
        return max(look().px(120), self.width() // 2)

    def _inside(self) -> int:
        now = look()
        return self._half() - 2 * now.px(PAD) - now.px(BOX + 8)

    def _arrange(self) -> None:
        now, top = look(), 0
        self._tops = []
        for choice in self.choices:
            self._tops.append(top)
            high = max(
                sum(ink.paragraph_height(now, line, now.body, self._inside()) for line in self._lines(side).split("\n"))
                for side in (choice.mine, choice.theirs)
            )  # fmt: skip
            top += now.px(HEAD) + high + now.px(14)
        self._tops.append(top)
        self.setMinimumHeight(max(top, now.px(40)))
        self.update()

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Words wrap otherwise."""
        self._arrange()

    def _tell(self) -> None:
        choice = self.choices[self.at]
        mine = translate("TwoPlans", "yours: {words}").format(words="; ".join(choice.mine))
        theirs = translate("TwoPlans", "the other: {words}").format(words="; ".join(choice.theirs))
        counts = (
            translate("TwoPlans", "yours counts")
            if self.takes[self.at] == MINE
            else translate("TwoPlans", "the other counts")
        )
        self.setAccessibleDescription(f"{choice.what}, {mine}, {theirs}, {counts}")
        if self._tops:
            self.reached.emit(self._tops[self.at], self._tops[self.at + 1] - self._tops[self.at])
        self.update()

    def _take(self, side: str) -> None:
        self.takes[self.at] = side
        self._tell()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Arrows, the space bar, Enter."""
        key = QtCore.Qt.Key(event.key())
        steps = {QtCore.Qt.Key.Key_Down: 1, QtCore.Qt.Key.Key_Up: -1}
        sides = {QtCore.Qt.Key.Key_Left: MINE, QtCore.Qt.Key.Key_Right: THEIRS}
        if key in steps:
            self.at = max(0, min(self.at + steps[key], len(self.choices) - 1))
            self._tell()
        elif key in sides:
            self._take(sides[key])
        elif key == QtCore.Qt.Key.Key_Space:
            self._take(MINE if self.takes[self.at] == THEIRS else THEIRS)
        elif key in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.wanted.emit()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A press takes the side that is under it."""
        y = event.position().y()
        at = next(
            (row for row in range(len(self.choices)) if self._tops[row] <= y < self._tops[row + 1]), None
        )
        if at is not None:
            self.at = at
            self._take(MINE if event.position().x() < self._half() else THEIRS)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """A head for each line, and both sides under it; the one that counts
        is in ink, the other in pencil.
        """
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            for at, choice in enumerate(self.choices):
                box = QRect(0, self._tops[at], self.width(), self._tops[at + 1] - self._tops[at])
                if at == self.at:
                    painter.fillRect(box, now.colour("chosen"))
                    painter.fillRect(QRect(0, box.top(), now.px(4), box.height()), now.colour("blue"))
                head = QRect(now.px(PAD), box.top() + now.px(4), box.width() - 2 * now.px(PAD), now.px(22))
                ink.write(painter, now, head, choice.what, now.bold)
                for left, side, lines in ((0, MINE, choice.mine), (self._half(), THEIRS, choice.theirs)):
                    self._side(painter, QRect(left, box.top() + now.px(HEAD), self._half(), box.height()), lines, taken=self.takes[at] == side)  # fmt: skip
                ink.horizontal(painter, now.colour("rule"), 0, box.width(), box.bottom())

    def _side(self, painter: QPainter, box: QRect, lines: tuple[str, ...], *, taken: bool) -> None:
        now, side = look(), look().px(BOX)
        mark = QRect(box.left() + now.px(PAD), box.top() + now.px(3), side, side)
        ink.frame(painter, mark, now.colour("edge"))
        if taken:
            painter.fillRect(mark.adjusted(3, 3, -2, -2), now.colour("blue"))
        words = QRect(mark.right() + now.px(8), box.top(), self._inside(), box.height())
        for line in self._lines(lines).split("\n"):
            ink.paragraph(painter, now, words, line, now.body, "ink" if taken else "pencil")
            words.setTop(words.top() + ink.paragraph_height(now, line, now.body, self._inside()))


class TwoPlans(QDialog):
    """What both changed, to be chosen; what only one changed is taken by itself and said above."""

    def __init__(self, parent: QWidget, name: str, both: Both) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("TwoPlans", "Two people saved {name}").format(name=name))
        now = look()
        head = translate(
            "TwoPlans",
            "Both changed these since the plan that both began from, each otherwise. Up and down go from line to line; left takes yours, right takes the other's. What the other saved is kept beside the job as it was.",
        )
        brought = Label("", self)
        if both.brought:
            words = translate("TwoPlans", "Comes in by itself, because only the other changed it: {what}.")
            brought.say(words.format(what="; ".join(both.brought)))
        brought.setVisible(bool(both.brought))
        self.rows = TwoSides(self, both.choices)
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.rows)
        scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.rows.reached.connect(lambda top, high: scroll.ensureVisible(0, top + high // 2, 0, high // 2))
        self.rows.wanted.connect(self.accept)
        sides = QHBoxLayout()
        for words in (
            translate("TwoPlans", "Yours, on the desk"),
            translate("TwoPlans", "The other's, in the file"),
        ):
            label = Label(words, self)
            label.setFont(now.bold)
            sides.addWidget(label, 1)
        save = Button(translate("TwoPlans", "Save both together"), self, Manner.FILLED)
        save.clicked.connect(self.accept)
        off = Button(translate("TwoPlans", "Cancel"), self)
        off.clicked.connect(self.reject)
        foot = QHBoxLayout()
        for button in (save, off):
            foot.addWidget(button)
        foot.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        whole.addWidget(Label(head, self))
        whole.addWidget(brought)
        whole.addLayout(sides)
        whole.addWidget(scroll, 1)
        whole.addLayout(foot)
        self.resize(now.px(860), now.px(520))
        self.rows.setFocus()
