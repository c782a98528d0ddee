"""The strip shows pictures from solids, made beside the interface; a feature pressed
opens its step; F9 goes back in time.
"""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QPointF

from jobsheet.edit.commands import SetField
from jobsheet.gui.desk.stage_work import Answer
from jobsheet.gui.ink.look import look
from jobsheet.gui.strip.stage_cell import StageCell, _place_of
from jobsheet.paths import sample_jobs


@pytest.fixture
def plate(show, qtbot):
    window = show(str(sample_jobs() / "hm-102-slide-plate.yaml"))
    key = next(one.key for _, one in window.desk.job.operations() if one.number == 100)
    window.open_key(key)
    settle(window, qtbot)
    return window


def settle(window, qtbot):
    qtbot.waitUntil(lambda: not window.later.waiting and not window.parts.solids.waiting)


def large(window):
    return next(cell for cell in window.strip().findChildren(StageCell) if cell.current)


def test_every_shown_stage_has_its_picture(plate):
    cells = [cell for cell in plate.strip().findChildren(StageCell) if not cell.isHidden()]
    assert len(cells) > 5
    assert all(cell._drawing is not None and cell._drawing.items for cell in cells)


def test_a_hole_that_is_pressed_opens_the_step_that_one_sees_there(plate, qtbot):
    """At the counterbored holes the counterbore was last (step 70); beside them
    the picture opens its own step.
    """
    cell, strip = large(plate), plate.strip()
    counterbore = next(one.key for _, one in plate.desk.job.operations() if one.number == 70)
    u, v, _, _ = next(spot for spot in strip.spots if spot[3] == counterbore)
    left, top, factor = _place_of(look(), cell._room(), cell._drawing)
    cell._pressed_at = QPointF(left + u * factor, top + v * factor)
    assert cell.feature_at(strip.spots) == counterbore
    cell._pressed_at = QPointF(2, 2)
    assert cell.feature_at(strip.spots) == ""
    cell._pressed_at = QPointF(left + u * factor, top + v * factor)
    cell.click()
    assert plate.opened_key == counterbore


def test_f9_shows_the_work_before_the_step_and_the_stock(plate, qtbot):
    after = large(plate)._drawing
    plate.parts.stages.next_moment()
    settle(plate, qtbot)
    before = large(plate)._drawing
    plate.parts.stages.next_moment()
    settle(plate, qtbot)
    stock = large(plate)._drawing
    assert len(stock.items) < len(before.items)
    assert after != before
    assert not any(getattr(item, "weight", "") == "cut" for item in before.items)
    assert any(getattr(item, "weight", "") == "cut" for item in after.items)


def test_an_edit_of_an_earlier_step_changes_the_picture(plate, qtbot):
    drawing = large(plate)._drawing
    counterbore = next(one.key for _, one in plate.desk.job.operations() if one.number == 70)
    plate.desk.type(SetField(counterbore, "cutter", "counterbore 14, 3 edges, pilot 6.6"))
    settle(plate, qtbot)
    assert large(plate)._drawing != drawing


def test_a_picture_that_comes_after_the_look_changed_falls_on_no_strip_that_is_gone(plate, qtbot):
    solids = plate.parts.solids
    plate.later.soon()
    plate.looks.dark()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    solids._answers.put(Answer(solids._serial, {"drill": None}))
    solids.look()
    plate.looks.light()
    qtbot.waitUntil(lambda: plate.bench.strip is not None and not solids.waiting)
