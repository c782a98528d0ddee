"""The cut that is recommended for the open row, in one line with one button; its reasons
and what else would do behind *Why*.
"""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import INDENT
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

#: A value with its reason.
LINE = 40

translate = QCoreApplication.translate


class Reason(Struct, frozen=True):
    """A value that would be written, and why: title of its field, text, reason with its
    source; without a title another way.
    """

    title: str
    text: str
    why: str


class Recommended(Struct, frozen=True, kw_only=True):
    """What the line says, what to type for it, and what stands behind *Why*."""

    words: str = ""
    edits: tuple[tuple[str, str], ...] = ()
    reasons: tuple[Reason, ...] = ()


NOTHING = Recommended()


class Suggestions(QWidget):
    """One line with the recommended cut and its button; opened, a line for each value with its reason."""

    taken = Signal(object)
    height_changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.item = NOTHING
        self.use = Button(translate("Suggestions", "Use this"), self, in_row=True)
        self.use.clicked.connect(lambda _=False: self.taken.emit(self.item.edits))
        self.more = Button(translate("Suggestions", "Why"), self, Manner.LINK)
        self.more.setCheckable(True)
        self.more.toggled.connect(self._toggle)
        self._heights: list[int] = []
        self.hide()

    def put(self, item: Recommended) -> bool:
        """Show this; whether anything changed."""
        if item == self.item:
            return False
        self.item = item
        self.setVisible(bool(item.words))
        self.use.setVisible(bool(item.edits))
        self.use.setAccessibleName(translate("Suggestions", "Use this: {words}").format(words=item.words))
        self.more.setVisible(bool(item.reasons))
        reasons = "; ".join(
            " ".join(part for part in (reason.title, reason.text, reason.why) if part)
            for reason in item.reasons
        )
        self.more.setAccessibleDescription(reasons)
        self.setAccessibleName(translate("Suggestions", "Recommended: {text}").format(text=item.words))
        self.update()
        return True

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        return [
            button
            for button, there in ((self.use, self.item.edits), (self.more, self.item.reasons))
            if there and self.item.words
        ]

    def _toggle(self, on: bool) -> None:
        """Open or close the reasons."""
        self.more.setText(translate("Suggestions", "Hide") if on else translate("Suggestions", "Why"))
        self.height_changed.emit()
        self.update()

    def _wide(self, taken: int) -> int:
        """The width left for words beside something so wide [px]."""
        now = look()
        return self.width() - now.px(INDENT) - taken - now.px(22)

    def _buttons(self) -> int:
        """How wide the buttons are together [px]."""
        now = look()
        shown = [button for button in (self.use, self.more) if button in self.stops()]
        return sum(button.sizeHint().width() + now.px(4) for button in shown)

    def arrange(self, width: int) -> int:
        """Place the buttons; the height needed at a width."""
        if not self.item.words:
            return 0
        now = look()
        self.resize(width, self.height())
        right, tall = width - now.px(10), 0
        for button in (self.more, self.use):
            if button in self.stops():
                hint = button.sizeHint()
                right -= hint.width()
                button.setGeometry(right, 0, hint.width(), hint.height())
                right -= now.px(4)
                tall = max(tall, hint.height())
        high = ink.paragraph_height(now, self.item.words, now.body, self._wide(self._buttons()))
        top = max(tall, high + now.px(18))
        self._heights = [top]
        if self.more.isChecked():
            for reason in self.item.reasons:
                words = ink.paragraph_height(now, reason.why, now.caption, self._wide(0))
                top += words + now.px(28 if reason.title else 10)
                self._heights.append(top)
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The caption in pencil, the line, and the reasons when they are open."""
        if not self.item.words or not self._heights:
            return
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            caption = QRect(now.px(14), now.px(9), now.px(INDENT - 18), now.px(18))
            ink.write(painter, now, caption, translate("Suggestions", "recommended"), now.label, "pencil")
            text = QRect(now.px(INDENT), now.px(9), self._wide(self._buttons()), self.height())
            ink.paragraph(painter, now, text, self.item.words, now.body)
            for top, reason in zip(self._heights, self.item.reasons, strict=False):
                if not self.more.isChecked():
                    break
                self._paint_reason(painter, top, reason)

    def _paint_reason(self, painter: QPainter, top: int, reason: Reason) -> None:
        """The value in ink, why in pencil under it; another way in pencil alone."""
        now, wide = look(), self._wide(0)
        if reason.title:
            head = QRect(now.px(INDENT), top + now.px(4), wide, now.px(18))
            ink.write(painter, now, head, f"{reason.title}  {reason.text}", now.body)
        why = QRect(now.px(INDENT), top + now.px(21 if reason.title else 3), wide, self.height())
        ink.paragraph(painter, now, why, reason.why, now.caption, "pencil")
