"""What happened, typed at the machine: a digit a step, sizes, minutes; kept beside the job
and in the proof log, and taken back.
"""

import shutil
from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.gui.forms import ask
from jobsheet.gui.places.ran.ran_window import RanWindow
from jobsheet.reckoning.run_words import day_words
from jobsheet.reckoning.runs_kept import this_moment
from jobsheet.storage.records.proof_log import read_log
from jobsheet.storage.records.run_log import path_beside, read_runs
from jobsheet.units.grammar import read

MACHINE = "knee-mill-k-2"
#: Between two keys of somebody who looks up in between [ms].
PACE = 5
KEYS = Qt.Key


@pytest.fixture
def job(samples, tmp_path):
    return shutil.copy(samples / "hm-103-pivot-block.yaml", tmp_path / "pivot.yaml")


@pytest.fixture
def opened(show, qtbot):
    """The place, opened by its key from a set-up of the job."""

    def opened(job, number=5):
        window = show(str(job))
        key = next(one.key for one in window.desk.job.set_ups if one.number == number)
        window.parts.hand.ruled.focus_line(key)
        QTest.keyClick(window, "h", Qt.KeyboardModifier.ControlModifier)
        place = next(one for one in window.findChildren(RanWindow) if one.isVisible())
        place.activateWindow()
        place.steps.setFocus()
        return place

    return opened


@pytest.fixture
def place(opened, job):
    found = opened(job)
    yield found
    found.desk.go(found.desk.asked.set_up.key)  # what a test left unkept is nothing to ask about
    found.close()


def press(widget, keys):
    for key in keys:
        QTest.keyClick(widget, key, delay=PACE)


def standing(job, about="step"):
    return [one for one in read_runs(job)[0].standing if one.about == about]


def ctrl_enter(place):
    QTest.keyClick(place.focusWidget() or place, KEYS.Key_Return, Qt.KeyboardModifier.ControlModifier)


def test_it_opens_on_the_set_up_one_is_on_with_the_steps_that_cut(place):
    assert [one.number for one in place.desk.asked.steps] == [60, 70, 80, 84, 90]  # 55 finds an edge
    assert [(one.size, one.words) for one in place.desk.asked.sizes] == [
        ("80 ±0.1", "79.9 to 80.1"),
        ("60 ±0.1", "59.9 to 60.1"),
    ]
    assert place.steps.step.number == 60
    assert place.steps.hasFocus()


def test_a_digit_a_step_and_all_of_it_kept_as_one(place, job):
    press(place.steps, "1")
    assert place.steps.step.number == 70
    press(place.steps, "22")  # noisy, in layer 2 of three
    assert place.steps.step.number == 80
    press(place.steps, "0")
    assert not path_beside(job).exists()  # nothing is recorded before it is kept
    ctrl_enter(place)
    found = [(one.number, one.outcome, one.layer) for one in standing(job)]
    assert found == [(60, "clean", 0), (70, "noisy", 2), (80, "not cut", 0)]
    assert sorted(one.outcome for one in read_log(MACHINE).standing) == ["clean", "noisy"]
    assert "3 entries in pivot.ran.txt" in place.foot.accessibleName()
    assert "60, 70" in place.foot.accessibleName()


def test_what_goes_to_the_proof_log_is_said_before_and_may_be_taken_off(place, job):
    press(place.steps, "1")
    press(place.steps, "20")
    assert "70 noisy at 4 mm" in place.foot.accessibleName()
    QTest.mouseClick(place.foot.proof, Qt.MouseButton.LeftButton)
    assert "proof log gets nothing" in place.foot.accessibleName()
    ctrl_enter(place)
    assert len(standing(job)) == 2
    assert read_log(MACHINE).standing == ()


def test_which_layer_is_asked_only_where_there_were_several_and_it_was_not_clean(place):
    press(place.steps, "1")
    assert place.steps.asks == "outcome"
    press(place.steps, "4")
    assert place.steps.asks == "layer"
    assert "which layer" in place.steps.accessibleName()
    press(place.steps, "9")  # there are three
    assert place.steps.asks == "layer"
    press(place.steps, "3")
    press(place.steps, "5")  # spotting has no layers
    assert place.steps.step.number == 84


def test_what_slipped_is_asked_and_without_it_nothing_is_kept(place, job):
    press(place.steps, "6")
    ctrl_enter(place)
    assert "say what, vice, holder or shank" in place.foot.accessibleName()
    assert not path_beside(job).exists()
    press(place.steps, "10")  # the vice, in all layers
    ctrl_enter(place)
    (one,) = standing(job)
    assert (one.outcome, one.slipped, one.layer) == ("slipped", "vice", 0)


def test_a_wrong_digit_is_typed_over_before_and_after_it_was_kept(place, job):
    press(place.steps, "1")
    QTest.keyClick(place.steps, KEYS.Key_Up, delay=PACE)
    press(place.steps, "22")
    ctrl_enter(place)
    assert [one.outcome for one in standing(job)] == ["noisy"]
    QTest.keyClick(place.steps, KEYS.Key_Up, delay=PACE)
    press(place.steps, "1")
    ctrl_enter(place)
    assert [one.outcome for one in standing(job)] == ["clean"]
    assert [one.outcome for one in read_log(MACHINE).standing] == ["clean"]
    assert len(read_log(MACHINE).trials) == 2  # both stay in the file
    QTest.keyClick(place.steps, KEYS.Key_Up, delay=PACE)
    QTest.keyClick(place.steps, KEYS.Key_Backspace, delay=PACE)
    ctrl_enter(place)
    assert standing(job) == []
    assert read_log(MACHINE).standing == ()
    assert "clean was taken back" in place.steps.accessibleName()


def test_digits_go_to_a_size_while_it_has_the_focus_and_what_is_out_is_said_and_kept(place, job):
    QTest.keyClick(place.steps, KEYS.Key_Tab)
    first, second = place.sizes.fields.values()
    assert first.hasFocus()
    press(first, "80.12")
    assert place.desk.said.steps == {}
    size, other = place.desk.asked.sizes
    assert place.sizes.off(size) == "0.02 over"
    QTest.keyClick(first, KEYS.Key_Return)
    assert second.hasFocus()
    press(second, "59.9")
    assert place.sizes.off(other) == ""  # the limit itself is good
    for _ in range(8):
        QTest.keyClick(second, KEYS.Key_Backspace)
    press(second, "59.85")
    assert place.sizes.off(other) == "0.05 under"
    ctrl_enter(place)
    found = {one.size: one.found for one in standing(job, "size")}
    assert found == {"80 ±0.1": pytest.approx(read("80.12 mm", "length")), "60 ±0.1": pytest.approx(0.05985)}


def test_the_keys_on_the_screen_write_where_the_hand_was(place):
    pad = {one.text(): one for one in place.sizes.keys}
    for key in ("8", "0", ".", "0", "5"):
        QTest.mouseClick(pad[key], Qt.MouseButton.LeftButton)
    first = next(iter(place.sizes.fields.values()))
    assert first.text() == "80.05"
    QTest.mouseClick(pad["erase"], Qt.MouseButton.LeftButton)
    assert place.desk.said.sizes[place.desk.asked.sizes[0].key].found == pytest.approx(0.0800)
    assert first.text() == "80.0"


def test_a_size_that_cannot_be_read_keeps_its_text_and_is_named(place, job):
    first = next(iter(place.sizes.fields.values()))
    first.setFocus()
    press(first, "wide")
    ctrl_enter(place)
    assert "Size 80 ±0.1" in place.foot.accessibleName()
    assert first.text() == "wide"
    assert not path_beside(job).exists()


def test_minutes_begin_at_the_plan_and_are_kept_only_when_said(place, job):
    more = place.sizes.more["cutting"]
    for _ in range(3):
        QTest.mouseClick(more, Qt.MouseButton.LeftButton)
    planned = place.desk.asked.to_cut
    field = place.sizes.times["setting_up"]
    field.setFocus()
    press(field, "35")
    ctrl_enter(place)
    (one,) = standing(job, "minutes")
    assert (one.set_up, one.setting_up, one.cutting) == (5, 35 * 60, (planned + 2) * 60)
    assert standing(job) == []


def test_what_one_would_change_in_ready_words_and_one_line(place, job):
    changes = place.changes
    for word in ("nothing", "slower", "lighter"):
        changes.words[word].setFocus()
        QTest.keyClick(changes.words[word], KEYS.Key_Space)
    changes.note.setFocus()
    press(changes.note, "it rang at 4")
    ctrl_enter(place)
    (one,) = standing(job, "change")
    assert (one.change, one.note, one.set_up) == ("lighter, slower", "it rang at 4", 5)


def test_what_really_ran_is_opened_by_one_key_and_is_what_counts(place, job):
    press(place.steps, "1")
    press(place.steps, "1")
    QTest.keyClick(place.steps, KEYS.Key_Up)
    press(place.steps, "r")
    fields = place.steps.answers.fields
    assert fields["speed"].hasFocus()
    press(fields["speed"], "250")
    QTest.keyClick(fields["speed"], KEYS.Key_Return)
    press(fields["depth"], "2")
    QTest.keyClick(fields["depth"], KEYS.Key_Return)
    QTest.keyClick(fields["seconds"], KEYS.Key_Return)
    assert place.steps.hasFocus()
    ctrl_enter(place)
    one = next(one for one in standing(job) if one.number == 70)
    assert (one.speed, one.depth, one.seconds) == (pytest.approx(250 / 60), pytest.approx(0.002), None)
    trial = next(one for one in read_log(MACHINE).standing if one.job.endswith("step 70"))
    assert dict(trial.step)["depth"] == "2 mm"


def test_take_back_leaves_it_on_the_screen_and_it_can_be_kept_again(place, job):
    press(place.steps, "11")
    ctrl_enter(place)
    QTest.keyClick(place.steps, KEYS.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert standing(job) == []
    assert read_log(MACHINE).standing == ()
    assert len(place.desk.said.steps) == 2
    ctrl_enter(place)
    assert [one.number for one in standing(job)] == [60, 70]
    assert len(read_log(MACHINE).standing) == 2


def test_another_day_is_typed_and_what_is_kept_for_it_can_be_kept_again_after_taking_back(place, job):
    day = (date.fromisoformat(this_moment()[0]) - timedelta(days=2)).isoformat()
    press(place.steps, "1")
    place.head.day.setFocus()
    place.head.day.selectAll()
    press(place.head.day, day_words(day))
    QTest.keyClick(place.head.day, KEYS.Key_Return)
    place.steps.setFocus()
    ctrl_enter(place)
    assert [one.date for one in standing(job)] == [day]
    for _ in range(2):  # the very same words on a day without a time of day
        QTest.keyClick(place.steps, KEYS.Key_Z, Qt.KeyboardModifier.ControlModifier)
        assert standing(job) == []
        ctrl_enter(place)
        assert [one.outcome for one in standing(job)] == ["clean"]


def test_a_day_that_is_none_or_still_to_come_is_one_sentence(place):
    today = place.desk.day
    for text, sentence in (("soon", "not a day"), ("2999-01-01", "still to come")):
        place.head.day.setFocus()
        place.head.day.selectAll()
        press(place.head.day, text)
        QTest.keyClick(place.head.day, KEYS.Key_Return)
        assert sentence in place.foot.accessibleName()
        assert place.desk.day == today


def test_it_is_shown_again_when_the_place_is_opened_again(job, opened):
    place = opened(job)
    press(place.steps, "1")
    press(place.steps, "31")
    place.head.role.setFocus()
    press(place.head.role, "Apprentice B")
    ctrl_enter(place)
    place.close()
    again = opened(job)
    assert {key: one.outcome for key, one in again.desk.said.steps.items()} == {
        "end-right": "clean",
        "step": "slowed",
    }
    assert again.steps.step.number == 80  # the first of which nothing is said
    assert again.desk.role == "Apprentice B"
    assert not again.desk.unkept
    again.close()


def test_a_disk_that_refuses_is_one_sentence_and_what_was_said_stays(place, job, monkeypatch):
    real = Path.open

    def full(path, mode="r", *rest, **more):
        if "a" in mode and path == path_beside(job):
            raise OSError(28, "No space left on device")
        return real(path, mode, *rest, **more)

    press(place.steps, "1")
    monkeypatch.setattr(Path, "open", full)
    ctrl_enter(place)
    said = place.foot.accessibleName()
    assert "No space left" in said
    monkeypatch.setattr(Path, "open", real)
    assert standing(job) == []
    assert len(place.desk.said.steps) == 1
    place.steps.setFocus()
    ctrl_enter(place)
    assert len(standing(job)) == 1


def test_two_windows_at_once_never_write_one_step_twice(place, job, opened):
    other = opened(job)
    press(place.steps, "1")
    press(other.steps, "20")
    place.keep()
    other.keep()
    assert "meanwhile" in other.foot.accessibleName()
    assert [one.outcome for one in standing(job)] == ["clean"]
    other.keep()  # having looked
    assert [one.outcome for one in standing(job)] == ["noisy"]
    assert len(read_log(MACHINE).standing) == 1
    other.close()


def test_a_job_without_a_file_is_saved_first_and_by_a_button(window, qtbot, tmp_path, monkeypatch):
    window.actions_by_id["ran"].trigger()
    place = next(iter(window.findChildren(RanWindow)))
    assert "save it first" in place.foot.accessibleName()
    assert not place.foot.keep.isVisible()
    target = tmp_path / "mine.yaml"
    monkeypatch.setattr(ask, "save_path", lambda *_: target)
    QTest.mouseClick(place.foot.save, Qt.MouseButton.LeftButton)
    assert place.desk.plan.path == target
    press(place.steps, "1")
    place.keep()
    assert len(standing(target)) == 1
    place.close()


def test_a_job_changed_since_it_was_saved_says_which_plan_it_is_kept_with(opened, job):
    from jobsheet.edit.commands import SetField
    from jobsheet.storage.check_code import check_code

    code = check_code(Path(job).read_bytes())
    place = opened(job)
    place.parent().desk.do(SetField("step", "depth", "6"))
    place.desk.load()
    place.refresh()
    assert f"the saved plan, check {code}" in place.foot.accessibleName()
    press(place.steps, "11")
    assert "70 clean at 4 mm" in place.foot.accessibleName()  # as it was printed, not as it is now
    place.keep()
    assert {one.plan for one in standing(job)} == {code}
    place.close()


def test_what_was_not_kept_is_asked_about(place, job, monkeypatch):
    press(place.steps, "1")
    monkeypatch.setattr(ask, "keep_run", lambda _parent: "cancel")
    place.close()
    assert place.isVisible()
    monkeypatch.setattr(ask, "keep_run", lambda _parent: "keep")
    place.to_set_up("set-up-6")
    assert len(standing(job)) == 1
    assert place.desk.asked.set_up.number == 6


def test_verdicts_of_the_window_follow(place, job):
    window = place.parent()
    before = window.desk.outcome("step").limits
    press(place.steps, "1")
    press(place.steps, "1")
    ctrl_enter(place)
    after = window.desk.outcome("step").limits
    assert [one.verdict for one in before] != [one.verdict for one in after]


def test_everything_has_a_name(place):
    from PySide6.QtWidgets import QAbstractButton, QLineEdit

    for widget in (*place.findChildren(QAbstractButton), *place.findChildren(QLineEdit)):
        assert widget.accessibleName().strip(), widget


@pytest.mark.parametrize("size", [(1440, 900), (1000, 700)])
def test_targets_are_large_enough_for_a_thumb_and_lie_apart(place, size):
    from jobsheet.gui.places.ran.big_button import BigButton

    place.resize(*size)
    press(place.steps, "161")
    place.place()
    buttons = [one for one in place.findChildren(BigButton) if one.isVisible()]
    assert all(one.height() >= 56 for one in buttons)
    for one in buttons:
        for other in buttons:
            if one is not other and one.parent() is other.parent():
                assert not one.geometry().adjusted(0, 0, 7, 7).intersects(other.geometry()), (
                    one.text(),
                    other.text(),
                )


def test_what_was_written_in_the_shell_is_shown_here(opened, job):
    from jobsheet.__main__ import main

    said = ("60=1", "--size", "80 ±0.1=80.02 mm", "--set-up", "5", "--cutting", "21", "--change", "slower")
    assert main(["ran", str(job), *said]) == 0
    place = opened(job)
    assert {one.outcome for one in place.desk.said.steps.values()} == {"clean"}
    assert next(iter(place.sizes.fields.values())).text() == "80.02"
    assert place.sizes.times["cutting"].text() == "21"
    assert place.desk.changes == ("slower",)
    assert not place.desk.unkept
    place.close()


def test_a_size_that_was_taken_back_is_said_and_the_look_follows(place, job):
    from jobsheet.gui.ink import look

    first = next(iter(place.sizes.fields.values()))
    first.setFocus()
    press(first, "80.12")
    ctrl_enter(place)
    for _ in range(6):
        QTest.keyClick(first, KEYS.Key_Backspace)
    ctrl_enter(place)
    assert standing(job, "size") == []
    assert [one.found for one in place.desk.back["size", place.desk.asked.sizes[0].key]] == [
        pytest.approx(0.08012)
    ]
    light = first.styleSheet()
    look.apply("dark")
    place.refresh()
    assert first.styleSheet() != light
    look.apply("light")


def test_called_once_more_it_comes_to_the_front_with_the_set_up_one_is_on(place):
    window = place.parent()
    window.parts.hand.ruled.focus_line("set-up-6")
    window.actions_by_id["ran"].trigger()
    assert [one for one in window.findChildren(RanWindow) if one.isVisible()] == [place]
    assert place.desk.asked.set_up.number == 6
    press(place.steps, "1")
    window.parts.hand.ruled.focus_line("set-up-5")
    window.actions_by_id["ran"].trigger()
    assert place.desk.asked.set_up.number == 6  # something is not kept there


def test_what_was_said_of_one_job_is_never_said_of_another(place, job, samples, tmp_path, monkeypatch):
    press(place.steps, "1")
    other = shutil.copy(samples / "hm-104-cover-plate.yaml", tmp_path / "cover.yaml")
    place.parent().parts.files.open_path(Path(other))
    place.desk.load()
    place.refresh()
    assert place.desk.plan.path == Path(other)
    assert not place.desk.unkept
    assert place.desk.said.steps == {}


def test_f1_opens_the_page_of_this_place(place):
    from jobsheet.gui.desk.help_topic import page_near

    found = page_near(place.steps, place.parent().parts._own_pages())
    assert found.id == "place:ran"
    told = dict(found.lines)
    assert told["1 to 8, 0"].startswith("how the open step went")
    assert "Ctrl + H" in told["What happened"]
