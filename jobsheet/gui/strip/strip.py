"""The stage strip: fixed views of the work after each step, the one of the open row wider."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.ink.look import look
from jobsheet.gui.strip.stage_blocks import Stage
from jobsheet.gui.strip.stage_cell import CURRENT, Spots, StageCell

CELL = 120
#: Drawings before and after the current one where it is narrow.
BESIDE = 2

translate = QCoreApplication.translate


class Strip(QWidget):
    """The drawings side by side; as many as fit, the current one always among them."""

    pressed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Strip", "The work after each step"))
        self._cells: list[StageCell] = []
        self._stages: list[Stage] = []
        self._current = ""
        self._drawings: dict[str, Drawing] = {}
        self.spots: Spots = ()
        #: The place of the open step whose row the cursor is in, from nought; less for none.
        self.marked = -1
        #: How often the large one has changed.
        self.turn = 0
        #: The large drawing shows the work `after` its step, `before` it, or the `stock`.
        self.moment = "after"

    def put(self, stages: list[Stage], current: str) -> None:
        """Show these stages; `current` is the key of the open or chosen row."""
        if self._current != current:
            # What was large is small now, and the other way round: both are drawn anew.
            self.turn += 1
            for key in (self._current, current):
                self._drawings.pop(key, None)
            self.marked = -1
        self._stages, self._current = stages, current
        self._arrange()

    def draw(self, drawings: dict[str, Drawing], spots: Spots | None = None) -> None:
        """Show these drawings, by the key of their stage; the empty key is the stock.
        `spots` are features of the large one.
        """
        # What is not answered yet keeps its last drawing: nothing flickers between sketch and picture.
        self._drawings = {**self._drawings, **drawings}
        if spots is not None:
            self.spots = spots
        self._arrange()

    def mark(self, place: int) -> None:
        """Show one place of the open step in blue."""
        self.marked = place
        for cell in self._cells:
            cell.mark(place if cell.current else -1, self.spots)

    def shown(self) -> tuple[str, ...]:
        """The keys of the stages that fit, in their order."""
        return tuple(cell.stage.key for cell in self._cells if not cell.isHidden() and cell.stage is not None)

    @property
    def current(self) -> str:
        """The key of the large one."""
        return self._current

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Choose again which fit."""
        self._arrange()

    def _window(self, count: int) -> tuple[int, int]:
        """Which stages are shown: a run of so many around the current one."""
        total = len(self._stages)
        place = next((i for i, stage in enumerate(self._stages) if stage.key == self._current), 0)
        first = min(max(0, place - count // 2), max(0, total - count))
        return first, min(total, first + count)

    def _arrange(self) -> None:
        """Place the cells that fit."""
        now = look()
        form = now.form(self.width() + now.px(18))
        fit = max(1, int((self.width() / now.px(CELL)) - CURRENT + 1))
        if form != "wide":
            fit = min(fit, 2 * BESIDE + 1)
        first, last = self._window(fit)
        shown = self._stages[first:last]
        while len(self._cells) < len(shown):
            cell = StageCell(self)
            cell.clicked.connect(self._clicked)
            self._cells.append(cell)
        weights = [CURRENT if stage.key == self._current else 1.0 for stage in shown]
        total = sum(weights)
        one = min(self.width() / total if total else 0, now.px(CELL * 2))
        left = 0.0
        for index, cell in enumerate(self._cells):
            cell.setVisible(index < len(shown))
            if index < len(shown):
                wide = one * weights[index]
                cell.setGeometry(round(left), 1, round(left + wide) - round(left), self.height() - 2)
                cell.moment = self.moment
                cell.put(shown[index], current=shown[index].key == self._current)
                cell.draw(self._drawings.get(shown[index].key))
                left += wide
        self.mark(self.marked)

    def _clicked(self) -> None:
        """Tell which drawing was pressed."""
        cell = self.sender()
        if isinstance(cell, StageCell) and cell.stage is not None and cell.stage.key:
            self.pressed.emit(cell.feature_at(self.spots) or cell.stage.key)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper with a hairline round it."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            painter.setPen(now.colour("rule"))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
