"""A job goes to the disk and back; nothing that is not saved is lost."""

import pytest

from jobsheet import paths
from jobsheet.__main__ import main
from jobsheet.gui.desk import journal
from jobsheet.gui.forms import ask
from jobsheet.gui.start import start
from jobsheet.remembered import remembered
from jobsheet.storage.job_file import read_job
from tests.gui.conftest import PATIENCE


@pytest.fixture
def saved(window, tmp_path, monkeypatch):
    path = tmp_path / "plate.yaml"
    monkeypatch.setattr(ask, "save_path", lambda *_: path)
    assert window.parts.files.save()
    return path


def words(window):
    return window.bench.title.cells["file"].shown.value


def test_a_sample_is_an_unsaved_copy(window):
    assert window.desk.path is None
    assert words(window) == "sample, not saved"


def test_what_is_remembered_of_a_plan_goes_with_it(window, saved):
    @remembered(4)
    def twice(length):
        return 2 * length

    assert twice(3) == 6
    assert twice.cache_info().currsize == 1
    window.parts.files.open_path(saved)
    assert twice.cache_info().currsize == 0


def test_save_asks_where_and_the_file_is_the_job(window, saved):
    assert read_job(saved) == window.desk.job
    assert words(window).startswith("saved ")


def test_saved_and_opened_again_it_is_the_same(window, saved, type_in, show):
    window.open_key("face-rough")
    type_in(window, "depth", "25 thou")
    assert words(window) == "changed, not saved"
    window.parts.files.save()
    again = show(str(saved))
    assert again.desk.job == window.desk.job
    assert again.desk.job.find("face-rough")[1].fields.depth.text == "25 thou"


def test_a_file_changed_outside_is_not_overwritten(window, saved, type_in, monkeypatch):
    saved.write_text(saved.read_text() + "\n", encoding="utf-8")
    theirs = saved.read_text()
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    asked = []
    monkeypatch.setattr(ask, "changed_outside", lambda _window, sentence: asked.append(sentence) or "cancel")
    assert not window.parts.files.save()
    assert "changed by something else" in asked[0]
    assert saved.read_text() == theirs
    monkeypatch.setattr(ask, "changed_outside", lambda *_: "overwrite")
    assert window.parts.files.save()
    assert read_job(saved) == window.desk.job


def test_a_bad_file_is_said_with_its_lines_and_the_desk_stays(window, tmp_path, monkeypatch):
    bad = tmp_path / "bad.yaml"
    bad.write_text("format: 1\nmachine: nothing-there\n", encoding="utf-8")
    said = []
    monkeypatch.setattr(ask, "tell", lambda _window, sentence: said.append(sentence))
    before = window.desk.job
    assert not window.parts.files.open_path(bad)
    assert "line" in said[0]
    assert window.desk.job is before


def test_closing_asks_only_when_something_would_be_lost(window, type_in, monkeypatch):
    assert window.parts.files.may_put_away()
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    asked = []
    monkeypatch.setattr(ask, "save_changes", lambda _window, name: asked.append(name) or "cancel")
    assert not window.parts.files.may_put_away()
    assert asked == ["HM-100"]


def test_the_journal_brings_back_job_and_half_typed_texts(window, type_in, show):
    window.open_key("face-rough")
    type_in(window, "feed_per_tooth", "0.04")
    type_in(window, "depth", "0.3 im")
    window.parts.files.keeping.write()
    # The program ends without a word: its lock goes with it, its journal stays.
    window.parts.files.keeping.journal._lock.unlock()
    after = show()
    line = after.bench.column.ruled.notice_line
    assert "HM-100 was not saved" in line.text
    line.buttons[0].click()
    assert after.desk.job.find("face-rough")[1].fields.feed_per_tooth.text == "0.04"
    assert after.desk.history.drafts["face-rough", "depth"] == "0.3 im"
    assert words(after) == "recovered, not saved"
    window.parts.files.keeping.journal._lock = None


def test_the_journal_of_a_living_window_is_not_offered(window, type_in, show):
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    window.parts.files.keeping.write()
    assert journal.left_behind() == []


def test_saving_clears_the_journal(window, saved, type_in):
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    window.parts.files.keeping.write()
    assert list(journal.folder().glob("*.json"))
    window.parts.files.save()
    assert not list(journal.folder().glob("*.json"))


def test_what_nobody_foresaw_is_logged_and_ends_with_a_code(home, monkeypatch, capsys):
    guard = start.Guard()
    monkeypatch.setattr(guard, "_show", lambda error: None)
    try:
        1 / 0  # noqa: B018
    except ZeroDivisionError as error:
        guard(type(error), error, error.__traceback__)
    assert guard.broken
    assert "ZeroDivisionError: division by zero" in (home / "problems.log").read_text(encoding="utf-8")
    assert start.BROKEN != 0


def test_the_sheets_are_exported_with_the_job_inside(window, tmp_path, monkeypatch):
    pytest.importorskip("reportlab")
    path = tmp_path / "plate.pdf"
    monkeypatch.setattr(ask, "export_path", lambda *_: path)
    assert window.parts.exporting.export_pdf()
    assert path.read_bytes().startswith(b"%PDF")


def test_the_preview_shows_the_pages_and_takes_initials(window, qtbot):
    pytest.importorskip("reportlab")
    from jobsheet.gui.pages.print_window import PrintWindow

    preview = PrintWindow(window.desk, window.parts.exporting.write, window)
    qtbot.addWidget(preview)
    preview.show()
    qtbot.waitUntil(lambda: not preview.waiting, timeout=PATIENCE)
    pages = preview.view.count
    assert pages >= 2
    before = preview.pdf
    for box in preview.initials.values():
        qtbot.keyClicks(box, "TR")
    preview.make()
    qtbot.waitUntil(lambda: not preview.waiting, timeout=PATIENCE)
    assert not preview.initials or preview.pdf != before
    preview.working.click()
    qtbot.waitUntil(lambda: not preview.waiting, timeout=PATIENCE)
    assert preview.view.count > pages


def test_the_pages_are_painted_on_a_printer(window, qtbot, tmp_path):
    pytest.importorskip("reportlab")
    from PySide6.QtPrintSupport import QPrinter

    from jobsheet.gui.pages.print_window import PrintWindow

    preview = PrintWindow(window.desk, window.parts.exporting.write, window)
    qtbot.addWidget(preview)
    qtbot.waitUntil(lambda: not preview.waiting, timeout=PATIENCE)
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setResolution(100)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    preview.paint_pages(printer, 1, 2)
    assert (tmp_path / "printed.pdf").stat().st_size > 1000


def test_one_journal_that_cannot_be_read_hides_no_other(hm100, own_home):
    import os

    import msgspec

    from jobsheet.gui.desk.left_behind import left_behind
    from jobsheet.storage.job_writing import write_job

    folder = journal.folder()
    folder.mkdir(parents=True)
    encode = msgspec.json.encode
    kept = {
        "1-good.json": encode(journal.Entry(job=write_job(hm100), name="plate")),
        "2-job.json": encode(journal.Entry(job="part: 'open", name="other")),
        "3-torn.json": b'{"job": "for',
        "4-letters.json": b'{"job": "\xff"}',
        "5-empty.json": b"",
        "6-kind.json": b"[1]",
    }
    for age, (name, raw) in enumerate(kept.items()):
        (folder / name).write_bytes(raw)
        os.utime(folder / name, (1e9 + age, 1e9 + age))
    os.mkfifo(folder / "7-pipe.json")
    (folder / "8-folder.json").mkdir()
    assert left_behind().job == hm100
    assert (folder / "2-job.json").exists()


def test_printed_sheets_open_as_the_job_they_were_printed_from(show, tmp_path, monkeypatch):
    """Paper is not written over: the job asks for a file of its own when it is saved."""
    sheets = tmp_path / "plate.pdf"
    sample = paths.sample_jobs() / "hm-100-drilled-plate-b1.yaml"
    assert main(["sheet", str(sample), "-o", str(sheets)]) == 0
    before = sheets.read_bytes()
    window = show()
    assert window.parts.files.open_path(sheets)
    assert window.desk.job == read_job(sample)
    assert window.desk.path is None
    assert window.bench.title.cells["file"].shown.value == "from printed sheets, not saved"
    asked = []
    monkeypatch.setattr(ask, "save_path", lambda _parent, suggestion: asked.append(suggestion))
    window.parts.files.save()
    assert [one.name for one in asked] == ["plate.yaml"]
    assert sheets.read_bytes() == before
    assert show(str(sheets)).desk.job == read_job(sample)


def test_initials_are_asked_once_a_cause_and_hold_for_all_its_steps(show, samples, qtbot):
    """HM-104: thin sheet is one cause at nine steps and more; as on paper one line of initials."""
    import io

    from pypdf import PdfReader
    from PySide6.QtWidgets import QLabel

    from jobsheet.gui.pages.print_window import PrintWindow

    window = show(str(samples / "hm-104-cover-plate.yaml"))
    qtbot.waitUntil(lambda: bool(window.desk.notes))
    preview = PrintWindow(window.desk, window.parts.exporting.write, window)
    qtbot.addWidget(preview)
    preview.show()
    stops = [note.id for note in window.desk.notes if note.level == "stop"]
    assert len(preview.initials) == len(set(stops)) < len(stops)
    assert "(steps 30, 32, 34, 50" in " ".join(label.text() for label in preview.findChildren(QLabel))
    for box in preview.initials.values():
        qtbot.keyClicks(box, "TR")
    preview.make()
    qtbot.waitUntil(lambda: not preview.waiting, timeout=PATIENCE)
    text = "".join(page.extract_text() for page in PdfReader(io.BytesIO(preview.pdf)).pages)
    assert "NOT ACKNOWLEDGED" not in text
