"""Suggestions are shown in the open row and written into it only by a press, like any other edit."""

from PySide6.QtCore import Qt

from jobsheet.edit.commands import SetField, value_of
from jobsheet.paths import sample_jobs

SLIDE = str(sample_jobs() / "hm-102-slide-plate.yaml")


def typed(window, key, name):
    value = value_of(window.desk.job, key, name)
    return None if value is None else value.text


def opened(window, key):
    window.open_key(key)
    return window.open_row.suggestions


def test_a_suggestion_is_shown_with_its_reason_and_changes_nothing(window):
    job = window.desk.job
    line = opened(window, "drill")
    assert not line.isHidden()
    assert all(item.why and item.source for item in line.items)
    assert window.desk.job is job


def test_a_press_writes_it_and_undo_takes_it_back(window, qtbot):
    line = opened(window, "drill")
    item = next(item for item in line.items if item.name == "feed")
    before = typed(window, "drill", "feed")
    line.more.click()
    button = line.buttons[line.items.index(item)]
    assert not button.isHidden()
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert typed(window, "drill", "feed") == item.text
    assert window.open_row.form.fields["feed"].box.text() == item.text
    # What stands in the field is not suggested again.
    assert all(other.name != "feed" for other in window.open_row.suggestions.items)
    window.desk.history.undo()
    assert typed(window, "drill", "feed") == before


def test_it_is_never_written_again_by_itself(window):
    line = opened(window, "drill")
    item = next(item for item in line.items if item.name == "feed")
    window.desk.type(SetField("drill", "feed", item.text))
    window.desk.type(SetField("drill", "cutter", "drill 4, drawer 3"))
    assert typed(window, "drill", "feed") == item.text


def test_no_feed_a_tooth_is_offered_beside_a_table_feed(show):
    window = show(SLIDE)
    line = opened(window, "slot")
    assert "layer" in {item.name for item in line.items}
    assert "feed_per_tooth" not in {item.name for item in line.items}


def test_nothing_for_a_step_without_a_cutter(window):
    assert opened(window, "clamp").isHidden()
