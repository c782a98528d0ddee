"""Sheets of a folder of jobs: one PDF each, and what cannot be read stops no other."""

from __future__ import annotations

import shutil

import pytest

from jobsheet.__main__ import main
from jobsheet.cli import job_pages, many_sheets
from jobsheet.storage.pdf_jobs import inside

B1 = "hm-100-drilled-plate-b1.yaml"


@pytest.fixture
def folder(tmp_path, samples):
    jobs = tmp_path / "jobs"
    jobs.mkdir()
    shutil.copy(samples / B1, jobs / "a.yaml")
    shutil.copy(samples / B1, jobs / "c.yaml")
    (jobs / "notes.txt").write_text("no job", encoding="utf-8")
    return jobs


def test_each_job_of_a_folder_gets_a_pdf_that_carries_it(folder, tmp_path, capsys):
    out = tmp_path / "sheets"
    assert main(["sheet", str(folder), "-o", f"{out}/"]) == 0
    assert sorted(path.name for path in out.iterdir()) == ["a.pdf", "c.pdf"]
    (carried,) = inside(out / "a.pdf").jobs
    assert carried[1] == (folder / "a.yaml").read_text(encoding="utf-8")
    assert capsys.readouterr().out.splitlines()[-1].startswith("2 of 2: c.pdf, ")


def test_what_cannot_be_read_is_said_and_stops_no_other(folder, tmp_path, capsys):
    (folder / "b.yaml").write_text("format: 2\nunits: mm\n", encoding="utf-8")
    assert main(["sheet", str(folder), "-o", str(tmp_path)]) == 2
    assert (tmp_path / "a.pdf").exists()
    assert (tmp_path / "c.pdf").exists()
    assert not (tmp_path / "b.pdf").exists()
    assert "b.yaml: b.yaml cannot be used:\n" in capsys.readouterr().err


def test_a_fault_of_our_own_is_one_line_and_stops_no_other(folder, tmp_path, capsys, monkeypatch):
    whole = job_pages.pages_of

    def fault(path, *how):
        if path.name == "a.yaml":
            raise ZeroDivisionError("unforeseen")
        return whole(path, *how)

    monkeypatch.setattr(job_pages, "pages_of", fault)
    assert main(["sheet", str(folder), "-o", str(tmp_path)]) == 2
    said = capsys.readouterr()
    assert "1 of 2: a.yaml: " in said.err
    assert "unforeseen" in said.err
    assert "2 of 2: c.pdf" in said.out


def test_two_processes_give_the_same_files(folder, tmp_path, monkeypatch):
    monkeypatch.setattr(many_sheets, "FROM", 2)
    one, two = tmp_path / "one", tmp_path / "two"
    assert main(["sheet", str(folder), "-o", f"{two}/"]) == 0
    monkeypatch.setattr(many_sheets, "FROM", 99)
    assert main(["sheet", str(folder), "-o", f"{one}/"]) == 0
    for name in ("a.pdf", "c.pdf"):
        assert (one / name).read_bytes() == (two / name).read_bytes()


def test_two_jobs_of_a_name_do_not_take_each_others_place(tmp_path):
    jobs = [tmp_path / "one" / "Plate.yaml", tmp_path / "two" / "plate.yaml"]
    first, second = many_sheets.targets(jobs, tmp_path)
    assert first.name.casefold() != second.name.casefold()


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda folder, _: [str(folder / "empty")], "There is no job in"),
        (lambda folder, _: [str(folder), "-o", str(folder / "notes.txt")], "is a file; name a folder"),
    ],
)
def test_what_cannot_be_is_one_sentence(folder, tmp_path, capsys, make, said):
    (folder / "empty").mkdir()
    assert main(["sheet", *make(folder, tmp_path)]) == 2
    assert said in capsys.readouterr().err
