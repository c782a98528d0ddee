"""`jobsheet lesson` as a shell sees it."""

from __future__ import annotations

import json
import re
import subprocess

import pytest

from jobsheet.__main__ import main
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


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


def orders_of(pivot):
    """A right order of the sheet by its letters, and one with a pair that matters turned round."""
    exercise = order_exercise(Reckoner().reckon(read_job(pivot)), 1, 37, 1)
    (block,) = exercise.blocks
    order, letters = exercise.asked.inside(block.set_up.key), {slip.key: slip.letter for slip in block.slips}
    right, left = [], list(order.items)
    while left:
        one = next(key for key in left if not any(order.before(other, key) for other in left if other != key))
        right.append(one)
        left.remove(one)
    at = next(place for place in range(len(right) - 1) if order.before(right[place], right[place + 1]))
    turned = [*right[:at], right[at + 1], right[at], *right[at + 2 :]]
    return ["".join(letters[key] for key in some) for some in (right, turned)]


def test_an_answer_is_marked(pivot, capsys):
    right, turned = orders_of(pivot)
    assert main(["lesson", "mark", pivot, "--seed", "37", "--answer", turned.upper()]) == 1
    out = capsys.readouterr().out
    assert out.startswith("Nearly there: 1 move away from a right order.")
    assert "Would the part be good: " in out
    assert main(["lesson", "mark", pivot, "--seed", "37", "--answer", right, "--json"]) == 0
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
    from jobsheet.lessons.fault_exercise import fault_exercise

    assert (
        main(["lesson", pivot, "--kind", "wrong", "--level", "2", "--seed", "37", "-o", str(tmp_path)]) == 0
    )
    rows = (
        fault_exercise(Reckoner(learns=True).reckon(read_job(pivot)), 2, 37, 1, missing=False).faults[0].rows
    )
    other = next(row for row in range(1, 23) if row not in rows)
    capsys.readouterr()
    mark = ["lesson", "mark", pivot, "--kind", "wrong", "--level", "2", "--seed", "37", "--answer"]
    assert main([*mark, str(other)]) == 1
    out = capsys.readouterr().out
    assert "0 of 1 found." in out
    assert f"row {other}: nothing is wrong there" in out
    assert main([*mark, str(rows[0])]) == 0
    assert capsys.readouterr().out.startswith("Right.")


def test_figures_are_marked_with_the_usual_slip(pivot, capsys):
    from jobsheet.lessons.figure_exercise import figure_exercise

    asked = figure_exercise(Reckoner().reckon(read_job(pivot)), 3, 37, 2).questions
    assert [one.kind for one in asked[:2]] == ["speed", "position"]
    typed = f"1={2 * float(asked[0].answer.split()[0]):.0f} 2={asked[1].answer.split()[0]}"
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
                typed,
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


def test_tools_are_chosen_by_letter(pivot, tmp_path, capsys):
    from jobsheet.lessons.cutter_exercise import cutter_exercise

    assert (
        main(["lesson", pivot, "--kind", "cutter", "--level", "3", "--seed", "37", "-o", str(tmp_path)]) == 0
    )
    questions = cutter_exercise(Reckoner().reckon(read_job(pivot)), 3, 37, 1).questions
    wrong = next(one for one in questions[0].choices if one.refused is not None)
    capsys.readouterr()
    mark = ["lesson", "mark", pivot, "--kind", "cutter", "--level", "3", "--seed", "37", "--answer"]
    assert main([*mark, f"1={wrong.letter}"]) == 1
    out = capsys.readouterr().out
    assert out.startswith(f"0 of {len(questions)} right.")
    assert wrong.refused.title in out
    assert main([*mark, " ".join(f"{at}={one.right.letter}" for at, one in enumerate(questions, 1))]) == 0
    assert capsys.readouterr().out.startswith("Right.")


def test_set_ups_can_be_named_for_an_order_only(pivot, tmp_path, capsys):
    named = ["--seed", "37", "--set-up", "6", "-o", str(tmp_path)]
    assert main(["lesson", pivot, *named]) == 0
    assert main(["lesson", pivot, "--kind", "figures", *named]) == 2
    assert "--set-up goes with --kind order." in capsys.readouterr().err
    assert main(["lesson", pivot, "--seed", "37", "--set-up", "9"]) == 2
    assert "There is no set-up 9 in this job" in capsys.readouterr().err


def test_a_result_is_a_page_for_the_learner_with_the_work_where_it_goes_wrong(samples, tmp_path):
    job, page = samples / "hm-103-pivot-block.yaml", tmp_path / "result.pdf"
    assert (
        main(
            ["lesson", "mark", str(job), "--level", "1", "--seed", "7", "--answer", "fedcba", "-o", str(page)]
        )
        == 1
    )
    words = subprocess.run(
        ["pdftotext", "-layout", str(page), "-"], capture_output=True, text=True, check=True
    ).stdout
    assert "Result 1" in words
    # The letters are drawn from the plan as it is: another note in the sample and the same
    # answer is as far away as that says.
    (away,) = re.findall(r"(\d) moves? away from a right order", words)
    assert int(away) >= 1
    assert "The work where it goes wrong" in words
    assert "class seed" not in words


def test_a_plan_of_ones_own_is_marked_from_its_file(samples, tmp_path, capsys):
    job = samples / "hm-103-pivot-block.yaml"
    assert main(["lesson", str(job), "--kind", "plan", "--seed", "1", "-o", str(tmp_path)]) == 0
    sheet = next(tmp_path.glob("*worksheet.pdf"))
    words = subprocess.run(
        ["pdftotext", "-layout", str(sheet), "-"], capture_output=True, text=True, check=True
    ).stdout
    assert "16 H7 through" in words
    assert "ream one hole" not in words.lower()
    assert main(["lesson", "mark", str(job), "--kind", "plan", "--seed", "1", "--answer", str(job)]) == 0
    capsys.readouterr()
    other = samples / "hm-100-drilled-plate-b1.yaml"
    assert main(["lesson", "mark", str(job), "--kind", "plan", "--seed", "1", "--answer", str(other)]) == 1
    assert "no step makes it" in capsys.readouterr().out
