"""A plan that was printed is closed: saving a change gives the next number, the old one is looked at,
brought back, and never written over.
"""

from __future__ import annotations

import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.edit.commands import SetField
from jobsheet.gui.forms import ask
from jobsheet.gui.places.plans.plans_window import PlansWindow
from jobsheet.reckoning import runs_kept
from jobsheet.review.engine import reviewed
from jobsheet.storage.job_file import read_job
from jobsheet.storage.kept.closed_plans import closed_plans, folder_of
from jobsheet.storage.kept.kept_aside import keep_aside
from tests.gui.test_revision_edits import answer

ROUGH = "face-rough"


@pytest.fixture
def printed(show, samples, tmp_path, monkeypatch):
    """A job in a file, whose sheets were exported."""
    path = tmp_path / "plate.yaml"
    shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", path)
    window = show(str(path))
    monkeypatch.setattr(ask, "export_path", lambda *_: tmp_path / "plate.pdf")
    assert window.parts.exporting.export_pdf()
    return window, path


def deepen(window, text="0.5 mm"):
    window.desk.do(SetField(ROUGH, "depth", text))


def test_printing_keeps_the_plan_as_it_was(printed):
    _, path = printed
    (kept,) = closed_plans(path)
    assert (kept.number, kept.how) == (0, "printed")
    assert read_job(kept.path) == read_job(path)


def test_saving_a_change_gives_the_next_number_and_what_changed(printed):
    window, path = printed
    deepen(window)
    seen = answer([None, "Apprentice B"])
    assert window.parts.files.save()
    assert seen == [["step 20, depth: 0.4 → 0.5 mm", "Trainer"]]
    first, second = read_job(path).revisions
    assert (first.number, first.changed, first.drawing) == (1, "first plan", "A")
    assert (second.number, second.changed, second.who) == (2, "step 20, depth: 0.4 → 0.5 mm", "Apprentice B")
    deepen(window, "0.6 mm")  # plan 2 has not left the desk: it goes on
    assert window.parts.files.save()
    assert [one.number for one in read_job(path).revisions] == [1, 2]


def test_called_off_nothing_is_saved(printed):
    window, path = printed
    before = path.read_bytes()
    deepen(window)
    answer([None, None], agree=False)
    assert not window.parts.files.save()
    assert path.read_bytes() == before
    assert window.desk.history.changed


def test_what_changes_nothing_of_the_plan_needs_no_number(printed):
    window, path = printed
    deepen(window)
    window.actions_by_id["undo"].trigger()
    assert window.parts.files.save()
    assert read_job(path).revisions == ()


def test_an_earlier_plan_is_brought_back_under_the_next_number(printed):
    window, path = printed
    deepen(window)
    answer([None, None])
    assert window.parts.files.save()
    place = PlansWindow(window.parts.visit)
    place.show()
    assert place.facts.facts.blocks[0][1] == (("", "step 20, depth: 0.4 → 0.5 mm"),)
    QTest.keyClick(place.back, Qt.Key.Key_Space)
    QApplication.processEvents()
    assert read_job(path).operations()[1][1].fields.depth.text == "0.5 mm"
    assert window.desk.job.operations()[1][1].fields.depth.text == "0.4"
    assert [one.number for one in window.desk.job.revisions] == [1, 2, 3]
    assert window.desk.job.revisions[-1].changed.startswith("as the plan printed ")
    window.actions_by_id["undo"].trigger()
    assert window.desk.job.operations()[1][1].fields.depth.text == "0.5 mm"


def test_a_closed_plan_that_is_opened_is_a_copy(printed):
    window, path = printed
    (kept,) = closed_plans(path)
    assert window.parts.files.open_path(kept.path)
    assert window.desk.path is None


def test_what_was_changed_in_the_folder_is_not_brought_back(printed):
    window, path = printed
    (kept,) = closed_plans(path)
    kept.path.write_bytes(kept.path.read_bytes().replace(b"depth: 0.4", b"depth: 0.9"))
    place = PlansWindow(window.parts.visit)
    place.show()
    assert "was changed since it left the desk" in place.facts.facts.problem
    assert not place.back.isEnabled()
    place.close()


def test_the_drawing_is_asked_for_on_a_later_day(printed, monkeypatch):
    window, path = printed
    asked = []

    def told(_parent, sentence, now):
        asked.append((sentence, now))
        return "B"

    monkeypatch.setattr(ask, "drawing_revision", told)
    assert window.parts.files.open_path(path)
    assert not asked  # the same day: the paper lies on the bench
    monkeypatch.setattr(runs_kept, "this_moment", lambda: ("2099-01-01", "08:00:00"))
    assert window.parts.files.open_path(path)
    ((sentence, now),) = asked
    assert sentence.endswith(
        ": made from drawing HM-100, revision A. At which revision is the drawing today?"
    )
    assert now == "A"
    job = window.desk.job
    assert job.part.revision == "B"
    assert [(one.number, one.changed, one.drawing) for one in job.revisions] == [(1, "first plan", "A")]
    reckoned = window.desk.reckoned
    said = [one.message for one in reviewed(reckoned.job, reckoned).open]
    assert any(words.startswith("The drawing is at revision B; plan 1 was made from A") for words in said)
    answer([None, None])  # and saving it asks for the next number all the same
    assert window.parts.files.save()
    assert [one.number for one in read_job(path).revisions] == [1, 2]


def test_the_drawing_is_asked_for_where_the_program_itself_opens_the_job(printed, show, qtbot, monkeypatch):
    """At its start, with the last job or the one of the command line: once the
    window is there, and never before.
    """
    _, path = printed
    asked = []

    def told(parent, sentence, _now):
        asked.append((parent.later._begun, bool(parent.actions_by_id), sentence))

    monkeypatch.setattr(ask, "drawing_revision", told)
    monkeypatch.setattr(runs_kept, "this_moment", lambda: ("2099-01-01", "08:00:00"))
    again = show(str(path))
    qtbot.waitUntil(lambda: bool(asked))
    ((painted, ready, sentence),) = asked
    assert painted
    assert ready
    assert sentence.endswith("At which revision is the drawing today?")
    assert not again.desk.history.changed
    QTest.qWait(30)
    assert len(asked) == 1  # once, however often it is painted


def test_a_folder_that_cannot_be_written_is_said_and_the_sheets_are_there(
    show, samples, tmp_path, monkeypatch
):
    path = tmp_path / "plate.yaml"
    shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", path)
    folder_of(path).write_text("in the way", encoding="utf-8")
    window = show(str(path))
    said = []
    monkeypatch.setattr(window.parts.exporting, "_say", said.append)
    monkeypatch.setattr(ask, "export_path", lambda *_: tmp_path / "plate.pdf")
    assert window.parts.exporting.export_pdf()
    assert (tmp_path / "plate.pdf").exists()
    assert "The printed plan could not be kept beside the job" in said[0]


def test_what_somebody_else_saved_is_opened_as_a_copy_too(printed):
    window, path = printed
    kept = keep_aside(path, path.read_bytes() + b"# theirs\n", "2026-11-30")
    assert window.parts.files.open_path(kept)
    assert window.desk.path is None


def test_what_a_plan_changed_is_heavy_in_its_picture(printed, qtbot, monkeypatch, tmp_path):
    window, _ = printed
    window.desk.do(SetField("drill", "cutter", "drill 5.2, drawer 3"))
    answer([None, None])
    assert window.parts.files.save()
    monkeypatch.setattr(ask, "export_path", lambda *_: tmp_path / "second.pdf")
    assert window.parts.exporting.export_pdf()
    place = PlansWindow(window.parts.visit)
    place.show()
    assert len(place.rows.plans) == 2
    qtbot.waitUntil(lambda: place.facts.facts.picture is not None)
    assert ("Heavy lines", "what this plan changed") in place.facts.facts.facts
    assert any(getattr(item, "weight", "") == "cut" for item in place.facts.facts.picture.items)
    QTest.keyClick(place.rows, Qt.Key.Key_Down)
    qtbot.waitUntil(lambda: place.facts.facts.picture is not None)
    assert not any(getattr(item, "weight", "") == "cut" for item in place.facts.facts.picture.items)
    place.close()
