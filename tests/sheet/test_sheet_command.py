from __future__ import annotations

import subprocess
import sys

import pytest
from pypdf import PdfReader

from jobsheet.cli.main import run
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_writing import write_job
from tests.report.plans import bench, drill, job

PLATE = sample_jobs() / "hm-100-drilled-plate-b1.yaml"


@pytest.fixture(autouse=True)
def in_a_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)


def sheet(*arguments) -> int:
    return run(["sheet", *map(str, arguments)], lambda _path: 0)


def saved(tmp_path, plan, name="plan.yaml"):
    path = tmp_path / name
    path.write_text(write_job(plan), encoding="utf-8")
    return path


def test_the_sheets_go_beside_you_under_the_name_of_the_job(tmp_path, capsys):
    assert sheet(PLATE) == 0
    assert capsys.readouterr().out == "2 pages for A4 paper: hm-100-drilled-plate-b1.pdf\n"
    reader = PdfReader(tmp_path / "hm-100-drilled-plate-b1.pdf")
    assert reader.attachments["hm-100-drilled-plate-b1.yaml"] == [PLATE.read_bytes()]


def test_several_jobs_go_into_one_file(tmp_path):
    other = saved(tmp_path, job([bench(10)]))
    assert sheet(PLATE, other, "-o", "all.pdf", "--paper", "letter") == 0
    inside = PdfReader(tmp_path / "all.pdf").attachments
    assert {PLATE.name, other.name} <= set(inside)
    assert len(inside) == 4  # both jobs, and the card and the log of their one machine


def test_the_working_is_printed_where_it_is_asked_for(tmp_path):
    sheet(PLATE, "--working", "-o", "w.pdf")
    assert "Source:" in "".join(page.extract_text() for page in PdfReader(tmp_path / "w.pdf").pages)


def test_something_that_should_stop_you_is_printed_and_said_by_the_code(tmp_path):
    path = saved(tmp_path, job([drill(10, [(200, 12)])]))
    assert sheet(path) == 1
    assert (tmp_path / "plan.pdf").is_file()


def test_stop_notes_are_named(tmp_path, capsys):
    sheet(saved(tmp_path, job([bench(10)], trainee=True)))
    said = capsys.readouterr().out.splitlines()[1]
    assert said.startswith("plan.yaml: stop notes that nobody has acknowledged")
    assert said.endswith("trainee-with-permission")


def test_characters_without_a_picture_are_said_in_one_line(tmp_path, capsys):
    assert sheet(saved(tmp_path, job([bench(10, "用 it")]))) == 0
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    assert "用 (U+7528) in step 10, your wording" in error


@pytest.mark.parametrize("name", ["missing.yaml", "broken.yaml"])
def test_what_cannot_be_read_makes_no_file(tmp_path, name):
    (tmp_path / "broken.yaml").write_text("format: 1\nstock: [", encoding="utf-8")
    assert sheet(name) == 2
    assert not list(tmp_path.glob("*.pdf"))


def test_the_job_is_never_overwritten_by_its_sheets(tmp_path, capsys):
    path = saved(tmp_path, job([bench(10)]))
    before = path.read_bytes()
    assert sheet(path, "-o", path) == 2
    assert path.read_bytes() == before
    other = tmp_path / "notes.txt"
    other.write_text("mine", encoding="utf-8")
    assert sheet(path, "-o", other) == 2
    assert other.read_text(encoding="utf-8") == "mine"
    assert "is no PDF" in capsys.readouterr().err


def test_an_older_print_is_replaced(tmp_path):
    assert sheet(PLATE, "-o", "x.pdf") == sheet(PLATE, "-o", "x.pdf") == 0


def test_a_folder_that_is_not_there_is_said(tmp_path, capsys):
    assert sheet(PLATE, "-o", tmp_path / "no" / "x.pdf") == 2
    assert "cannot be written" in capsys.readouterr().err


def test_nothing_is_complained_of_at_the_end(tmp_path):
    """The modeller writes to the terminal when a solid outlives the program."""
    sample = next(iter(sorted(sample_jobs().glob("hm-102*.yaml"))))
    done = subprocess.run(
        [sys.executable, "-m", "jobsheet", "sheet", str(sample), "-o", str(tmp_path / "x.pdf")],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
