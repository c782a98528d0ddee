"""*Square all six faces*, typed key by key: sizes that do not fit are said in the box,
and one undo takes all of it back.
"""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.edits.squaring_edit import SquaringBox
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_writing import write_job


@pytest.fixture
def block(show):
    return show(str(sample_jobs() / "hm-101-setting-block.yaml"))


def asked(window):
    window.actions_by_id["square"].trigger()
    box = window.findChild(SquaringBox)
    box.activateWindow()
    QApplication.processEvents()
    assert QApplication.focusWidget() is box.lines["length"]
    return box


def type_sizes(*texts):
    for text in texts:
        QTest.keyClicks(QApplication.focusWidget(), text)
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)


def test_sizes_are_typed_and_one_undo_takes_it_back(block, qtbot):
    before = write_job(block.desk.job)
    box = asked(block)
    type_sizes("60 ±0.05", "40", "25")
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: not box.isVisible())
    job = block.desk.job
    assert [one.up for one in job.set_ups[:6]] == ["top", "front", "rear", "bottom", "left", "right"]
    assert block.bench.column.ruled.chosen_key == job.set_ups[0].key
    assert "general limits ISO 2768-1 m for width, height" in block.bench.status.message
    assert block.actions_by_id["undo"].text() == "&Undo: square all six faces"
    block.actions_by_id["undo"].trigger()
    assert write_job(block.desk.job) == before
    assert block.bench.status.message == "Undone: square all six faces."


def test_what_does_not_fit_is_said_in_the_box_and_what_was_typed_stays(block):
    before = block.desk.job
    box = asked(block)
    type_sizes("70", "40", "25")
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert box.isVisible()
    assert "The finished length is 70 and the stock has 64" in box.problem.text()
    assert QApplication.focusWidget() is box.lines["length"]
    assert box.lines["width"].text() == "40"
    QTest.keyClick(box, Qt.Key.Key_Escape)
    assert block.desk.job is before


def test_every_line_of_the_box_has_its_name(block):
    box = asked(block)
    names = [line.accessibleName() for line in box.lines.values()]
    assert names == ["Finished length", "Finished width", "Finished height", "Cutter for the faces"]
    assert box.lines["width"].accessibleDescription() == "stock 45"
    box.reject()
