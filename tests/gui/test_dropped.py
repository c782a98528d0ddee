"""A file that is let fall on the window is opened once the hand is free; anything else goes its way."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.gui.window.dropped import DroppedFiles, dropped_file


def _held(*urls):
    data = QMimeData()
    data.setUrls([QUrl(one) for one in urls])
    return data


def _drop(data):
    copy, left, none = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    return QDropEvent(QPointF(5, 6), copy, data, left, none)


def _enter(data):
    copy, left, none = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    return QDragEnterEvent(QPoint(5, 6), copy, data, left, none)


@pytest.mark.parametrize(
    ("urls", "path"),
    [
        (("file:///jobs/a.yaml",), "/jobs/a.yaml"),
        (("file:///jobs/a%20b.yaml",), "/jobs/a b.yaml"),
        ((), None),
        (("file:///a.yaml", "file:///b.yaml"), None),
        (("https://example.org/a.yaml",), None),
    ],
)
def test_one_file_of_this_computer_and_nothing_else(qapp, urls, path):
    data = _held(*urls)
    found = dropped_file(_drop(data))
    assert (found.as_posix() if found is not None else None) == path


def test_it_is_opened_when_the_hand_is_free_and_once(qtbot):
    window, opened = QWidget(), []
    qtbot.addWidget(window)
    watching = DroppedFiles(window, lambda path, at: opened.append((path.as_posix(), at)))
    assert window.acceptDrops()
    data = _held("file:///jobs/a.yaml")
    assert watching.eventFilter(window, _enter(data))
    assert watching.eventFilter(window, _drop(data))
    assert opened == [], "the other program still holds the file"
    qtbot.waitUntil(lambda: bool(opened))
    QApplication.processEvents()
    assert opened == [("/jobs/a.yaml", window.mapToGlobal(QPoint(5, 6)))]


def test_what_is_held_over_it_and_cannot_be_opened_is_not_taken(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    watching = DroppedFiles(window, lambda *_: None)
    assert not watching.eventFilter(window, _drop(_held()))
