"""The lines of the finished part, at the keyboard alone: typed, told back, moved, struck,
taken back, and never written over.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication

from jobsheet.edit.finished_lines import OWNER
from jobsheet.paths import sample_jobs

#: Five drawings of our own, a line a feature.
DRAWINGS = (
    ("80 ±0.1 x 50 x 30; A square to B 0.03", ("4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35", "edges broken 0.3")),
    ("100 x 60 x 12", ("slot 10 +0.05/0 through from 25, 30 to 75, 30", "4 x 6.6 cbore 11 x 6.5 at 10, 10; 90, 10; 90, 50; 10, 50")),
    ("90 x 40 x 25 ±0.05", ("step 20 x 12 right end", "16 H7 through at 40, 20 within 0.05")),
    ("120 x 80 x 4", ("window 50 x 30 R5 at 60, 40", "6 x M4 through on PCD 70, first at 30")),
    ("60 ±0.05 x 40 x 20", ("slot 12 H9 x 6 deep left to right at 20", "2 x 5 x 12 deep at 10, 10; 50, 10")),
)  # fmt: skip


@pytest.fixture
def lines(window):
    """Opens the job's form; gives its fields of the finished part by name."""
    window.open_key("job")

    def fields():
        return window.bench.column.ruled.opened.forms[OWNER].fields

    return fields


def write(qtbot, text):
    """Strike every key into whatever has the keyboard, and look at the box after each."""
    box = QApplication.focusWidget()
    box.selectAll()
    for count, sign in enumerate(text, 1):
        qtbot.keyClicks(QApplication.focusWidget(), sign)
        assert QApplication.focusWidget() is box
        assert box.text() == text[:count]


def enter(qtbot):
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)


def test_five_drawings_are_said_by_keys_alone(window, lines, qtbot):
    for sizes, features in DRAWINGS:
        while window.desk.job.finished.features:
            lines()["line_1"].go_in()
            QApplication.focusWidget().clear()
            window.desk.history.break_merge()
            qtbot.keyClicks(QApplication.focusWidget(), "x")
            qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
            qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
        lines()["sizes"].go_in()
        for text in (sizes, *features):
            write(qtbot, text)
            enter(qtbot)
        assert window.desk.job.finished.sizes == sizes
        assert window.desk.job.finished.features == features
        assert not [name for name, field in lines().items() if field.problem]
        assert list(lines())[-1] == f"line_{len(features) + 1}"


def test_what_no_step_makes_is_found_and_gone_to_at_its_line(window, lines, qtbot):
    number = len(window.desk.job.finished.features) + 1
    lines()[f"line_{number}"].go_in()
    write(qtbot, "M10 through at 40, 25")
    enter(qtbot)
    qtbot.waitUntil(lambda: any(one.line == number for one in window.desk.remarks))
    missing = next(one for one in window.desk.remarks if one.line == number)
    assert missing.rule == "hole-missing"
    assert not missing.operations
    window.parts.edits.rows.close()
    for _ in window.desk.remarks:
        window.parts.edits.walking.next_remark()
        if window.opened_key == "job" and lines()[f"line_{number}"].holds_cursor():
            break
    assert lines()[f"line_{number}"].holds_cursor()
    # The picture of the part comes when the hand rests: it must not push the line out of sight.
    form, view = window.bench.column.ruled.opened, window.bench.column.view
    qtbot.waitUntil(lambda: bool(form._pictures))
    box = lines()[f"line_{number}"].box
    assert 0 <= box.mapTo(view, box.rect().topLeft()).y() < view.height()
    assert missing in [one.remark for one in window.bench.column.ruled.opened.remark_lines]


def test_a_remark_that_ends_while_it_is_gone_to_is_not_spoken_of(window, lines, qtbot, monkeypatch):
    """Going to its line leaves another field, which writes down what was typed there."""
    number = len(window.desk.job.finished.features) + 1
    lines()[f"line_{number}"].go_in()
    write(qtbot, "M10 through at 40, 25")
    enter(qtbot)
    qtbot.waitUntil(lambda: any(one.line == number for one in window.desk.remarks))
    walking = window.parts.edits.walking
    missing = next(index for index, one in enumerate(window.desk.remarks) if one.line == number)
    go = walking._go_to_field

    def gone_to(owner, name):
        go(owner, name)
        window.desk.remarks = tuple(one for one in window.desk.remarks if one.line != number)

    monkeypatch.setattr(walking, "_go_to_field", gone_to)
    for _ in range(missing + 1):
        walking.next_remark()
    assert lines()[f"line_{number}"].holds_cursor()


def foot(field):
    """Where a field's own lines end in the form of the job, and where the next field begins."""
    form = field.window().bench.column.ruled.opened
    top = field.mapTo(form, field.rect().topLeft()).y()
    return top + field.needed_height(field.width()), top + field.height()


def test_a_remark_stands_under_the_line_that_it_names(window, lines, qtbot):
    number = len(window.desk.job.finished.features) + 1
    lines()[f"line_{number}"].go_in()
    write(qtbot, "M10 through at 40, 25")
    form = window.bench.column.ruled.opened
    qtbot.waitUntil(lambda: any(one.remark.line == number for one in form.remark_lines))
    here = next(one for one in form.remark_lines if one.remark.line == number)
    field = lines()[f"line_{number}"]
    qtbot.waitUntil(lambda: foot(field)[0] <= here.y() < here.geometry().bottom() < foot(field)[1])
    assert here.isVisible()
    # Tab goes from the line into what is said of it; Enter goes to the next line.
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is here
    field.go_in()
    enter(qtbot)
    assert lines()[f"line_{number + 1}"].holds_cursor()
    # Whoever goes back goes to the line, which is mended more often than its remark is set aside.
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backtab)
    assert field.holds_cursor()
    assert field.box.hasSelectedText()
    # It stands there too where the form is opened again, and goes with its line.
    window.parts.edits.rows.close()
    window.open_key("job")
    form = window.bench.column.ruled.opened
    said = next(one for one in form.remark_lines if one.remark.line == number)
    assert foot(lines()[f"line_{number}"])[0] <= said.y()
    lines()[f"line_{number}"].go_in()
    QApplication.focusWidget().selectAll()
    for _ in range(2):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
    qtbot.waitUntil(lambda: not any(one.remark.line == number for one in form.remark_lines))


def test_a_remark_that_stands_at_a_step_is_named_by_number_at_its_line(window, lines, qtbot):
    from jobsheet.gui.column.at_the_lines import ElsewhereLine

    at, other = 1, window.desk.job.finished.features[0].replace("M6", "M5")
    assert "M5" in other
    lines()[f"line_{at}"].go_in()
    write(qtbot, other)
    form = window.bench.column.ruled.opened

    def seen():
        return [one for one in form.findChildren(ElsewhereLine) if one.isVisible() and one.line == at]

    def thread():
        return next((one for one in window.desk.remarks if one.rule == "thread-as-asked"), None)

    # What is read between two keys is not what is meant: the hand rests.
    qtbot.waitUntil(lambda: thread() is not None and "M5" in thread().message and bool(seen()))
    remark, here = thread(), seen()[0]
    numbers = [str(window.desk.job.find(key)[1].number) for key in remark.operations]
    button = next(one for one in here.buttons if one.text() == f"see {', '.join(numbers)}")
    assert remark.message in button.accessibleDescription()
    assert remark not in [one.remark for one in form.remark_lines]
    qtbot.waitUntil(lambda: foot(lines()[f"line_{at}"])[0] <= here.y() < foot(lines()[f"line_{at}"])[1])
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is here.buttons[0]
    button.setFocus()
    qtbot.keyClick(button, Qt.Key.Key_Return)
    assert window.opened_key == remark.operations[0]
    assert QApplication.focusWidget().remark == remark


def test_the_line_under_the_hand_stays_where_it_is_when_another_gets_a_remark(window, lines, qtbot):
    view = window.bench.column.view
    lines()["line_1"].go_in()
    write(qtbot, "M10 through at 40, 25")
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    box = QApplication.focusWidget()
    stood = box.mapTo(view, box.rect().topLeft()).y()
    form = window.bench.column.ruled.opened
    qtbot.waitUntil(lambda: any(one.remark.line == 1 for one in form.remark_lines))
    qtbot.wait(600)
    assert QApplication.focusWidget() is box
    assert abs(box.mapTo(view, box.rect().topLeft()).y() - stood) <= 1


def test_what_was_understood_stands_under_the_line_and_what_is_wrong_too(lines, qtbot):
    lines()["line_1"].go_in()
    write(qtbot, "16 h7 through")
    assert "16 H7" in str(lines()["line_1"].problem)
    assert lines()["line_1"].problem.start == 0
    write(qtbot, "16 H7 through at 40, 25")
    assert lines()["line_1"].problem is None
    assert "hole ⌀ 16 to 16.018 mm" in lines()["line_1"].understood


def test_letters_of_the_datums_are_typed_told_back_and_drawn(window, lines, qtbot):
    features = window.desk.job.finished.features
    lines()["datums"].go_in()
    write(qtbot, "A: left, B")
    assert "on which face B lies" in str(lines()["datums"].problem)
    qtbot.keyClicks(QApplication.focusWidget(), ": front, C bottom")
    assert window.desk.job.datums == (("A", "left"), ("B", "front"), ("C", "bottom"))
    assert lines()["datums"].problem is None
    assert lines()["datums"].understood.startswith(
        "A left, B front, C bottom; places on the top count from A"
    )
    enter(qtbot)
    assert lines()["sizes"].holds_cursor()
    assert lines()["datums"].box.text() == "A: left, B: front, C: bottom"
    assert window.desk.job.finished.features == features

    def letters():
        drawn = [item for one in window.bench.column.ruled.opened._pictures for item in one.items]
        return {getattr(item, "words", "") for item in drawn} & {"A", "B", "C", "D"}

    qtbot.waitUntil(lambda: letters() == {"A", "B", "C"})
    # A letter is the name of its face in every other line.
    lines()["sizes"].go_in()
    write(qtbot, "80 x 50 x 11.5 ±0.1; top parallel to C 0.05")
    assert "top parallel to bottom within 0.05 mm" in lines()["sizes"].understood
    lines()["datums"].go_in()
    for _ in range(2):
        QApplication.focusWidget().selectAll()
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
    assert window.desk.job.datums == ()
    assert "no datum has a letter yet" in str(lines()["sizes"].problem)
    window.actions_by_id["undo"].trigger()
    assert window.desk.job.datums == (("A", "left"), ("B", "front"), ("C", "bottom"))


def test_a_form_is_taken_from_the_list_and_its_sizes_are_typed_over(window, lines, qtbot):
    picking = window.parts.edits.rows.picking
    number = len(window.desk.job.finished.features) + 1
    lines()[f"line_{number}"].go_in()
    # Nobody who types is asked anything.
    write(qtbot, "slot")
    qtbot.wait(50)
    assert picking.list is None
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Down)
    assert picking.list is not None

    def titles():
        return [one.title for one in picking.list.list.things]

    # What stands there already is looked for, and the list that hangs there follows what is typed.
    assert "Slot from edge to edge" in titles()
    assert "Pocket" not in titles()
    qtbot.keyClicks(QApplication.focusWidget(), " right")
    qtbot.waitUntil(lambda: titles() == ["Slot from edge to edge"])
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    box = QApplication.focusWidget()
    assert lines()[f"line_{number}"].holds_cursor()
    assert box.text() == "slot 12 x 6 deep left to right at 25"
    assert box.selectedText() == "12 x 6"
    qtbot.keyClicks(box, "10 H9 x 4")
    assert window.desk.job.finished.features[-1] == "slot 10 H9 x 4 deep left to right at 25"
    assert lines()[f"line_{number}"].problem is None
    enter(qtbot)
    window.actions_by_id["undo"].trigger()
    window.actions_by_id["undo"].trigger()
    assert len(window.desk.job.finished.features) <= number


def test_letters_of_the_datums_are_taken_from_the_list_one_after_the_other(window, lines, qtbot):
    lines()["datums"].go_in()
    QApplication.focusWidget().selectAll()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
    for _ in range(2):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_F4)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Down)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Down)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert lines()["datums"].holds_cursor()
    assert window.desk.job.datums == (("A", "front"), ("B", "rear"))
    assert lines()["datums"].box.text() == "A: front, B: rear"


@pytest.mark.parametrize(
    ("name", "page"), [("line_1", "feature"), ("line_2", "feature"), ("sizes", "sizes"), ("datums", "datums")]
)
def test_f1_in_a_line_opens_its_page(window, lines, qtbot, name, page):
    from jobsheet.gui.desk.help_topic import page_near

    lines()[name].go_in()
    found = page_near(QApplication.focusWidget())
    assert found.id == f"field:job:finished/{page}"


def test_the_picture_of_the_part_follows_the_stock(window, lines, qtbot):
    """Where no line says a size it is that of the stock; a part of round bar
    is round where nothing cuts it.
    """
    form = window.bench.column.ruled.opened

    def words():
        return [item.words for one in form._pictures for item in one.items if hasattr(item, "words")]

    lines()["sizes"].go_in()
    write(qtbot, "height 11.5")
    qtbot.waitUntil(lambda: bool(form._pictures) and "50" not in words())

    def outlines():
        return [item for one in form._pictures for item in one.items if not hasattr(item, "words")]

    before = outlines()
    form.forms["job:stock"].fields["length"].go_in()
    write(qtbot, "120")
    qtbot.waitUntil(lambda: outlines() != before)
    longer = outlines()
    write(qtbot, "80")
    qtbot.waitUntil(lambda: outlines() == before)
    assert longer != before
    shape = form.forms["job:stock"].fields["shape"].box
    shape.setFocus()
    qtbot.keyClicks(shape, "tube")
    qtbot.waitUntil(lambda: window.desk.job.stock.shape == "tube" and outlines() != before)


def test_lines_are_moved_and_struck_and_taken_back(window, lines, qtbot):
    before = window.desk.job.finished.features
    assert len(before) == 2
    lines()["line_1"].go_in()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert window.desk.job.finished.features == before[::-1]
    assert lines()["line_2"].holds_cursor()
    QApplication.focusWidget().selectAll()
    for _ in range(2):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
    assert window.desk.job.finished.features == before[1:]
    assert lines()["line_1"].holds_cursor()
    while window.desk.job.finished.features != before:
        assert window.actions_by_id["undo"].isEnabled()
        window.actions_by_id["undo"].trigger()
    assert [field.box.text() for field in lines().values()][2:] == [*before, ""]


def test_a_line_that_nobody_can_read_is_kept_in_the_file(window, lines, qtbot, tmp_path):
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.job_writing import save_job

    lines()["line_1"].go_in()
    write(qtbot, "as the old one")
    save_job(window.desk.job, tmp_path / "kept.yaml")
    assert read_job(tmp_path / "kept.yaml").finished.features[0] == "as the old one"


@pytest.mark.parametrize("size", [(1440, 900), (900, 700)])
def test_lines_are_as_wide_as_the_form(show, size):
    window = show(sample_jobs() / "hm-103-pivot-block.yaml", size)
    window.open_key("job")
    form = window.bench.column.ruled.opened.forms[OWNER]
    assert {field.width() for field in form.fields.values()} == {form.width()}


def test_the_form_opens_again_after_another_look(window):
    window.open_key("job")
    window.rebuild()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    window.open_key("job")
    assert window.opened_key == "job"
