"""Remarks, reminders and the words of the sheet, under the form of the open row."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.help_asked import ask_help
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import Look, look
from jobsheet.gui.ink.spoken import severity_word
from jobsheet.gui.ink.tokens import SEVERITIES
from jobsheet.model.remark import Remark

HIGH = 46
#: Where the texts begin, from the left edge of the row.
INDENT = 116
#: Words are not made narrower than this for the buttons beside them.
NARROW = 260

translate = QCoreApplication.translate


class Offer(Struct, frozen=True):
    """What is offered with a remark: the fix's label, nothing where there is none, and
    what it does or why there is none.
    """

    label: str = ""
    lines: tuple[str, ...] = ()


#: What is offered with a remark, tried when it is looked at.
Offering = Callable[[Remark], Offer]


class RemarkLine(QWidget):
    """One remark: its severity by shape, edge and word, what is wrong, why, what
    would mend it and what that does.
    """

    mended = Signal(object)
    dismissed = Signal(object)
    #: Somebody comes near: say what the fix would change.
    previewed = Signal(object)

    def __init__(self, remark: Remark, offer: Offer, parent: QWidget) -> None:
        super().__init__(parent)
        self.remark = remark
        self.offer = offer
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.TabFocus)
        spoken = translate("Remarks", "{severity}: {message} {why}")
        self.setAccessibleName(
            spoken.format(severity=severity_word(remark.severity), message=remark.message, why=remark.why)
        )
        self.button = self._make_button()
        self.setAccessibleDescription("; ".join(offer.lines))
        self.aside = Button(translate("Remarks", "Set aside…"), self, Manner.LINK)
        self.aside.setAccessibleName(
            translate("Remarks", "Set aside with a reason: {message}").format(message=remark.message)
        )
        self.aside.clicked.connect(lambda: self.dismissed.emit(self.remark))

    def _make_button(self) -> Button | None:
        """The button of what is offered, where anything is."""
        if not self.offer.label:
            return None
        button = Button(self.offer.label, self, in_row=True)
        button.clicked.connect(lambda: self.mended.emit(self.remark))
        return button

    def take(self, offer: Offer) -> bool:
        """Offer something else from now on; whether it is anything else."""
        if offer == self.offer:
            return False
        was, self.offer = self.offer, offer
        if was.label != offer.label:  # a button that stays keeps the focus
            old, self.button = self.button, self._make_button()
            if old is not None:
                old.hide()
                old.deleteLater()
            if self.button is not None:
                self.button.show()
        self.setAccessibleDescription("; ".join(offer.lines))
        self.update()
        return True

    def preview(self, lines: tuple[str, ...]) -> None:
        """Say what the fix would change before it is pressed."""
        if self.button is not None and lines:
            hover(self.button, "\n".join(lines))
            self.button.setAccessibleDescription("; ".join(lines))

    def _buttons(self) -> list[Button]:
        """From the right."""
        return [button for button in (self.button, self.aside) if button is not None]

    def _beside(self, width: int) -> int:
        """How wide the words may be with the buttons beside them; nought where
        these go below, as in a narrow window.
        """
        now = look()
        right = now.px(14 + 8) + sum(button.sizeHint().width() for button in self._buttons())
        wide = width - now.px(INDENT) - right
        return wide if wide >= now.px(NARROW) else 0

    def _texts(self, width: int) -> tuple[tuple[str, QRect, bool], ...]:
        """What is written and where: what is wrong, why, and over the whole width what
        the fix does or why there is none.
        """
        now = look()
        whole = width - now.px(INDENT) - now.px(10)
        wide, top = self._beside(width) or whole, now.px(5)
        texts: list[tuple[str, QRect, bool]] = []
        for text, font, room in (
            (self.remark.message, now.body, wide),
            (self.remark.why, now.caption, wide),
            *((line, now.caption, whole) for line in self.offer.lines),
        ):
            if len(texts) == 2 and wide != whole:
                top = max(top, now.px(HIGH) - now.px(4))
            high = ink.paragraph_height(now, text, font, room)
            texts.append((text, QRect(now.px(INDENT), top, room, high), font is now.body))
            top += high
        return tuple(texts)

    def arrange(self, width: int) -> int:
        """Place the buttons beside the words, or below them where there is no room; the height needed."""
        now = look()
        bottom = self._texts(width)[-1][1].bottom() + now.px(8)
        beside = bool(self._beside(width))
        tall = max(button.sizeHint().height() for button in self._buttons())
        right = width - now.px(10)
        for button in self._buttons():
            hint = button.sizeHint()
            right -= hint.width()
            top = (now.px(HIGH) - hint.height()) // 2 if beside else bottom + (tall - hint.height()) // 2
            button.setGeometry(right, top, hint.width(), hint.height())
        return max(now.px(HIGH), bottom if beside else bottom + tall + now.px(6))

    def help_topic(self) -> str:
        """The page of its rule."""
        return f"remark:{self.remark.rule}"

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Pressed anywhere but on its buttons: its page of the help."""
        event.accept()
        ask_help(self, self.help_topic())

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter opens its page."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            ask_help(self, self.help_topic())
            return
        super().keyPressEvent(event)

    def enterEvent(self, event: QEnterEvent) -> None:  # noqa: N802
        """The preview is made when a hand comes near."""
        super().enterEvent(event)
        self.previewed.emit(self)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Show the ring."""
        super().focusInEvent(event)
        self.previewed.emit(self)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Take the ring away."""
        super().focusOutEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Edge, mark, word, message and why."""
        now = look()
        icon, word, mark = SEVERITIES[self.remark.severity]
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            self._paint_edge(painter, now, mark)
            head = min(self.height(), now.px(HIGH))
            signs.draw(painter, icon, getattr(now.tokens, mark), now.px(16), head / 2, now.px(16))
            place = QRect(now.px(38), 0, now.px(INDENT - 40), head)
            ink.write(painter, now, place, severity_word(self.remark.severity), now.bold, word)
            for index, (text, place, large) in enumerate(self._texts(self.width())):
                tone = "pencil" if index == 1 else "ink"
                ink.paragraph(painter, now, place, text, now.body if large else now.caption, tone)
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), now.px(3)))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _paint_edge(self, painter: QPainter, now: Look, mark: str) -> None:
        """The left edge: solid, two lines, dashed or dotted."""
        colour, high = now.colour(mark), self.height()
        severity = self.remark.severity
        if severity == "hazard":
            painter.fillRect(QRect(0, 1, now.px(6), high), colour)
        elif severity == "scrap":
            painter.fillRect(QRect(0, 1, now.px(2), high), colour)
            painter.fillRect(QRect(now.px(5), 1, now.px(2), high), colour)
        else:
            pen = QPen(colour, now.px(3))
            pen.setDashPattern([2, 1.3] if severity == "rework" else [1, 1])
            painter.setPen(pen)
            painter.drawLine(now.px(2), 1, now.px(2), high)
