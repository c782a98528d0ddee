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


def test_what_is_wrong_and_what_was_named_besides(pivot, tmp_path, capsys):
    assert (
        main(["lesson", pivot, "--kind", "wrong", "--level", "2", "--seed", "37", "-o", str(tmp_path)]) == 0
    )
    capsys.readouterr()
    assert (
        main(["lesson", "mark", pivot, "--kind", "wrong", "--level", "2", "--seed", "37", "--answer", "1"])
        == 1
    )
    out = capsys.readouterr().out
    assert "0 of 1 found." in out
    assert "row 1: nothing is wrong there" in out


def test_figures_are_marked_with_the_usual_slip(pivot, capsys):
    assert (
        main(
            [
                "lesson",
                "mark",
                pivot,
                "--kind",
                "figures",
                "--level",
                "3",
                "--sheet",
                "2",
                "--seed",
                "37",
                "--figures",
                "1=668 2=500",
            ]
        )
        == 1
    )
    out = capsys.readouterr().out
    assert "Figures: 1 of 2 right." in out
    assert "the radius was taken for the diameter" in out


def test_nothing_to_mark_is_said(pivot, capsys):
    assert main(["lesson", "mark", pivot, "--seed", "37"]) == 2
    assert "Nothing to mark" in capsys.readouterr().err
