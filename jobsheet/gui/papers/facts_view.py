"""What a card means, in the margin beside it: small tables, painted; nothing to press."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.model.facts import Facts

SIDE = 14
HEAD = 26
GAP = 14


class FactsView(QWidget):
    """Facts, one under the other."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._facts: tuple[Facts, ...] = ()
        self.stale = False

    def put(self, facts: tuple[Facts, ...], *, stale: bool) -> None:
        """Show these; stale ones are those of the last card that could be used."""
        self._facts, self.stale = facts, stale
        self.setAccessibleDescription(
            "\n".join(f"{fact.title}: " + "; ".join(", ".join(row) for row in fact.rows) for fact in facts)
        )
        self.arrange(self.width())
        self.update()

    def arrange(self, width: int) -> int:
        """Take the height that this width needs."""
        high = self._draw(None, width)
        self.resize(width, high)
        return high

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Everything."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            self._draw(painter, self.width())

    def _draw(self, painter: QPainter | None, width: int) -> int:
        """Paint, or only measure; the height."""
        now = look()
        side, top = now.px(SIDE), now.px(8)
        inside = width - 2 * side
        for facts in self._facts:
            if painter:
                ink.write(painter, now, QRect(side, top, inside, now.px(HEAD)), facts.title, now.bold)
                ink.horizontal(painter, now.colour("ink"), side, width - side, top + now.px(HEAD) - 2)
            top += now.px(HEAD) + now.px(2)
            columns = self._columns(facts, inside)
            if facts.heads:
                top += self._row(painter, facts.heads, columns, QRect(side, top, inside, 0), head=True)
            for row in facts.rows:
                top += self._row(painter, row, columns, QRect(side, top, inside, 0), head=False)
            if facts.note:
                top += self._words(painter, facts.note, side, top, inside, head=True)
            top += now.px(GAP)
        return top

    @staticmethod
    def _columns(facts: Facts, width: int) -> list[int]:
        """The widths of the columns, sharing what is left; none where they do not fit side by side."""
        now = look()
        rows = [(row, now.body) for row in facts.rows]
        if facts.heads:
            rows.append((facts.heads, now.caption))
        count = max((len(row) for row, _ in rows), default=0)
        wide = [
            max((now.width(row[index], font) for row, font in rows if index < len(row)), default=0)
            for index in range(count)
        ]
        spare = width - sum(wide) - now.px(10) * (count - 1)
        if spare < 0 or not count:
            return []
        return [one + now.px(10) + spare // count for one in wide]

    def _row(
        self, painter: QPainter | None, row: tuple[str, ...], columns: list[int], place: QRect, *, head: bool
    ) -> int:
        """One row: in columns where all fit, else one text under the other; its height."""
        now = look()
        font = now.caption if head else now.body
        left, top, width = place.left(), place.top(), place.width()
        if columns:
            tone = "pencil" if head or self.stale else "ink"
            right = left
            for index, text in enumerate(row):
                start = right
                right = left + width if index == len(columns) - 1 else right + columns[index]
                if painter:
                    align = ink.LEFT if index == 0 else ink.RIGHT
                    ink.write(
                        painter, now, QRect(start, top, right - start, now.px(20)), text, font, tone, align
                    )
            return now.px(20)
        high = 0
        for index, text in enumerate(row):
            high += self._words(painter, text, left, top + high, width, head=head or index > 0)
        return high + now.px(4)

    def _words(
        self, painter: QPainter | None, text: str, left: int, top: int, width: int, *, head: bool
    ) -> int:
        """A wrapped text; its height."""
        now = look()
        font = now.caption if head else now.body
        high = ink.paragraph_height(now, text, font, width)
        if painter and text:
            ink.paragraph(
                painter,
                now,
                QRect(left, top, width, high + 2),
                text,
                font,
                "pencil" if head or self.stale else "ink",
            )
        return high + now.px(2) if text else 0
