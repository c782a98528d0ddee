"""A new job from four lines, the last jobs, and what is known of a job's file: other windows,
other programs, what stood before.
"""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication, QMenu

from jobsheet.gui.choosing.insert_row import InsertRow
from jobsheet.gui.desk.opening import SAMPLE, open_at_start
from jobsheet.gui.edits.new_job import FourLines
from jobsheet.gui.forms import ask
from jobsheet.storage.job_file import blank_job, read_job
from jobsheet.storage.job_writing import save_job, write_job
from jobsheet.storage.kept.recent import NAME, recent


def press(qtbot, key):
    qtbot.keyClick(QApplication.focusWidget(), key)


def typed(qtbot, text):
    for letter in text:
        qtbot.keyClicks(QApplication.focusWidget(), letter)
        QApplication.processEvents()


@pytest.fixture
def asked(window):
    """The panel of a new job."""
    window.actions_by_id["new"].trigger()
    return window.parts.panels.open


@pytest.fixture
def saved(window, tmp_path, monkeypatch):
    path = tmp_path / "plate.yaml"
    monkeypatch.setattr(ask, "save_path", lambda *_: path)
    assert window.parts.files.save()
    return path


def notice(window):
    return window.bench.column.ruled.notice_line


# --- four lines ---


def test_four_lines_by_keys_and_the_first_step_is_asked_for(window, asked, qtbot):
    assert list(asked.form.fields) == ["part", "material", "stock", "machine"]
    assert asked.form.fields["part"].box.hasFocus()
    typed(qtbot, "HM-200 Bearing block")
    press(qtbot, Qt.Key.Key_Return)
    typed(qtbot, "aisi 304")
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    press(qtbot, Qt.Key.Key_Return)
    typed(qtbot, "80 x 50 x 12,5")
    press(qtbot, Qt.Key.Key_Return)
    typed(qtbot, "knee")
    press(qtbot, Qt.Key.Key_Return)
    press(qtbot, Qt.Key.Key_Return)
    assert asked.begin.hasFocus()
    press(qtbot, Qt.Key.Key_Return)
    job = window.desk.job
    assert (job.part.number, job.part.name) == ("HM-200", "Bearing block")
    assert (job.material, job.machine) == ("304", "knee-mill-k-2")
    assert [job.stock.length.value, job.stock.width.value, job.stock.height.value] == [0.08, 0.05, 0.0125]
    row = window.bench.column.ruled.guest
    assert isinstance(row, InsertRow)
    assert row.line.hasFocus()
    assert row.asked.place == "first step of set-up 1"
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.operations()[0][1].kind == "face"


def test_by_the_mouse_alone_a_list_takes_too(window, asked, qtbot):
    asked.form.fields["stock"].box.setFocus()
    typed(qtbot, "80x50x12")
    field = asked.form.fields["machine"]
    at = field.rect().topRight()
    at.setX(at.x() - 8)
    at.setY(field.box.geometry().center().y())
    qtbot.mouseClick(field, Qt.MouseButton.LeftButton, pos=at)
    from jobsheet.gui.choosing.under_list import UnderList

    (under,) = [one for one in window.findChildren(UnderList) if one.isVisible()]
    row = next(row for row in under.list.rows if row.listed.key == "bench-mill-b-2")
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(asked.begin, Qt.MouseButton.LeftButton)
    assert window.desk.job.machine == "bench-mill-b-2"


def test_what_lacks_is_said_at_its_line_and_nothing_begins(window, asked, qtbot):
    before = window.desk.job
    qtbot.mouseClick(asked.begin, Qt.MouseButton.LeftButton)
    field = asked.form.fields["stock"]
    assert window.desk.job is before
    assert field.box.hasFocus()
    assert str(field.problem).startswith("Stock is empty; write length")


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("80 x 50", "three sizes"),
        ("80 x fifty x 3", "fifty"),
        ("0 x 10 x 10", "at least"),
        ("1e9 x 2 x 3", ""),
    ],
)
def test_a_stock_that_cannot_be_read_is_refused_in_a_sentence(text, part):
    lines = FourLines(blank_job("bench-mill-b-1"))
    lines.type("stock", text)
    problem = lines.shown(asked=True)["stock"].problem
    assert problem is not None
    assert part in str(problem)
    assert lines.problem == "stock"


def test_a_unit_behind_the_last_size_holds_for_all():
    lines = FourLines(blank_job("bench-mill-b-1"))
    lines.type("stock", "3 x 2 x 1/2 in")
    sizes = lines.job().stock
    assert [sizes.length.value, sizes.width.value, sizes.height.value] == pytest.approx(
        [0.0762, 0.0508, 0.0127]
    )


def test_escape_leaves_the_job_on_the_desk_and_what_lies_there_may_be_kept(window, asked, qtbot, monkeypatch):
    before = write_job(window.desk.job)
    typed(qtbot, "HM-201")
    press(qtbot, Qt.Key.Key_Escape)
    assert window.parts.panels.shown is None
    assert write_job(window.desk.job) == before
    window.parts.edits.steps.add("drill")
    monkeypatch.setattr(ask, "save_changes", lambda *_: "cancel")
    mine = window.desk.job
    window.actions_by_id["new"].trigger()
    panel = window.parts.panels.open
    panel.form.fields["stock"].box.setFocus()
    typed(qtbot, "80x50x12")
    qtbot.mouseClick(panel.begin, Qt.MouseButton.LeftButton)
    assert window.desk.job is mine
    assert panel.isVisible()


def test_what_was_typed_is_kept_from_the_beginning(window, asked, qtbot, monkeypatch):
    from jobsheet.gui.desk import journal

    asked.form.fields["stock"].box.setFocus()
    typed(qtbot, "80x50x33")
    qtbot.mouseClick(asked.begin, Qt.MouseButton.LeftButton)
    (kept,) = journal.folder().glob("*.json")
    assert "height: 33" in kept.read_text(encoding="utf-8").replace("\\n", "\n").replace('"33"', "33")
    questions = []
    monkeypatch.setattr(ask, "save_changes", lambda _window, name: questions.append(name) or "cancel")
    assert not window.parts.files.may_put_away()
    assert questions == ["New job"]


# --- the last jobs ---


def test_the_first_start_shows_a_sample_and_the_next_one_the_last_job(window, saved):
    assert [one.path for one in recent()] == [str(saved)]
    opened = open_at_start(None)
    assert opened.path == saved
    assert opened.job == window.desk.job


def test_without_any_it_is_the_sample_and_a_job_that_is_gone_is_passed_over(window, saved, home):
    saved.unlink()
    assert open_at_start(None).sample == SAMPLE
    (home / NAME).write_text("{", encoding="utf-8")
    assert recent() == ()
    assert open_at_start(None).sample == SAMPLE


def test_the_menu_lists_them_newest_first_and_opens_them(window, saved, tmp_path):
    other = tmp_path / "other.yaml"
    save_job(window.desk.job, other)
    assert window.parts.files.open_path(other)
    menu = QMenu()
    window.fill_menu("[recent]", menu)
    assert ["other.yaml" in menu.actions()[0].text(), "plate.yaml" in menu.actions()[1].text()] == [
        True,
        True,
    ]
    menu.actions()[1].trigger()
    assert window.desk.path == saved
    other.unlink()
    window.fill_menu("[recent]", menu)
    gone = next(action for action in menu.actions() if "other.yaml" in action.text())
    assert not gone.isEnabled()
    assert "not there now" in gone.text()


def test_an_empty_job_offers_them_too(window, saved, qtbot, monkeypatch):
    monkeypatch.setattr(ask, "save_changes", lambda *_: "throw away")
    window.parts.files.begin(blank_job("bench-mill-b-1"))
    press(qtbot, Qt.Key.Key_Escape)
    empty = window.bench.column.ruled.lines[-1].widget
    assert [link.text() for link in empty.recents] == ["HM-100 Drilled plate"]
    qtbot.mouseClick(empty.recents[0], Qt.MouseButton.LeftButton)
    assert window.desk.path == saved


# --- the file ---


def test_two_windows_on_one_job_say_so(window, saved, show):
    assert notice(window) is None
    second = show(str(saved))
    assert "open in another window too" in notice(second).text
    notice(second).buttons[0].click()
    assert notice(second) is None


def test_a_window_that_was_closed_holds_nothing(window, saved, show):
    assert window.close()
    assert notice(show(str(saved))) is None


def test_what_something_else_changed_is_said_when_the_window_comes_to_the_front(window, saved):
    theirs = saved.read_text(encoding="utf-8").replace("Drilled plate", "Other plate")
    saved.write_text(theirs, encoding="utf-8")
    QApplication.sendEvent(window, QEvent(QEvent.Type.WindowActivate))
    line = notice(window)
    assert "plate.yaml was changed by something else" in line.text
    line.buttons[0].click()
    assert window.desk.job.part.name == "Other plate"
    QApplication.sendEvent(window, QEvent(QEvent.Type.WindowActivate))
    assert notice(window) is None


def test_what_stood_there_before_is_kept_beside_it_and_said(window, saved, type_in):
    first = saved.read_bytes()
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    assert window.parts.files.save()
    before = saved.with_name("plate.yaml.before")
    assert before.read_bytes() == first
    assert "what stood there before is plate.yaml.before beside it" in window.bench.status.message
    assert window.parts.files.save()
    assert before.read_bytes() == first
    assert read_job(saved) == window.desk.job


def test_where_nothing_can_be_kept_the_job_is_saved_all_the_same(window, saved, type_in):
    saved.with_name("plate.yaml.before").mkdir()
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    assert window.parts.files.save()
    assert read_job(saved) == window.desk.job


def test_every_control_has_a_name(asked):
    from PySide6.QtWidgets import QWidget

    for one in asked.findChildren(QWidget):
        if one.isVisible():
            assert one.accessibleName(), one


def test_a_new_job_has_no_minutes_before_its_first_step(window, asked, qtbot):
    """Nothing is held and nothing is cut yet: fifteen minutes of setting up would be invented."""
    asked.form.fields["stock"].box.setFocus()
    typed(qtbot, "80x50x12")
    qtbot.mouseClick(asked.begin, Qt.MouseButton.LeftButton)
    time = window.bench.title.cells["time"]
    assert window.desk.job.operations() == []
    assert time.shown.value == "no steps yet"
    press(qtbot, Qt.Key.Key_Return)
    assert len(window.desk.job.operations()) == 1
    qtbot.waitUntil(lambda: time.shown.value.endswith(" cutting"))
