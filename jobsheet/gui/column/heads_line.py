"""The heads of the columns, above all rows."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.measures import columns
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate


class HeadsLine(QWidget):
    """The heads of the columns, above all rows; they do not scroll."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions in pencil and one ink line under them."""
        now = look()
        at = columns(now, self.width())
        high = self.height()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            font, pencil = now.caption, "pencil"
            step = QRect(0, 0, at.number_right, high - 2)
            ink.write(painter, now, step, translate("Rows", "step"), font, pencil, ink.RIGHT)
            ink.write(
                painter, now, QRect(at.text, 0, now.px(80), high - 2), translate("Rows", "do"), font, pencil
            )
            if at.cutter:
                place = QRect(at.cutter, 0, at.margin - at.cutter, high - 2)
                ink.write(painter, now, place, translate("Rows", "cutter and place"), font, pencil)
            if at.form != "narrow":
                ink.upright(painter, now.colour("ink"), at.margin, 0, high)
                wide = at.form == "wide"
                rpm = translate("Rows", "spindle rpm") if wide else translate("Rows", "rpm")
                for right, text in (
                    (at.rpm_right, rpm),
                    (at.pace_right, translate("Rows", "pace")),
                    (at.depth_right, translate("Rows", "depth")),
                ):
                    place = QRect(right - now.px(96), 0, now.px(96), high - 2)
                    ink.write(painter, now, place, text, font, pencil, ink.RIGHT)
                share = (
                    translate("Rows", "share of capacity, and what governs")
                    if wide
                    else translate("Rows", "share, and what governs")
                )
            else:
                share = translate("Rows", "share")
            place = QRect(at.mark, 0, self.width() - at.mark, high - 2)
            ink.write(painter, now, place, share, font, pencil)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), high - 2, 2)
