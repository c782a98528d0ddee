"""What is said at a line of the finished part: a remark about it alone stands under its field, one that a
step is to be mended for by number.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import groupby

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import RemarkLine
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.spoken import severity_word
from jobsheet.gui.ink.tokens import SEVERITIES
from jobsheet.model.job import Job
from jobsheet.model.remark import SEVERITIES as WORST_FIRST
from jobsheet.model.remark import Remark

#: The height of such a line, the room of a sign, and how far one stands from the next [px at 100 %].
HIGH, SIGN, APART = 36, 22, 18

translate = QCoreApplication.translate


class Elsewhere(Struct, frozen=True, kw_only=True):
    """What stands at a step or a set-up and is about a line of the finished part: which, where it is
    gone to, and all that is said there.
    """

    line: int
    words: str
    key: str
    rule: str
    severity: str
    messages: tuple[str, ...]


def told_at_line(remark: Remark) -> bool:
    """Whether a remark is about a line of the finished part and nothing else that could be gone to."""
    return remark.line is not None and not remark.operations and not remark.set_up


def elsewhere(remarks: Iterable[Remark], job: Job) -> tuple[Elsewhere, ...]:
    """Of remarks that stand at a step and are about a line too: the line and the numbers, those at the
    same steps as one, the worst first.
    """
    together: dict[tuple[int, tuple[str, ...], str], list[Remark]] = {}
    for remark in remarks:
        if remark.line is not None and not told_at_line(remark):
            set_up = "" if remark.operations else remark.set_up
            together.setdefault((remark.line, remark.operations, set_up), []).append(remark)
    found = []
    for (line, keys, set_up), some in together.items():
        some.sort(key=lambda remark: WORST_FIRST.index(remark.severity))
        found.append(
            Elsewhere(
                line=line, words=_see(keys, set_up, job), key=(*keys, set_up)[0], rule=some[0].rule,
                severity=some[0].severity, messages=tuple(remark.message for remark in some),
            )
        )  # fmt: skip
    found.sort(key=lambda elsewhere: (elsewhere.line, WORST_FIRST.index(elsewhere.severity)))
    return tuple(found)


def _see(keys: tuple[str, ...], set_up: str, job: Job) -> str:
    """`see 40`, `see 40, 55`, `see set-up 2`."""
    if not keys:
        number = next((other.number for other in job.set_ups if other.key == set_up), 0)
        return translate("AtTheLines", "see set-up {number}").format(number=number)
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    said = ", ".join(str(numbers[key]) for key in keys if key in numbers)
    return translate("AtTheLines", "see {numbers}").format(numbers=said)


class ElsewhereLine(QWidget):
    """All of them under one field, side by side: the sign and the word of the severity, and the numbers,
    which go there when they are pressed.
    """

    pressed = Signal(object)

    def __init__(self, about: tuple[Elsewhere, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self.about = about
        self.line = about[0].line
        self.buttons = [self._button(elsewhere) for elsewhere in about]

    def _button(self, about: Elsewhere) -> Button:
        """What goes to a step; what is said there is read out, and stands in the tooltip."""
        button = Button(about.words, self, Manner.LINK)
        said = "\n".join(about.messages)
        hover(button, said)
        button.setAccessibleName(f"{severity_word(about.severity)}: {about.words}")
        button.setAccessibleDescription(said)
        button.clicked.connect(lambda: self.pressed.emit(about))
        return button

    def help_topic(self) -> str:
        """The page of the rule whose numbers have the keyboard, else of the worst."""
        rule = next(
            (
                elsewhere.rule
                for elsewhere, button in zip(self.about, self.buttons, strict=True)
                if button.hasFocus()
            ),
            "",
        )
        return f"remark:{rule or self.about[0].rule}"

    def arrange(self, width: int) -> int:
        """Place the buttons, on another line where one has no room; the height needed."""
        now = look()
        left, top, high = 0, 0, now.px(HIGH)
        for one, button in zip(self.about, self.buttons, strict=True):
            hint = button.sizeHint()
            before = now.px(SIGN) + now.width(severity_word(one.severity), now.bold)
            if left and left + before + hint.width() > width:
                left, top = 0, top + high
            left += before
            button.setGeometry(left, top + (high - hint.height()) // 2, hint.width(), hint.height())
            left += hint.width() + now.px(APART)
        return top + high

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Sign and word before each of the numbers."""
        now = look()
        with QPainter(self) as painter:
            for one, button in zip(self.about, self.buttons, strict=True):
                icon, word, mark = SEVERITIES[one.severity]
                said, place = severity_word(one.severity), button.geometry()
                wide = now.width(said, now.bold)
                left = place.left() - wide
                signs.draw(
                    painter, icon, getattr(now.tokens, mark), left - now.px(SIGN), place.center().y() + 1, now.px(16)
                )  # fmt: skip
                ink.write(painter, now, QRect(left, place.top(), wide, place.height()), said, now.bold, word)


class HungLines:
    """What hangs under which field: laid out with the form, read and reached
    by Tab right behind its field.
    """

    def __init__(self, home: QWidget, went: Callable[[Elsewhere], object]) -> None:
        self._home = home
        self._went = went
        self._about: tuple[Elsewhere, ...] = ()
        self._lines: list[ElsewhereLine] = []

    def put(self, about: tuple[Elsewhere, ...]) -> bool:
        """Name these from now on; whether they are others than before."""
        if about == self._about:
            return False
        for old in self._lines:
            old.hide()
            old.deleteLater()
        self._about = about
        self._lines = [
            ElsewhereLine(tuple(some), self._home)
            for _, some in groupby(about, lambda elsewhere: elsewhere.line)
        ]
        for line in self._lines:
            line.pressed.connect(self._went)
            line.show()
        return True

    def by_line(self, remarks: Iterable[RemarkLine]) -> dict[int, list[RemarkLine | ElsewhereLine]]:
        """What hangs under the field of each line: the remarks about it alone, then what stands at a step."""
        found: dict[int, list[RemarkLine | ElsewhereLine]] = {}
        for remark_line in remarks:
            if remark_line.remark.line is not None and told_at_line(remark_line.remark):
                found.setdefault(remark_line.remark.line, []).append(remark_line)
        for line in self._lines:
            found.setdefault(line.line, []).append(line)
        return found
