"""What hangs on the change: a list beside the job, which goes on being edited; it is
made anew when it is looked at again.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QTimer
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout

from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.made.hanging_rows import HangingRows
from jobsheet.review.hanging import hangs_on

translate = QCoreApplication.translate


class MadeWindow(QDialog):
    """Enter goes to the step in the job's own window; nothing here holds it up."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Made", "What hangs on the change"))
        answer_f1(self)
        self._visit = visit
        self._of = visit.desk.job
        now = look()
        self.said = Label("", self)
        self.rows = HangingRows(self)
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.rows)
        scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.rows.reached.connect(lambda top, high: scroll.ensureVisible(0, top + high // 2, 0, high))
        self.rows.wanted.connect(self._go)
        self.rows.ticked.connect(self._say)
        go = Button(translate("Made", "Go to it"), self, Manner.FILLED)
        go.clicked.connect(lambda: self._go(self.rows.rows[self.rows.at].key) if self.rows.rows else None)
        close = Button(translate("Made", "Close"), self)
        close.clicked.connect(self.reject)
        foot = QHBoxLayout()
        for button in (go, close):
            foot.addWidget(button)
        foot.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        whole.addWidget(self.said)
        whole.addWidget(scroll, 1)
        whole.addLayout(foot)
        self.resize(now.px(720), now.px(480))
        self.said.say(translate("Made", "Looking through the steps…"))
        self.rows.setFocus()
        QTimer.singleShot(0, self._look)  # it takes a moment: the window is there first

    def _look(self) -> None:
        """Find out what hangs on the change now."""
        other = self._visit.desk.made_from
        self._of = self._visit.desk.job
        self.rows.put(hangs_on(other, self._of) if other is not None else ())
        self._say()

    def _say(self) -> None:
        other = self._visit.desk.made_from
        if other is None:
            said = translate(
                "Made",
                "This job was not made from another one since it lies on the desk: File, New part from this one.",
            )
        elif not self.rows.rows:
            said = translate(
                "Made",
                "Nothing is left to be looked at: the review says nothing new, and no typed value hangs on the change.",
            )
        else:
            left = len(self.rows.rows) - len(self.rows.done)
            said = translate("Made", "Made from {part}. {left} of {count} lines are still to be looked at: Enter goes there, the space bar ticks off.").format(
                part=" ".join(word for word in (other.part.number, other.part.name) if word) or translate("Made", "another job"),
                left=left, count=len(self.rows.rows),
            )  # fmt: skip
        self.said.say(said)

    def _go(self, key: str) -> None:
        if key:
            self._visit.show(key)
            self._visit.parent.activateWindow()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Looked at again after an edit, it is made anew."""
        super().changeEvent(event)
        if (
            event.type() == QEvent.Type.ActivationChange
            and self.isActiveWindow()
            and self._visit.desk.job is not self._of
        ):
            self._look()
