"""Closed lines are painted each at its height; the open one paints itself."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QImage, QPainter, QRegion

from jobsheet.gui.column.line import Line, LineWidget
from jobsheet.gui.column.lines_painted import height_at_100, paint_lines
from jobsheet.gui.column.measures import HEADING, ROW, TWO_LINES
from jobsheet.gui.column.standing import Standing
from jobsheet.gui.column.views import HeadingView, RowAsked, RowView
from jobsheet.gui.ink import look


class _Notice(LineWidget):
    def height_at_100(self):
        return 77


def _row(key):
    return RowView(key=key, number=10, icon="op-face", titles=("Face",))


def _heading():
    return Line(HeadingView(key="s", number=1, title="Set-up 1", holding="", zero=""))


@pytest.mark.parametrize(
    ("form", "row", "heading"),
    [("wide", ROW, HEADING), ("medium", ROW, HEADING), ("narrow", TWO_LINES, HEADING + 20)],
)
def test_a_line_is_higher_where_it_is_narrow(qtbot, form, row, heading):
    assert height_at_100(Line(_row("a")), form) == row
    assert height_at_100(_heading(), form) == heading
    notice = _Notice("n", None)
    qtbot.addWidget(notice)
    assert height_at_100(Line(None, notice), form) == 77


def _painted(region, opened=""):
    look.apply("light")
    made = []

    def asked(key):
        return RowAsked(key, lambda: made.append(key) or _row(key))

    standing = Standing()
    standing.lines = [_heading(), Line(asked("a")), Line(asked("b"))]
    standing.place(lambda line: 36 if line.is_heading else 31)
    image = QImage(1000, 98, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff00ff"))
    with QPainter(image) as painter:
        paint_lines(
            painter, standing, QRegion(region), 1000, opened=opened, chosen=frozenset("b"), focused=""
        )
    return image, made


def test_every_line_is_painted_at_its_height_and_the_chosen_one_tinted(qapp):
    image, made = _painted(QRect(0, 0, 1000, 98))
    now = look.look()
    assert made == ["a", "b"]
    assert [image.pixelColor(500, y).name() for y in (3, 40, 70)] == [
        now.colour(one).name() for one in ("paper", "paper", "chosen")
    ]


def test_what_is_outside_or_open_is_neither_painted_nor_put_together(qapp):
    image, made = _painted(QRect(0, 0, 1000, 50), opened="a")
    assert made == []
    assert image.pixelColor(500, 50) == QColor("#ff00ff")
    assert image.pixelColor(500, 3) == look.look().colour("paper")
