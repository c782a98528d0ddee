"""`jobsheet sheet --page`: which pages, for whom nothing is said by the workshop's
own file, which is written on demand.
"""

from __future__ import annotations

import pytest
from pypdf import PdfReader

from jobsheet.cli.main import run
from jobsheet.paths import sample_jobs
from jobsheet.storage.shop_file import NAME, workshop

PLATE = sample_jobs() / "hm-100-drilled-plate-b1.yaml"


@pytest.fixture(autouse=True)
def in_a_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)


def sheet(*arguments) -> int:
    return run(["sheet", *map(str, arguments)], lambda _path: 0)


def text(path) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(path).pages)


def test_a_route_list_is_one_page(capsys):
    assert sheet(PLATE, "--page", "route", "-o", "r.pdf") == 0
    assert capsys.readouterr().out == "1 page for A4 paper: r.pdf\n"
    assert "Route list" in text("r.pdf")


def test_a_step_alone_means_its_card():
    assert sheet(PLATE, "--step", "60", "-o", "s.pdf") == 0
    assert "60 · set-up 1 of 1" in text("s.pdf")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ((PLATE, "--page", "route", "--step", "60"), "--step goes with --page step"),
        ((PLATE, "--step", "61"), "There is no step 61"),
        ((PLATE, "--page", "blank", "--machine", "bench-mill-b-1"), "no JOB"),
        (("--page", "blank"), "Name a job, or the machine"),
        ((), "Missing argument 'JOB...'"),
        (("--page", "blank", "--machine", "none-such"), "none-such"),
    ],
)
def test_what_does_not_go_together_is_refused_in_one_sentence(arguments, says, tmp_path, capsys):
    assert sheet(*arguments) == 2
    assert says in capsys.readouterr().err
    assert not list(tmp_path.glob("*.pdf"))


def test_a_blank_form_needs_no_job():
    assert sheet("--page", "blank", "--machine", "bench-mill-b-1") == 0
    assert "2300" in text("bench-mill-b-1 blank form.pdf")
    assert PdfReader("bench-mill-b-1 blank form.pdf").attachments == {}


def test_what_is_always_printed_is_kept_beside_what_the_workshop_says_already(own_home, capsys):
    (own_home / NAME).write_text(
        "format: 1\n# ours\nfastest pace: 45 rpm\nprint_route: no\n", encoding="utf-8"
    )
    assert (
        sheet(PLATE, "--page", "route", "--page", "whole", "--paper", "letter", "--always", "-o", "a.pdf")
        == 0
    )
    assert (
        "Kept as what this workshop always prints: the whole sheet and route list, on Letter paper."
        in capsys.readouterr().out
    )
    kept = (own_home / NAME).read_text(encoding="utf-8")
    assert "# ours\nfastest pace: 45 rpm\n" in kept
    assert kept.count("route") == 1
    assert workshop().prints.pages == ("whole", "route")
    assert sheet(PLATE, "-o", "b.pdf") == 0
    assert len(PdfReader("b.pdf").pages) == len(PdfReader("a.pdf").pages) == 3
    assert float(PdfReader("b.pdf").pages[0].mediabox.width) == 612


def test_a_workshop_that_prints_nothing_is_said(own_home, capsys):
    (own_home / NAME).write_text("format: 1\nprint whole: no\n", encoding="utf-8")
    assert sheet(PLATE) == 2
    assert "line 2: print whole: no page is left to print" in capsys.readouterr().err


def test_a_broken_file_of_the_workshop_stays_as_it_is(own_home, capsys):
    broken = "format: 1\nfastest pase: 45 rpm\n"
    (own_home / NAME).write_text(broken, encoding="utf-8")
    assert sheet(PLATE, "--page", "route", "--always") == 2
    assert "did you mean fastest pace" in capsys.readouterr().err
    assert (own_home / NAME).read_text(encoding="utf-8") == broken


def test_many_jobs_get_the_pages_that_were_asked_for(tmp_path, capsys):
    assert sheet(PLATE, sample_jobs() / "hm-101-setting-block.yaml", "--page", "positions", "-o", "out/") == 2
    said = capsys.readouterr()
    assert "hm-100-drilled-plate-b1.pdf, 1 pages" in said.out
    assert "hm-101-setting-block.yaml: No set-up of this job goes to a point" in said.err
