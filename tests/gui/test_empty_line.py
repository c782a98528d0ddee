"""A job without operations: an advice, a button, and the last jobs that still are there."""

from __future__ import annotations

import shutil

import pytest

from jobsheet.gui.column.empty_line import RECENTS, EmptyLine
from jobsheet.gui.ink import look
from jobsheet.paths import sample_jobs
from jobsheet.storage.kept.recent import used


def _line(qtbot, width=900):
    look.apply("light")
    made = EmptyLine("empty", None)
    qtbot.addWidget(made)
    made.resize(width, made.height_at_100())
    made.show()
    return made


def test_at_first_there_is_one_button(qtbot):
    made, pressed = _line(qtbot), []
    made.pressed.connect(lambda: pressed.append(1))
    made.button.click()
    assert pressed == [1]
    assert made.recents == []
    assert made.accessibleName() == "No operation yet. Start with the face that all others are judged from."


@pytest.fixture
def opened_before(tmp_path):
    paths = []
    for number in range(RECENTS + 2):
        path = tmp_path / f"job {number}.yaml"
        shutil.copy(sample_jobs() / "hm-104-cover-plate.yaml", path)
        used(path, f"plate {number}")
        paths.append(path)
    paths[-1].unlink()
    return paths


def test_the_last_jobs_that_are_there_are_offered_the_newest_first(qtbot, opened_before):
    made, asked = _line(qtbot), []
    made.recent_pressed.connect(asked.append)
    assert len(made.recents) == RECENTS
    for button in made.recents:
        button.click()
    assert asked == [str(path) for path in reversed(opened_before[:-1])][:RECENTS]


def test_what_has_no_room_is_not_shown(qtbot, opened_before):
    made = _line(qtbot, 330)
    assert not all(button.isVisible() for button in made.recents)
    made.resize(1800, made.height_at_100())
    assert all(button.isVisible() for button in made.recents)
