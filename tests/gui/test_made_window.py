"""A new part from the one on the desk: four lines, its steps come along, and what hangs on the
change is listed and ticked off by key.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.places.made.made_window import MadeWindow


def type_over(field, text):
    field.box.setFocus()
    field.box.selectAll()
    QTest.keyClicks(field.box, text)


def listed(window, wait):
    place = next(one for one in window.findChildren(MadeWindow) if one.isVisible())
    wait(lambda: bool(place.rows.rows))
    return place


def test_a_part_is_made_from_another_by_key(window, qtbot):
    window.actions_by_id["make-from"].trigger()
    panel = window.parts.panels.open
    fields = panel.form.fields
    type_over(fields["part"], "HM-9 Other plate")
    type_over(fields["material"], "304")
    QTest.keyClick(panel.begin, Qt.Key.Key_Space)
    place = listed(window, qtbot.waitUntil)
    job = window.desk.job
    assert (job.part.number, job.part.name, job.material) == ("HM-9", "Other plate", "304")
    assert window.desk.path is None
    assert [one.number for _, one in job.operations()] == [10, 20, 30, 40, 50, 60, 70, 80]
    assert "Made from HM-100 Drilled plate." in place.said.text()
    count = len(place.rows.rows)
    QTest.keyClick(place.rows, Qt.Key.Key_Space)
    assert len(place.rows.done) == 1
    assert f"{count - 1} of {count} lines" in place.said.text()
    at = next(index for index, one in enumerate(place.rows.rows) if one.number == 60)
    for _ in range(at - place.rows.at):
        QTest.keyClick(place.rows, Qt.Key.Key_Down)
    assert "step 60" in place.rows.accessibleDescription()
    QTest.keyClick(place.rows, Qt.Key.Key_Return)
    QApplication.processEvents()
    assert window.parts.hand.key == "drill"
    place.close()


def test_left_with_esc_the_job_stays(window):
    before = window.desk.job
    window.actions_by_id["make-from"].trigger()
    QTest.keyClick(window.parts.panels.open, Qt.Key.Key_Escape)
    assert window.desk.job is before
    assert window.desk.made_from is None


def test_stock_that_cannot_be_read_holds_it_up(window):
    window.actions_by_id["make-from"].trigger()
    panel = window.parts.panels.open
    type_over(panel.form.fields["stock"], "80 x 50")
    QTest.keyClick(panel.begin, Qt.Key.Key_Space)
    assert window.desk.job.part.number == "HM-100"
    assert window.parts.panels.open is panel
    QTest.keyClick(panel, Qt.Key.Key_Escape)
