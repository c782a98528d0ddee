"""The shelf as a hand uses it: a key opens it, typing finds, arrows choose, Enter opens; the
window never waits for the folder.
"""

from __future__ import annotations

import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.gui.places.shelf.shelf_window import ShelfWindow
from jobsheet.model.what_ran import Entry
from jobsheet.storage.kept.shelf_kept import keep_shelf, shelf_folder, shelves
from jobsheet.storage.records.run_log import record


@pytest.fixture
def folder(samples, tmp_path):
    there = tmp_path / "shelf"
    there.mkdir()
    for path in samples.glob("*.yaml"):
        shutil.copy(path, there)
    entry = Entry(
        job="HM-103",
        plan="",
        revision=0,
        machine="knee-mill-k-2",
        date="2026-11-20",
        about="step",
        key="a",
        number=70,
        outcome="noisy",
        role="Apprentice B",
    )
    record(there / "hm-103-pivot-block.yaml", (entry,))
    keep_shelf(there)
    return there


@pytest.fixture
def place(window, qtbot, folder):
    window.actions_by_id["shelf"].trigger()
    found = next(one for one in window.findChildren(ShelfWindow) if one.isVisible())
    qtbot.waitUntil(lambda: found.found is not None and found.found.count == 7, timeout=10_000)
    yield found
    for one in window.findChildren(ShelfWindow):
        one.close()


def typed(widget, text):
    for sign in text:
        QTest.keyClick(widget, sign)


def named(place):
    return [hit.number for hit in place.found.hits]


def test_typing_finds_and_says_what_was_understood(place):
    assert place.line.hasFocus() or place.focusWidget() is place.line
    typed(place.line, "drill 6.8")
    assert named(place) == ["HM-103"]
    assert place.said.text() == "understood: drill 6.8"
    assert place.count.text() == "1 found"
    assert "trouble at 70: noisy" in place.list.accessibleDescription()
    typed(place.line, " brass")
    assert named(place) == []
    assert place.said.text() == "Nothing on this shelf has drill 6.8 · brass in it."
    assert not place.open_it.isEnabled()
    QTest.keyClick(place.line, Qt.Key.Key_Escape)
    assert len(named(place)) == 7
    assert place.isVisible()


def test_what_was_made_comes_first_and_the_chosen_one_is_told(place, qtbot):
    assert named(place)[0] == "HM-103"
    qtbot.waitUntil(lambda: place.facts.facts.title.startswith("HM-103"))
    words = place.facts.accessibleName()
    assert "2026-11-20 step 70 noisy" in words
    assert "23 steps in 6 set-ups" in words
    assert "Machine Knee mill K-2" in words
    QTest.keyClick(place.line, Qt.Key.Key_Down)
    QTest.keyClick(place.line, Qt.Key.Key_Down)
    assert place.list.at == 2
    qtbot.waitUntil(lambda: place.facts.facts.title.startswith(place.found.hits[2].number))
    QTest.keyClick(place.line, Qt.Key.Key_Up)
    assert place.list.at == 1


def test_enter_opens_the_job_and_the_place_is_gone(place, window, folder, qtbot):
    typed(place.line, "slide plate")
    QTest.keyClick(place.line, Qt.Key.Key_Return)
    assert window.desk.job.part.number == "HM-102"
    assert window.desk.path == folder / "hm-102-slide-plate.yaml"
    qtbot.waitUntil(lambda: not [one for one in window.findChildren(ShelfWindow) if one.isVisible()])


def test_a_broken_file_says_its_line(place, folder, qtbot):
    (folder / "torn.yaml").write_text("format: 2\npart:\n  number: HM-9\n  name: Gudgeon\nfoo: bar\n")
    place.take(folder)
    qtbot.waitUntil(lambda: place.found.count == 8, timeout=10_000)
    typed(place.line, "gudgeon")
    qtbot.waitUntil(lambda: "line 5" in place.facts.facts.problem)


def test_without_a_folder_it_asks_for_one_and_a_lost_one_is_one_sentence(window, folder, tmp_path, qtbot):
    keep_shelf(tmp_path / "gone")
    window.actions_by_id["shelf"].trigger()
    found = next(one for one in window.findChildren(ShelfWindow) if one.isVisible())
    assert "There is no folder gone" in found.said.text()
    assert not found.open_it.isEnabled()
    found.take(folder)
    qtbot.waitUntil(lambda: found.found is not None and found.found.count == 7, timeout=10_000)
    assert shelf_folder() == folder
    found.close()


def test_what_is_said_of_a_row_reads_as_a_sentence(place):
    hit = place.found.hits[0]
    assert place.list.said(hit).startswith(
        "HM-103 Pivot block, Knee mill K-2, 2026-11-20, tight, trouble at 70: noisy"
    )


def test_another_shelf_is_one_key_away_and_the_list_is_kept(place, folder, tmp_path, samples, qtbot):
    other = tmp_path / "old parts"
    other.mkdir()
    shutil.copy(samples / "hm-104-cover-plate.yaml", other)
    assert not place.shelves.isVisible()
    place.take(other)
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == 1)
    assert [place.shelves.itemText(at) for at in range(place.shelves.count())] == ["shelf", "old parts"]
    QTest.keyClick(place.line, Qt.Key.Key_PageUp, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == 7)
    assert place.shelves.currentText() == "shelf"
    QTest.keyClick(place.line, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == 1)
    assert shelves() == (folder, other)


def test_plans_of_one_part_for_two_machines_are_side_by_side_with_what_differs(place, qtbot):
    typed(place.line, "HM-100")
    qtbot.waitUntil(lambda: place.facts.facts.title.startswith("HM-100"))
    blocks = dict(place.facts.facts.blocks)
    beside = [title for title in blocks if title.startswith("Also planned for ")]
    assert len(beside) == place.found.count - 1
    lines = [line for _, line in blocks[beside[0]]]
    assert any("spindle: " in line for line in lines)
    assert not [line for line in lines if line.startswith(("Machine", "Planned for card"))]


def test_a_second_file_of_one_plan_is_said_in_its_row_and_beside_it(place, folder, qtbot):
    shutil.copy(folder / "hm-102-slide-plate.yaml", folder / "hm-102-slide-plate (B's conflicted copy).yaml")
    place.take(folder)
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == 8)
    typed(place.line, "slide plate")
    assert "the same plan as hm-102-slide-plate" in place.list.accessibleDescription()
    qtbot.waitUntil(lambda: "compare the two, keep one" in place.facts.facts.problem)


def test_verdicts_and_pictures_come_once_the_hand_rests_and_are_found_by_their_word(place, qtbot):
    assert "not yet worked" in place.list.said(
        next(hit for hit in place.found.hits if hit.number == "HM-102")
    )
    qtbot.waitUntil(lambda: all(place.worked_of(hit.content) is not None for hit in place.found.hits))
    qtbot.waitUntil(lambda: "not yet worked" not in "".join(map(place.list.said, place.found.hits)))
    qtbot.waitUntil(lambda: place.facts.facts.picture is not None)
    assert place.facts.facts.title.startswith("HM-103")
    typed(place.line, "tight")
    assert "HM-103" in named(place)  # the record says so
    assert place.said.text() == "understood: how it went: tight"
    for _ in "tight":
        QTest.keyClick(place.line, Qt.Key.Key_Backspace)
    typed(place.line, "not yet worked")
    assert named(place) == []


def test_the_window_ends_what_works_for_it(place, qtbot):
    qtbot.waitUntil(lambda: place._working is not None and place._working._process is not None)
    process = place._working._process
    place.close()
    assert process.wait(10) is not None


def test_two_plans_are_compared_by_key(place, qtbot):
    typed(place.line, "HM-100")
    first, second = place.found.hits[0], place.found.hits[1]
    QTest.keyClick(place.line, Qt.Key.Key_C, Qt.KeyboardModifier.AltModifier)
    assert place.said.text().startswith(f"{first.path} is marked")
    QTest.keyClick(place.line, Qt.Key.Key_Down)
    QTest.keyClick(place.line, Qt.Key.Key_C, Qt.KeyboardModifier.AltModifier)
    qtbot.waitUntil(lambda: place.facts.facts.title == f"{first.path} → {second.path}")
    QTest.qWait(300)  # the hand rested on the row before: its facts do not come over it
    assert place.facts.facts.title == f"{first.path} → {second.path}"
    ((heading, rows),) = place.facts.facts.blocks
    assert heading == f"What is different: {len(rows)}"
    assert any(line.startswith("Machine: ") for _, line in rows)
    QTest.keyClick(place.line, Qt.Key.Key_C, Qt.KeyboardModifier.AltModifier)
    QTest.keyClick(place.line, Qt.Key.Key_C, Qt.KeyboardModifier.AltModifier)
    assert place.said.text() == f"{second.path} is no longer marked."
