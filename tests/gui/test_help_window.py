"""The help in the window: F1 on what has the focus, by key and by mouse; the
keyboard goes back to where it was.
"""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow

from jobsheet.gui.desk.help_topic import page_near
from jobsheet.gui.forms.field import Field
from jobsheet.gui.places.help.help_window import HelpWindow
from jobsheet.review.pages.help_pages import pages

KEY = Qt.Key


def f1(window):
    """Press F1 where the keyboard is; the window of the help."""
    QTest.keyClick(QApplication.focusWidget(), KEY.Key_F1)
    QApplication.processEvents()
    return shown(window)


def shown(window):
    return next((one for one in window.findChildren(HelpWindow) if one.isVisible()), None)


@pytest.fixture(autouse=True)
def no_help_stays():
    """Only one window of help is open in a program: none of one test is found by the next."""
    yield
    for one in QApplication.topLevelWidgets():
        if isinstance(one, HelpWindow):
            one.close()


def test_f1_in_a_field_opens_its_page_and_esc_goes_back(window):
    window.open_key("drill")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    help_ = f1(window)
    assert help_.shown.id == "field:drill/depth"
    QTest.keyClick(help_, KEY.Key_Escape)
    QApplication.processEvents()
    assert shown(window) is None
    assert QApplication.focusWidget() is box


def test_f1_in_a_row_of_places_and_in_its_maker(window):
    window.open_key("drill")
    rows = window.open_row.form.rows
    rows.go(1, "y")
    assert page_near(QApplication.focusWidget()).id == "field:drill/at"
    rows.maker.kinds.halves[0].setFocus()
    assert page_near(QApplication.focusWidget()).id == "field:drill/at"


def test_f1_on_the_list_is_about_the_kind_of_the_step(window):
    window.bench.column.ruled.focus_line("drill")
    assert f1(window).shown.id == "kind:drill"


@pytest.mark.parametrize(
    ("owner", "section", "name"),
    [("set-up-1", "holding:set-up-1", "tighten"), ("job", "job:stock", "length"), ("job", "job", "material")],
)
def test_f1_in_the_forms_of_job_and_set_up(window, owner, section, name):
    window.open_key(owner)
    box = window.bench.column.ruled.opened.forms[section].fields[name].box
    box.setFocus()
    assert page_near(QApplication.focusWidget()).id == f"field:{section.removesuffix(':set-up-1')}/{name}"


def test_limits_are_walked_by_arrows_and_lead_to_their_pages(window, qtbot):
    window.open_key("drill")
    first, second = window.open_row.margin.limits._rows[:2]
    first.setFocus()
    assert f1(window).shown.id == f"limit:{first.limit.name}"
    QTest.keyClick(shown(window), KEY.Key_Escape)
    QApplication.processEvents()
    assert QApplication.focusWidget() is first
    QTest.keyClick(first, KEY.Key_Down)
    assert QApplication.focusWidget() is second
    QTest.keyClick(second, KEY.Key_Return)
    assert shown(window).shown.id == f"limit:{second.limit.name}"


def test_a_verdict_is_pressed_for_its_page(window, qtbot):
    window.open_key("drill")
    row = window.open_row.margin.limits._rows[0]
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPoint(row.columns()[2] + 30, row.height() // 2))
    assert shown(window).shown.id == f"verdict:{row.limit.verdict}"
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPoint(4, row.height() // 2))
    assert shown(window).shown.id == f"limit:{row.limit.name}"
    shown(window).go_back()
    assert shown(window).shown.id == f"verdict:{row.limit.verdict}"


def test_a_remark_leads_to_its_page(window):
    window.open_key("spot")
    window.parts.edits.steps.delete()
    window.parts.review()
    window.open_key("drill")
    line = next(line for line in window.open_row.remark_lines if line.remark.rule == "spot-before-drilling")
    line.setFocus()
    help_ = f1(window)
    assert help_.shown.id == "remark:spot-before-drilling"
    assert help_.view.links[0].text() == "scrap"
    QTest.keyClick(help_.view.links[0], KEY.Key_Return)
    assert help_.shown.id == "severity:scrap"


def test_a_formula_of_the_working_leads_to_its_page(window):
    window.open_key("drill")
    margin = window.open_row.margin
    margin.more.click()
    titles = [label for label in margin.working._labels if hasattr(label, "help_topic")]
    assert titles
    titles[0].setFocus()
    help_ = f1(window)
    assert help_.shown.id == titles[0].help_topic()
    assert help_.shown.sort == "formula"


def test_pages_are_found_by_typing(window):
    window.actions_by_id["keys"].trigger()
    help_ = shown(window)
    help_.line.setFocus()
    QTest.keyClicks(help_.line, "quill push")
    assert help_.shown.id == "limit:quill-push"
    QTest.keyClick(help_.line, KEY.Key_Down)
    assert help_.shown.id != "limit:quill-push"
    assert help_.list.count() < len(pages())


def test_about_has_version_and_log(window, home):
    window.actions_by_id["about"].trigger()
    text = shown(window).shown.text
    assert "Version" in text
    assert str(home / "problems.log") in text
    assert "no problem so far" in text
    shown(window).close()
    (home).mkdir(exist_ok=True)
    (home / "problems.log").write_text("ValueError: of yesterday\n", encoding="utf-8")
    window.actions_by_id["about"].trigger()
    assert "of yesterday" in shown(window).shown.text


@pytest.mark.parametrize(("way", "page"), [("fits", "place:fits"), ("capability", "place:capability")])
def test_f1_in_a_place_that_holds_up_the_window(window, way, page):
    window.actions_by_id[way].trigger()
    QApplication.processEvents()
    box = QApplication.activeModalWidget()
    QTest.keyClick(QApplication.focusWidget() or box, KEY.Key_F1)
    (help_,) = [one for one in box.findChildren(HelpWindow) if one.isVisible()]
    assert help_.shown.id == page
    QTest.keyClick(help_, KEY.Key_Escape)
    assert box.isVisible()
    box.close()


def test_f1_in_a_field_of_a_card_says_what_it_asks(window):
    window.actions_by_id["new-card"].trigger()
    QApplication.processEvents()
    (card,) = [one for one in window.findChildren(QMainWindow) if one.isVisible()]
    field = next(iter(card.findChildren(Field)))
    field.box.setFocus()
    QTest.keyClick(field.box, KEY.Key_F1)
    assert shown(window).shown.title == field.entry.title
    QTest.keyClick(shown(window), KEY.Key_Escape)
    QApplication.processEvents()
    back = QApplication.focusWidget()  # the column makes its boxes anew: it is the same field
    assert (back.window(), back.accessibleName()) == (card, field.entry.title)
    card.close()


def test_f1_in_the_help_itself_changes_nothing(window):
    window.actions_by_id["keys"].trigger()
    QApplication.processEvents()
    before = shown(window).shown
    shown(window).line.setFocus()
    QTest.keyClick(shown(window).line, KEY.Key_F1)
    assert shown(window).shown == before


def test_every_page_can_be_shown(window):
    window.actions_by_id["keys"].trigger()
    help_ = shown(window)
    for id_ in list(pages())[::9]:
        help_.open_page(id_)
        assert help_.shown.id == id_


def test_f1_where_a_step_is_put_in_is_about_the_kind_that_is_blue(window, qtbot):
    window.bench.column.ruled.focus_line("drill")
    window.actions_by_id["insert"].trigger()
    QApplication.processEvents()
    for letter in "slot":
        QTest.keyClick(QApplication.focusWidget(), letter)
    box = QApplication.focusWidget()
    assert f1(window).shown.id == "kind:slot"
    QTest.keyClick(shown(window), KEY.Key_Escape)
    QApplication.processEvents()
    assert QApplication.focusWidget() is box
    assert box.text() == "slot"


def test_a_mark_of_the_legend_is_pressed_for_what_it_means(window, qtbot):
    status = window.bench.status
    status.say("")
    status.repaint()
    verdict, place = status._marks[2]
    qtbot.mouseClick(status, Qt.MouseButton.LeftButton, pos=place.center())
    assert shown(window).shown.id == f"verdict:{verdict}"
