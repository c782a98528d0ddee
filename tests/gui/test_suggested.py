"""The recommended cut stands in the open row and is written into it only by a press, like any other edit."""

from PySide6.QtCore import Qt

from jobsheet.edit.commands import SetField, value_of


def typed(window, key, name):
    value = value_of(window.desk.job, key, name)
    return None if value is None else value.text


def opened(window, qtbot, key, **edits):
    for name, text in edits.items():
        window.desk.type(SetField(key, name, text))
    window.open_key(key)
    qtbot.waitUntil(lambda: window.open_row.readings is not None and window.parts.answering.done)
    return window.open_row.suggestions


def test_it_is_shown_with_its_reasons_and_changes_nothing(window, qtbot):
    line = opened(window, qtbot, "drill", feed="0.02")
    job = window.desk.job
    assert not line.isHidden()
    assert all(one.why for one in line.item.reasons)
    assert window.desk.job is job


def test_a_press_writes_it_and_undo_takes_it_back(window, qtbot):
    line = opened(window, qtbot, "drill", feed="0.02")
    edits = dict(line.item.edits)
    assert "feed" in edits
    qtbot.mouseClick(line.use, Qt.MouseButton.LeftButton)
    assert typed(window, "drill", "feed") == edits["feed"]
    assert window.open_row.form.fields["feed"].box.text() == edits["feed"]
    # What is as good as the best is not recommended again.
    qtbot.waitUntil(lambda: window.parts.answering.done and not line.item.words)
    window.desk.history.undo()
    assert typed(window, "drill", "feed") == "0.02"


def test_why_opens_the_reasons(window, qtbot):
    line = opened(window, qtbot, "drill", feed="0.02")
    before = line.arrange(800)
    line.more.click()
    assert line.arrange(800) > before


def test_it_is_never_written_again_by_itself(window, qtbot):
    line = opened(window, qtbot, "drill", feed="0.02")
    text = dict(line.item.edits)["feed"]
    window.desk.type(SetField("drill", "feed", text))
    window.desk.type(SetField("drill", "cutter", "drill 4, drawer 3"))
    assert typed(window, "drill", "feed") == text


def test_nothing_for_a_step_without_a_cutter(window, qtbot):
    window.open_key("clamp")
    qtbot.waitUntil(lambda: not window.later.waiting and window.parts.answering.done)
    assert window.open_row.suggestions.isHidden()
