"""The figures as a worked calculation: formula, numbers put in, result, source."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.page_link import PageLink
from jobsheet.gui.forms.plain_widgets import Label, PaintedText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.model.figure import Figures

translate = QCoreApplication.translate


class WorkingView(PaintedText):
    """All steps of one operation, one under the other; its texts can be selected and copied."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)
        self.setAccessibleName(translate("Working", "Working of the figures"))
        self._shown: Figures | None = None
        self._labels: list[Label] = []

    def put(self, figures: Figures | None) -> None:
        """Show how the figures came about."""
        if figures is self._shown:
            return
        self._shown = figures
        for label in self._labels:
            label.deleteLater()
        self._labels = []
        if figures is None:
            return
        for caveat in figures.caveats:
            self._add(caveat, "verm")
        from jobsheet.report.working_page import worked

        for step in figures.working:
            done = worked(step)
            self._add(done.title, "ink", bold=True, topic=f"formula:{step.formula}")
            numbers = translate("Working", "{numbers}; so {result}").format(
                numbers=done.numbers, result=done.result
            )
            source = translate("Working", "Source: {source}").format(source=done.source)
            for text, tone in ((done.expression, "ink"), (numbers, "pencil"), (source, "pencil")):
                if text:
                    self._add(text, tone)

    def _add(self, text: str, token: str, *, bold: bool = False, topic: str = "") -> None:
        """One text, wrapped; a formula's title leads to its page."""
        now = look()
        label = PageLink(text, topic, self) if topic else Label(text, self)
        label.setFont(now.caption_bold if bold else now.caption)
        if not topic:
            label.setTextInteractionFlags(QtCore.Qt.TextInteractionFlag.TextSelectableByMouse)
        made = label.palette()
        made.setColor(label.foregroundRole(), now.colour(token))
        label.setPalette(made)
        label.setAccessibleName(text)
        label.show()
        self._labels.append(label)

    def arrange(self, width: int) -> int:
        """Place the texts; the height they need."""
        now, top = look(), look().px(6)
        for label in self._labels:
            if label.font().bold() and top > now.px(6):
                top += now.px(6)
            high = max(label.heightForWidth(width), now.px(16))
            label.setGeometry(0, top, width, high)
            top += high
        return top + now.px(8)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """A line above."""
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            del painter
        if not self._labels:
            with QPainter(self) as painter:
                text = translate("Working", "Nothing is calculated for this step.")
                ink.write(painter, now, QRect(0, 0, self.width(), now.px(24)), text, now.caption, "pencil")
