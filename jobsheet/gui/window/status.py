"""The status line: what the marks mean, what goes to the next remark, and what was just done, also spoken."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, QTimer
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.help_asked import ask_help
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.ink.tokens import VERDICTS

HIGH = 26
#: How long a message stays [ms].
STAYS = 8000

translate = QCoreApplication.translate


class StatusLine(QWidget):
    """One line at the foot of the window."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.message = ""
        #: Where the marks of the legend stand.
        self._marks: list[tuple[str, QRect]] = []
        self._fade = QTimer(self)
        self._fade.setSingleShot(True)
        self._fade.timeout.connect(lambda: self.say(""))
        self._name()

    def _name(self) -> None:
        """What a screen reader reads here."""
        self.setAccessibleName(self.message or translate("Status", "Status line"))

    def say(self, message: str) -> None:
        """Show a message for a while and have it read out."""
        self.message = message
        self._name()
        self.update()
        if message:
            self._fade.start(STAYS)
            from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, message))

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A mark of the legend is pressed: what its word means."""
        for verdict, place in self._marks:
            if place.contains(event.position().toPoint()):
                ask_help(self, f"verdict:{verdict}")

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The message, or the legend; at the right the hint and the foot."""
        now = look()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("bench"))
            side = now.px(14)
            high = self.height()
            left = side
            self._marks = []
            if self.message:
                place = QRect(left, 0, self.width() - 2 * side, high)
                left += ink.write(painter, now, place, self.message, now.label)
            else:
                for verdict, (icon, _, mark) in VERDICTS.items():
                    signs.draw(painter, icon, getattr(now.tokens, mark), left, high / 2, now.px(14))
                    place = QRect(left + now.px(20), 0, self.width(), high)
                    begun = left
                    left += now.px(42) + ink.write(
                        painter, now, place, verdict_word(verdict), now.label, "pencil"
                    )
                    self._marks.append((verdict, QRect(begun, 0, left - begun, high)))
            hint = translate("Status", "Ctrl + Down: next remark or problem")
            foot = translate("Status", "Computed for planning. Start lighter; watch, listen and feel.")
            right = self.width() - side
            for text in (foot, hint):
                wide = now.width(text, now.label)
                if right - wide < left + now.px(20):
                    break
                place = QRect(right - wide, 0, wide, high)
                ink.write(painter, now, place, text, now.label, "pencil")
                right -= wide + now.px(24)
