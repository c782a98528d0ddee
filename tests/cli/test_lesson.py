"""`jobsheet lesson` as a shell sees it."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


@pytest.fixture
def pivot(samples):
    return str(samples / "hm-103-pivot-block.yaml")


def test_a_worksheet_and_its_key(pivot, tmp_path, capsys):
    assert main(["lesson", pivot, "--seed", "37", "-o", str(tmp_path)]) == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "HM-103 order sheet 1 key.pdf",
        "HM-103 order sheet 1 worksheet.pdf",
    ]
    assert "1 page: " in capsys.readouterr().out


def test_a_class_gets_one_file_of_sheets_and_one_of_keys(pivot, tmp_path, capsys):
    from pypdf import PdfReader

    assert main(["lesson", pivot, "--seed", "37", "--class", "3", "-o", str(tmp_path)]) == 0
    capsys.readouterr()
    pages = PdfReader(tmp_path / "HM-103 order class of 3 worksheet.pdf").pages
    assert [f"Worksheet {number}" in page.extract_text() for number, page in enumerate(pages, 1)] == [
        True
    ] * 3


def test_an_answer_is_marked(pivot, capsys):
    assert main(["lesson", "mark", pivot, "--seed", "37", "--answer", "BEFACD"]) == 1
    out = capsys.readouterr().out
    assert out.startswith("Nearly there: 1 move away from a right order.")
    assert "Would the part be good: no" in out
    assert main(["lesson", "mark", pivot, "--seed", "37", "--answer", "beafcd", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert (data["right"], data["moves"], data["mark"], data["would the part be good"]) == (
        True,
        0,
        1.0,
        True,
    )


def test_a_letter_that_the_sheet_has_not_gives_2(pivot, capsys):
    assert main(["lesson", "mark", pivot, "--seed", "37", "--answer", "zzz"]) == 2
    assert "is no slip of sheet 1" in capsys.readouterr().err
