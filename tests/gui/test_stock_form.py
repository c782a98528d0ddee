"""The stock in the job's form: another shape asks other sizes, typed key by key, and the pictures follow."""

from __future__ import annotations

import pytest
from PySide6.QtTest import QTest

from jobsheet.stock.all_shapes import entries_called, shapes


@pytest.fixture
def form(window):
    """The job's form as it stands."""
    window.open_key("job")
    return lambda: window.bench.column.ruled.opened


def fields(form):
    return form().forms["job:stock"].fields


def choose(form, text):
    box = fields(form)["shape"].box
    box.setFocus()
    if hasattr(box, "textActivated"):
        box.setCurrentText(text)
        box.textActivated.emit(text)
    else:
        box.typed.emit(text)
    QTest.qWait(10)


@pytest.mark.parametrize("name", shapes())
def test_each_shape_asks_its_sizes_and_shows_what_it_is(window, form, name):
    choose(form, name)
    assert set(fields(form)) == {entry.name for entry in entries_called(name)}
    assert window.desk.job.stock.shape == name


def test_a_wall_is_typed_key_by_key_and_refused_only_where_it_leaves_no_bore(window, form, qtbot):
    choose(form, "tube")
    across = window.desk.job.stock.diameter.value
    box = fields(form)["wall"].box
    box.setFocus()
    box.selectAll()
    for sign, text in (("9", "9"), ("9", "99"), (" ", "99 "), ("m", "99 m"), ("m", "99 mm")):
        qtbot.keyClicks(box, sign)
        assert box.text() == text
    assert window.desk.job.stock.wall.value < across / 2
    box.selectAll()
    qtbot.keyClicks(box, "2")
    assert window.desk.job.stock.wall.value == pytest.approx(2e-3)
    assert box.text() == "2"
