"""What the machine answers about the open row comes after the figures, and pressing it is an edit."""

import pytest

from jobsheet.paths import sample_jobs
from jobsheet.reckoning.answers.all_answers import answers_in_parts
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def _opened(show, qtbot, name, number):
    window = show(str(sample_jobs() / f"{name}.yaml"))
    key = next(one.key for _, one in window.desk.job.operations() if one.number == number)
    window.open_key(key)
    qtbot.waitUntil(lambda: window.parts.answering.done and window.open_row.readings is not None)
    return window, key


def test_readings_of_the_scenario_stand_in_the_open_row(show, qtbot):
    """HM-102, hole 2: X 90 is 17 + .1433, line 143, −0.008 mm (demo scenario, section 5)."""
    window, _ = _opened(show, qtbot, "hm-102-slide-plate", 60)
    spoken = window.open_row.readings.accessibleName()
    assert "X 17 + .1433 line 143, −0.008 mm" in spoken
    assert "Y 9 + .1685 line 169, +0.013 mm" in spoken


def test_the_speeds_beside_are_shown_and_pressing_one_is_one_edit(show, qtbot):
    """HM-104, step 60: 477 rpm lies between 300 (9.4 m/min) and 500
    (15.7 m/min) (demo scenario, section 7).
    """
    window, key = _opened(show, qtbot, "hm-104-cover-plate", 60)
    beside = window.open_row.margin.beside
    found = beside.answers.neighbours
    assert found.at.cutting_shown == "9.4 m/min"
    assert (found.above.marked, found.above.cutting_shown) == ("500", "15.7 m/min")
    button = next(button for button in beside.buttons if button.text() == "500 rpm")
    button.click()
    assert window.desk.job.find(key)[1].fields.spindle.text == "500 rpm"
    window.parts.edits.history.undo()
    assert window.desk.job.find(key)[1].fields.spindle.text == "300 rpm"


def test_a_pace_beyond_the_hand_is_mended_by_what_is_recommended(show, qtbot, type_in):
    """900 rpm with 0.05 a tooth is 72 turns a minute; 560 rpm gives 44.8 (demo scenario, section 3b)."""
    window, key = _opened(show, qtbot, "hm-100-drilled-plate-b1", 20)
    type_in(window, "spindle", "900 rpm")
    line = window.open_row.suggestions
    qtbot.waitUntil(lambda: window.parts.answering.done and "spindle 560 rpm" in line.item.words)
    line.use.click()
    assert window.desk.job.find(key)[1].fields.spindle.text == "560 rpm"
    qtbot.waitUntil(lambda: window.parts.answering.done and not line.item.words)


def test_the_stopwatch_gives_the_feed_back(show, qtbot):
    """32 mm in 60 s is 32 mm/min (by hand), half of the 64 that HM-101 has planned."""
    window, key = _opened(show, qtbot, "hm-101-setting-block", 20)
    beside = window.open_row.margin.beside
    beside.clock.setChecked(True)
    for name, text in (("length", "32"), ("seconds", "60")):
        qtbot.keyClicks(beside.watch.form.fields[name].box, text)
    assert "32 mm/min" in beside.watch.words[0]
    assert "50 % of what is planned" in beside.watch.words[0]
    beside.watch.button.click()
    assert window.desk.job.find(key)[1].fields.feed.text == "32 mm/min"


def test_a_depth_beyond_is_recommended_in_layers(show, qtbot, type_in):
    """What is recommended is carried: after writing it in no limit is beyond."""
    window, key = _opened(show, qtbot, "hm-101-setting-block", 20)
    type_in(window, "depth", "6")
    line = window.open_row.suggestions
    qtbot.waitUntil(lambda: window.parts.answering.done and "depth per layer" in line.item.words)
    line.use.click()
    verdicts = {limit.name: limit.verdict for limit in window.desk.outcome(key).limits}
    assert "beyond" not in verdicts.values()


@pytest.mark.parametrize("name", sorted(path.stem for path in sample_jobs().glob("*.yaml")))
def test_every_step_of_every_sample_is_answered_to_the_end(name):
    """The last part says that it is the last; nothing raises."""
    job = read_job(str(sample_jobs() / f"{name}.yaml"))
    reckoned = Reckoner().reckon(job)
    for set_up, operation in job.operations():
        parts = list(answers_in_parts(set_up, operation, reckoned))
        assert [part.whole for part in parts] == [False] * (len(parts) - 1) + [True], operation.number


def test_what_a_list_of_dials_leaves_out_is_said(show, qtbot, type_in):
    """Twenty layers: eight readings are shown, and where the other twelve begin and end."""
    window, _ = _opened(show, qtbot, "hm-100-drilled-plate-b1", 20)
    type_in(window, "depth", "4")
    type_in(window, "layer", "0.2")
    spoken = window.open_row.readings
    qtbot.waitUntil(lambda: "12 more layers, 0 + 1.80 to 2 + 0.00" in spoken.accessibleName())
    assert "Head: 0 where this cutter touches the top." in spoken.accessibleName()
