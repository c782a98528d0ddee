"""A line where something happened, with what can be done about it behind its words."""

from __future__ import annotations

import pytest

from jobsheet.gui.column.measures import HEADING, columns
from jobsheet.gui.column.notice_line import NoticeLine
from jobsheet.gui.ink import look


@pytest.fixture
def notice(qtbot):
    look.apply("light")
    done = []
    made = NoticeLine(
        "notice",
        "140 removed.",
        (("Undo", lambda: done.append("undo")), ("Why", lambda: done.append("why"))),
        None,
    )
    qtbot.addWidget(made)
    made.done = done
    return made


def test_what_is_offered_does_what_it_says(notice):
    assert notice.accessibleName() == "140 removed."
    for button in notice.buttons:
        button.click()
    assert notice.done == ["undo", "why"]
    assert notice.height_at_100() == HEADING
    assert notice.key == "notice"


@pytest.mark.parametrize("width", [300, 700, 1400])
def test_the_buttons_stand_behind_the_words_and_within_the_line(qtbot, notice, width):
    notice.resize(width, 36)
    notice.show()
    now = look.look()
    first, second = (button.geometry() for button in notice.buttons)
    assert second.left() == first.right() + 1
    assert second.right() < width
    if width > 600:
        assert first.left() == columns(now, width).text + now.width("140 removed.", now.body) + now.px(8)
