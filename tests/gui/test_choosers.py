"""The panels under the title block: typed key by key, walked by arrows, taken by
Enter or a press, left by Esc.
"""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QActionGroup
from PySide6.QtWidgets import QApplication, QMenu

from jobsheet.catalog.metals.finding import materials_found
from jobsheet.catalog.metals.materials import find
from jobsheet.gui.forms import ask
from jobsheet.storage.job_writing import write_job

B2, K2 = "bench-mill-b-2", "knee-mill-k-2"


def cell(window, name):
    return window.bench.title.cells[name]


def press(qtbot, key, modifier=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(QApplication.focusWidget(), key, modifier)


def typed(qtbot, text):
    for letter in text:
        qtbot.keyClicks(QApplication.focusWidget(), letter)


@pytest.fixture
def opened(window, qtbot):
    """Press a cell of the title block, and what hangs there."""

    def opened(name):
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        qtbot.mouseClick(cell(window, name), Qt.MouseButton.LeftButton)
        return window.parts.panels.open

    return opened


def looked_through(qtbot, panel):
    qtbot.waitUntil(lambda: len(panel._known) == len(panel.list.things))


# --- material ---


def test_it_hangs_under_its_cell_with_the_planned_one_blue(window, opened):
    panel = opened("material")
    under = cell(window, "material")
    assert panel.line.hasFocus()
    assert panel.y() == under.height() + window.bench.title.y()
    assert panel.x() == under.x()
    assert panel.list.chosen.key == window.desk.job.material
    assert panel.list.chosen.beside == "planned"


@pytest.mark.parametrize(
    ("words", "name"),
    [("mild steel", "S235"), ("1.0038", "S235"), ("aisi 304", "304"), ("6061", "6061-T6"), ("C360", "C360"), ("119 HB", "S235")],
)  # fmt: skip
def test_a_material_is_found_by_trade_name_standard_name_or_hardness(words, name):
    assert materials_found(words)[0].material.name == name


def test_mild_steel_finds_s235_and_enter_takes_it_also_after_down(window, opened, qtbot):
    opened("material")
    typed(qtbot, "6061")
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.material == "6061-T6"
    panel = opened("material")
    typed(qtbot, "mild steel")
    found = [one.key for one in panel.list.things]
    assert found[0] == "S235"
    assert panel.list.chosen.hit == (0, len("mild steel"))
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.material == found[1]
    window.parts.edits.history.undo()
    assert window.desk.job.material == "6061-T6"


def test_escape_leaves_the_job_as_it_was_and_gives_the_keyboard_back(window, opened, qtbot):
    window.open_key("drill")
    box = window.focusWidget()
    before = write_job(window.desk.job)
    window.actions_by_id["choose-material"].trigger()
    typed(qtbot, "brass")
    press(qtbot, Qt.Key.Key_Escape)
    assert window.focusWidget() is box
    assert write_job(window.desk.job) == before
    assert not window.desk.history.can_undo


def test_a_row_is_taken_by_a_press(window, opened, qtbot):
    panel = opened("material")
    typed(qtbot, "cast")
    row = panel.list.rows[1]
    name = row.listed.key
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    assert window.desk.job.material == name


def test_the_wheel_and_page_down_go_through_all(window, opened, qtbot):
    panel = opened("material")
    for _ in range(20):
        press(qtbot, Qt.Key.Key_PageDown)
    assert panel.list.chosen is panel.list.things[-1]
    assert any(row.isVisible() and row.isChecked() for row in panel.list.rows)


def test_what_nothing_is_called_offers_one_of_one_s_own(window, opened, qtbot, home):
    panel = opened("material")
    typed(qtbot, "workshop bronze")
    assert panel.list.things == ()
    assert "Own material" in panel.line.accessibleDescription()
    press(qtbot, Qt.Key.Key_Return)
    assert panel.isVisible()
    qtbot.mouseClick(panel.own, Qt.MouseButton.LeftButton)
    assert panel.line.hasFocus()
    panel.list.choose("C360")
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.material == "workshop bronze"
    made, like = find("workshop bronze"), find("C360")
    assert made.own
    assert (made.kc11, made.hazards) == (like.kc11, like.hazards)
    assert (home / "materials" / "workshop-bronze.yaml").is_file()


def test_a_name_that_is_taken_is_refused_in_a_sentence(window, opened, qtbot, monkeypatch):
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    panel = opened("material")
    typed(qtbot, "brass")
    qtbot.mouseClick(panel.own, Qt.MouseButton.LeftButton)
    panel.line.selectAll()
    typed(qtbot, "s235")
    press(qtbot, Qt.Key.Key_Return)
    assert said == ["There is a material called “s235” already; choose it, or another name."]
    assert window.desk.job.material == "S235"


# --- machine ---


def test_moving_through_machines_only_looks(window, opened, qtbot):
    before = write_job(window.desk.job)
    panel = opened("machine")
    looked_through(qtbot, panel)
    press(qtbot, Qt.Key.Key_Down)
    assert panel.chosen == B2
    assert panel.plan.text() == "Plan it for Bench mill B-2"
    assert write_job(window.desk.job) == before
    assert not window.desk.history.can_undo


@pytest.mark.usefixtures("day_of_the_figures")
def test_it_says_how_many_steps_no_longer_fit_and_the_worst_first(show, qtbot):
    from jobsheet.paths import sample_jobs

    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"))
    window.actions_by_id["choose-machine"].trigger()
    panel = window.parts.panels.open
    looked_through(qtbot, panel)
    panel.list.choose(B2)
    seen = panel.seen
    assert panel.list.chosen.fact == f"{len(seen.misfits)} of 23 no longer fit"
    # 4 mm of the 0.58 mm that B-2 was shown to carry is further over than 546 W of 200 W.
    assert seen.misfits[0].why.startswith("chatter 4 of 0.58 mm")
    assert any(one.why.startswith("spindle power 546 of 200") for one in seen.misfits[1:])
    assert panel.list.things[-1].fact == "planned for it"
    assert seen.head in panel.accessibleDescription()


def test_the_button_decides_and_one_undo_takes_it_back(window, opened, qtbot):
    before = write_job(window.desk.job)
    panel = opened("machine")
    looked_through(qtbot, panel)
    press(qtbot, Qt.Key.Key_K)
    assert panel.chosen == K2
    qtbot.mouseClick(panel.plan, Qt.MouseButton.LeftButton)
    assert window.desk.job.machine == K2
    after = write_job(window.desk.job)
    window.parts.edits.history.undo()
    assert write_job(window.desk.job) == before
    window.parts.edits.history.redo()
    assert write_job(window.desk.job) == after


def test_enter_decides_and_the_planned_one_cannot_be_planned_again(window, opened, qtbot):
    panel = opened("machine")
    looked_through(qtbot, panel)
    press(qtbot, Qt.Key.Key_Return)
    assert panel.isVisible()
    assert "already" in panel.plan.accessibleDescription()
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.machine == B2


def test_a_press_on_a_machine_only_looks_at_it(window, opened, qtbot):
    panel = opened("machine")
    looked_through(qtbot, panel)
    before = window.desk.job.machine
    qtbot.mouseClick(panel.list.rows[2], Qt.MouseButton.LeftButton)
    assert panel.isVisible()
    assert panel.chosen == panel.list.rows[2].listed.key
    assert window.desk.job.machine == before


def test_new_machine_and_the_card_are_offered_in_it(window, opened, qtbot):
    panel = opened("machine")
    press(qtbot, Qt.Key.Key_Down)
    qtbot.mouseClick(panel.card, Qt.MouseButton.LeftButton)
    cards = [one for one in QApplication.topLevelWidgets() if type(one).__name__ == "CardWindow"]
    made = [one for one in cards if one.isVisible()]
    assert len(made) == 1
    assert "B-2" in made[0].windowTitle()
    made[0].close()
    panel = opened("machine")
    assert panel.new.text() == "New machine…"


def test_a_broken_card_says_so_and_cannot_be_planned_for(window, opened, qtbot, home):
    (home / "machines").mkdir(parents=True)
    (home / "machines" / "mine.yaml").write_text("format: 1\ntitle: Mine\n", encoding="utf-8")
    panel = opened("machine")
    looked_through(qtbot, panel)
    panel.list.choose("mine")
    assert not panel.plan.isEnabled()
    assert panel.seen.more
    press(qtbot, Qt.Key.Key_Return)
    assert panel.isVisible()


# --- both ---


def test_pressing_the_cell_again_or_anything_else_leaves_it(window, opened, qtbot):
    panel = opened("machine")
    qtbot.mouseClick(cell(window, "machine"), Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.parts.panels.open is None or not panel.isVisible())
    opened("material")
    window.bench.column.ruled.focus_line("drill")
    qtbot.waitUntil(lambda: window.parts.panels.shown is None)


@pytest.mark.parametrize("name", ["material", "machine"])
def test_another_size_or_look_of_the_window_leaves_nothing_hanging_outside(window, opened, qtbot, name):
    panel = opened(name)
    window.resize(820, 600)
    QApplication.processEvents()
    assert window.bench.rect().contains(panel.geometry())
    window.rebuild()
    assert window.parts.panels.shown is None


@pytest.mark.parametrize("name", ["material", "machine"])
def test_where_its_cell_has_no_room_it_hangs_under_the_title_block_all_the_same(show, name):
    window = show(size=(1024, 700), factor=1.5)
    window.actions_by_id[f"choose-{name}"].trigger()
    panel = window.parts.panels.open
    assert panel.y() == window.bench.title.geometry().bottom() + 1
    assert window.bench.rect().contains(panel.geometry())


@pytest.mark.parametrize("name", ["material", "machine"])
def test_every_control_has_a_name(opened, name):
    from PySide6.QtWidgets import QWidget

    panel = opened(name)
    for one in panel.findChildren(QWidget):
        if one.isVisible():
            assert one.accessibleName(), one


def test_menus_say_that_one_of_many_is_chosen(window):
    groups = {window.actions_by_id[name].actionGroup() for name in ("system", "light", "dark")}
    (group,) = groups
    assert isinstance(group, QActionGroup)
    assert group.isExclusive()
    menu = QMenu()
    window.fill_menu("[machines]", menu)
    one_of = [action for action in menu.actions() if action.isCheckable()]
    assert len({action.actionGroup() for action in one_of}) == 1
    assert sum(action.isChecked() for action in one_of) == 1
