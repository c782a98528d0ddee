"""Every control has a name for a screen reader, in every form that there is."""

import pytest
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QPlainTextEdit, QWidget

CONTROLS = (QAbstractButton, QLineEdit, QComboBox, QPlainTextEdit)


def nameless(window):
    found = []
    for widget in window.findChildren(QWidget):
        if isinstance(widget, CONTROLS) and not widget.isHidden():
            face = QAccessible.queryAccessibleInterface(widget)
            if not face.text(QAccessible.Text.Name).strip():
                found.append(widget)
    return found


@pytest.mark.parametrize("key", ["", "clamp", "face-rough", "drill", "tap", "set-up-1", "job"])
def test_every_control_has_a_name(window, key):
    if key:
        window.open_key(key)
    assert nameless(window) == []


def test_a_row_says_all_that_it_shows(window):
    name = window.bench.column.ruled.by_key["face-rough"].view.spoken()
    for part in ("20", "Top to 11.6, 0.4 off", "560", "1.3 s a turn", "expected", "hand pace"):
        assert part in name


def test_a_field_says_its_unit_and_what_is_wrong(window, type_in):
    window.open_key("face-rough")
    field = type_in(window, "depth", "25 thou")
    assert "0.635 mm" in field.box.accessibleDescription()
    field = type_in(window, "depth", "4 im")
    assert "im" in field.box.accessibleDescription()


def test_a_limit_says_its_share_and_verdict(window):
    window.open_key("face-rough")
    name = window.open_row.margin.limits._rows[0].accessibleName()
    assert "56 %" in name
    assert "expected, 1 in 18 jerks" in name  # 44.8 of the 80 turns at which every other hand jerks
