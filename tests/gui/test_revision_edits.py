"""A new revision of the plan, from the menu: what changed since it was saved is
proposed and may be typed over.
"""

from __future__ import annotations

import shutil

from PySide6.QtCore import QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QLineEdit

from jobsheet.edit.commands import SetField


def answer(texts, *, agree=True):
    """What is typed into the box that opens, key by key."""

    def typed():
        box = QApplication.activeModalWidget()
        seen.append([line.text() for line in box.findChildren(QLineEdit)])
        for at, (line, text) in enumerate(zip(box.findChildren(QLineEdit), texts, strict=True)):
            if text is not None:
                if at:  # the first has the focus, and what is proposed in it is chosen: a hand types over it at once
                    line.setFocus()
                    line.selectAll()
                QTest.keyClicks(line, text)
        button = QDialogButtonBox.StandardButton.Ok if agree else QDialogButtonBox.StandardButton.Cancel
        box.findChild(QDialogButtonBox).button(button).click()

    seen = []
    QTimer.singleShot(0, typed)
    return seen


def test_what_changed_is_proposed_typed_over_and_undone(show, samples, tmp_path):
    path = shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", tmp_path / "plate.yaml")
    window = show(str(path))
    desk = window.desk
    key = next(step.key for _, step in desk.job.operations() if step.number == 20)
    desk.do(SetField(key, "depth", "0.5 mm"))
    seen = answer([None, "Apprentice B"])
    window.actions_by_id["revision"].trigger()
    assert seen == [["step 20, depth: 0.4 → 0.5 mm", "Trainer"]]
    (one,) = desk.job.revisions
    assert (one.number, one.changed, one.who) == (1, "step 20, depth: 0.4 → 0.5 mm", "Apprentice B")
    answer(["clamped lower", None])
    window.actions_by_id["revision"].trigger()
    assert [(each.number, each.changed, each.who) for each in desk.job.revisions][1] == (
        2,
        "clamped lower",
        "Apprentice B",
    )
    window.actions_by_id["undo"].trigger()
    assert len(desk.job.revisions) == 1


def test_called_off_or_empty_nothing_is_written(show, samples, tmp_path):
    path = shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", tmp_path / "plate.yaml")
    window = show(str(path))
    answer(["something", None], agree=False)
    window.actions_by_id["revision"].trigger()
    assert window.desk.job.revisions == ()
    answer([" ", None])
    window.actions_by_id["revision"].trigger()
    assert window.desk.job.revisions == ()
