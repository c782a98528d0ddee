"""Opening and closing in place."""

from __future__ import annotations

from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.operations import written


def test_a_new_step_needs_no_feed(window, qtbot):
    window.parts.edits.steps.add(written.FACE)
    row = window.open_row
    assert isinstance(window.parts.edits.rows, OpenRows)
    assert row.form.fields["feed_per_tooth"].box.text() == ""
    assert row.form.fields["feed_per_tooth"].box.placeholderText()
    assert not window.desk.view(row.key).problem
