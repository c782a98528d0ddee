"""Many edits in a row: nothing grows without end, nothing falls over."""

import sys

from jobsheet.edit.commands import SetField


def test_a_long_session(window, qtbot):
    window.open_key("face-rough")
    for round_ in range(300):
        window.desk.type(SetField("face-rough", "depth", f"0.{round_ % 7 + 1}"))
        if round_ % 10 == 0:
            window.desk.history.break_merge()
            window.open_key("drill" if window.opened_key == "face-rough" else "face-rough")
        window.bench.repaint()
    from PySide6.QtWidgets import QApplication, QWidget

    QApplication.processEvents()
    before = len(window.findChildren(QWidget))
    for _ in range(10):
        window.open_key("drill")
        window.open_key("face-rough")
    from PySide6.QtCore import QCoreApplication, QEvent

    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert len(window.findChildren(QWidget)) <= before + 5
    assert sys.getrefcount(None) > 10_000
