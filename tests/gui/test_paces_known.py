"""Times as they ran here: said where the minutes are entered and on hover, taken
over by a press, never of themselves.
"""

from __future__ import annotations

import shutil

import pytest
from msgspec.structs import replace

from jobsheet.gui.desk.paces_known import paces_known
from jobsheet.gui.places.ran.ran_window import RanWindow
from jobsheet.gui.places.shelf.chosen_facts import facts_of
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.runs_kept import entry_of, keep
from jobsheet.storage.kept.own_pace import own_pace
from jobsheet.storage.records.run_log import as_written


@pytest.fixture
def made(show, samples, tmp_path):
    """A job that was made on six days: setting up took twice what was
    planned, the rest half as long again.
    """
    path = tmp_path / "plate.yaml"
    shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", path)
    window = show(str(path))
    reckoned = window.desk.reckoned
    planned = minutes_of_job(reckoned)
    for day in range(1, 7):
        base = entry_of(path, window.desk.job, f"2026-11-{day:02d}", "Trainer")
        entry = replace(
            base, about="minutes", set_up=1, setting_up=2 * planned.set_up, cutting=1.5 * (planned.whole - planned.set_up)
        )  # fmt: skip
        assert as_written(entry)
        keep(path, (entry,), lambda: reckoned)
    window.parts.when_rested()
    return window, path, planned


def time_cell(window):
    return window.bench.title.cells["time"]


def test_the_factors_are_said_on_hover_and_on_the_shelf_and_nothing_else_changes(made):
    window, path, planned = made
    assert "set-up × 2 (" in time_cell(window).toolTip()
    assert "the work × 1.5 (" in time_cell(window).toolTip()
    assert "own times" not in time_cell(window).shown.value
    assert minutes_of_job(window.desk.reckoned) == planned
    said = [row for title, rows in facts_of(path).blocks if title.startswith("Times") for row in rows]
    assert any("set-up × 2 (" in words for _, words in said)


def test_a_press_takes_them_over_for_the_time_that_is_shown_and_another_gives_them_back(made):
    window, _, planned = made
    window.actions_by_id["ran"].trigger()
    (place,) = window.findChildren(RanWindow)
    assert place.foot.pace.isVisible()
    assert any("Against what was planned: set-up × 2" in words for words, _ in place.foot._lines())
    place.foot.pace.click()
    own = own_pace()
    assert (round(own.set_up, 3), round(own.work, 3)) == (2.0, 1.5)
    ran = round((2 * planned.set_up + 1.5 * (planned.whole - planned.set_up)) / 60)
    assert time_cell(window).shown.value == f"{ran // 60} h {ran % 60} min by your own times"
    assert "planned" in time_cell(window).toolTip()
    assert minutes_of_job(window.desk.reckoned) == planned
    place.foot.pace.click()
    assert own_pace() is None
    assert "own times" not in time_cell(window).shown.value
    place.close()


def test_a_job_without_runs_has_no_button(window):
    assert paces_known(None) == ()
    assert not time_cell(window).shown.more
