"""The work as it would stand after what is placed so far: drawn when the hand
rests, and nothing is judged by it.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication, QRect, QTimer
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.lessons.work_so_far import placed_so_far
from jobsheet.model.job import Job
from jobsheet.model.not_checked import alone

translate = QCoreApplication.translate
#: The hand has rested after so long [ms]: a step more is a solid more.
REST = 250
WIDE, PAD, HEAD = 280, 12, 30


class WorkShown(QWidget):
    """One picture with its words."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedWidth(look().px(WIDE))
        self.said = ""
        self.drawing: Drawing | None = None
        self._asked: tuple[Job, str, tuple[str, ...]] | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self.draw)

    def ask(self, job: Job, set_up: str, placed: Sequence[str]) -> None:
        """Show the work after these steps, once the hand rests."""
        asked = (job, set_up, tuple(placed))
        if asked != self._asked:
            self._asked = asked
            self._rest.start()

    def draw(self) -> None:
        """Work it out; where it cannot be done the sentence stands in the place of the picture."""
        if self._asked is None:
            return
        job, set_up, placed = self._asked
        self.said = translate("Lesson", "The work as it comes")
        if placed:
            self.said = translate("Lesson", "After the steps placed so far: {count}").format(
                count=len(placed)
            )
        found = alone(lambda: self._drawn(placed_so_far(job, set_up, placed)), str)
        self.drawing = None if isinstance(found, str) else found
        if isinstance(found, str):
            self.said = translate("Lesson", "In this order it cannot be drawn: {why}").format(why=found)
        self.setAccessibleName(self.said)
        self.update()

    def _drawn(self, job: Job) -> Drawing | str:
        from jobsheet.reckoning.reckoner import Reckoner
        from jobsheet.report.stage_view import stages_of
        from jobsheet.stages.pictures import picture

        reckoned = Reckoner().reckon(job)
        stages = stages_of(reckoned.job, reckoned.settings)
        factor = SCALE * look().scale
        wide = (self.width() - 2 * look().px(PAD)) / factor
        return picture(stages[-1], "iso", wide, wide * 0.9, hidden=False, now=False, margin=(12, 12, 12, 12))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Words, and the picture under them."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            box = QRect(now.px(PAD), now.px(8), self.width() - 2 * now.px(PAD), self.height())
            high = ink.paragraph(painter, now, box, self.said, now.bold)
            if self.drawing is not None:
                paint(painter, now, self.drawing, now.px(PAD), max(now.px(HEAD), high + now.px(16)))
