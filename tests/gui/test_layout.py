"""Nothing is cut off in any of the three layouts, with large type and at bench size."""

import pytest
from PySide6.QtWidgets import QLabel, QWidget

from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.ink import ink

SIZES = [((1440, 900), 1.0), ((1024, 700), 1.0), ((820, 700), 1.0), ((1440, 900), 1.5), ((1440, 900), 2.0)]
OPEN = ["", "clamp", "face-rough", "drill", "tap", "set-up-1", "job"]


@pytest.fixture
def shortened(monkeypatch):
    """Every text that had to be shortened while painting."""
    found = []
    write = ink.write

    def watching(painter, now, rect, text, font, *args, **kwargs):
        if text and now.width(text, font) > rect.width():
            found.append((text, rect.width(), now.width(text, font)))
        return write(painter, now, rect, text, font, *args, **kwargs)

    monkeypatch.setattr(ink, "write", watching)
    return found


@pytest.mark.parametrize("key", OPEN)
@pytest.mark.parametrize(("size", "factor"), SIZES, ids=[f"{w}x{h}-{f:.0%}" for (w, h), f in SIZES])
def test_no_text_is_shortened(show, shortened, size, factor, key):
    window = show(size=size, factor=factor)
    if key:
        window.open_key(key)
    shortened.clear()
    window.grab()
    assert shortened == []


@pytest.mark.parametrize(("size", "factor"), SIZES, ids=[f"{w}x{h}-{f:.0%}" for (w, h), f in SIZES])
def test_every_button_has_the_room_it_asks_for(show, size, factor):
    window = show(size=size, factor=factor)
    window.open_key("face-rough")
    for button in window.findChildren(Button):
        if button.isVisibleTo(window):
            assert button.width() >= button.sizeHint().width()
            assert button.height() >= 24
            parent = button.parentWidget()
            assert parent.rect().contains(button.geometry()), button.text()


@pytest.mark.parametrize(("size", "factor"), SIZES, ids=[f"{w}x{h}-{f:.0%}" for (w, h), f in SIZES])
def test_fields_do_not_lie_on_each_other(show, size, factor):
    window = show(size=size, factor=factor)
    window.open_key("drill")
    fields = [field.geometry() for field in window.open_row.form.fields.values()]
    for index, one in enumerate(fields):
        assert window.open_row.form.rect().contains(one)
        for other in fields[index + 1 :]:
            assert not one.intersects(other)


def test_the_sheet_never_scrolls_sideways(show):
    window = show(size=(700, 600))
    window.open_key("face-rough")
    column = window.bench.column
    assert column.ruled.width() <= column.view.width()
    for child in column.ruled.opened.findChildren(QWidget):
        if not isinstance(child, QLabel) and child.isVisibleTo(column.ruled.opened):
            right = child.mapTo(column.ruled.opened, child.rect().topRight()).x()
            assert right <= column.ruled.opened.width()


def test_narrower_windows_take_the_narrower_layouts(show):
    window = show(size=(1440, 900))
    window.open_key("face-rough")
    assert window.parts.edits.rows.form == "wide"
    window.resize(1024, 700)
    assert window.parts.edits.rows.form == "medium"
    window.resize(820, 700)
    assert window.parts.edits.rows.form == "narrow"
    assert window.open_row.margin.y() > window.open_row.form.y()
