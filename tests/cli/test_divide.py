"""`jobsheet divide` as a shell sees it."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


def test_seven_on_forty(capsys):
    assert main(["divide", "7", "--ratio", "40"]) == 0
    out = capsys.readouterr().out
    assert "5 turns and 35 holes on 49" in out
    assert "plate 37 to 49" in out
    assert "40 turns" in out


def test_an_inexact_one_says_to_count_from_the_zero(capsys):
    assert main(["divide", "51"]) == 0
    out = capsys.readouterr().out
    assert "count every step from the zero" in out


def test_as_json_and_own_circles(capsys):
    assert main(["divide", "12° 30'", "--ratio", "90", "--circles", "16, 20", "--line", "2'", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["ways"] == [{"turns": 3, "holes": 2, "circle": 16, "error": 0.0}]
    assert data["rotary table"][0]["line"] == 15
    assert data["count"] is None


@pytest.mark.parametrize(
    "arguments",
    [["0"], ["x"], ["7", "--ratio", "0"], ["7", "--circles", ","], ["7", "--line", "x"], ["99999999"]],
)
def test_what_is_wrong_gives_2(arguments, capsys):
    assert main(["divide", *arguments]) == 2
    assert capsys.readouterr().err.strip()


@pytest.fixture
def flange(samples, tmp_path):
    """HM-100 with its four holes on a circle of six instead."""
    text = (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
    places = "          - [14, 12]\n          - [66, 12]\n          - [66, 38]\n          - [14, 38]\n"
    assert text.count(places) == 3
    path = tmp_path / "flange.yaml"
    path.write_text(text.replace(places, "          - circle of 6 on 40 around 40, 25\n"), encoding="utf-8")
    return str(path)


@pytest.mark.parametrize("step", ["60", "drill"])
def test_the_pitch_circle_of_a_step(flange, step, capsys):
    """60° on 40 to 1 is 6 turns and 26 holes on 39 (the usual chart); on a table of 90 it is 15 turns."""
    assert main(["divide", flange, step]) == 0
    out = capsys.readouterr().out
    assert "Step 60  circle of 6 on 40 around 40, 25" in out
    assert "the work's 40, 25; then out by 20 mm" in out
    assert "on x: 8 + 0.00, line 0" in out  # 20 mm on 2.5 mm a turn
    assert "circle of 39 (plate 37 to 49)" in out
    assert "13 turns and 13 holes on 39" in out
    assert "50, 42.321" in out
    assert main(["divide", flange, step, "--ratio", "90"]) == 0
    assert "15 turns, line 0" in capsys.readouterr().out


def test_every_step_that_has_one(flange, capsys):
    assert main(["divide", flange, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert [one["number"] for one in data["circles"]] == [50, 60, 70]
    places = data["circles"][0]["places"]
    assert [round(one["angle"]) for one in places] == [0, 60, 120, 180, 240, 300]
    assert all(one["error"] == 0 and one["off at the hole"] == 0 for one in places)
    assert places[1]["rotary table"]["degrees"] == 6  # 6 turns of 9° and 6° more


def test_what_is_not_exact_says_by_how_much_at_the_hole(flange, capsys):
    """On a circle of 20, 1/6 of 40 turns is 6 and 13.33 holes: a third of a hole is
    360 × 3600 / (40 × 20 × 3) = 540″.
    """
    assert main(["divide", flange, "60", "--circles", "20"]) == 0
    out = capsys.readouterr().out
    assert "6 turns and 13 holes on 20" in out
    assert "short by 540.0″" in out
    assert "0.052 mm at the hole" in out  # 540″ at 20 mm


@pytest.mark.parametrize(
    ("step", "says"),
    [
        ("20", "Step 20 has no pitch circle; write its places as circle of 6"),
        ("61", "no step “61”"),
    ],
)
def test_a_step_without_a_circle(flange, step, says, capsys):
    assert main(["divide", flange, step]) == 2
    assert says in capsys.readouterr().err


def test_a_job_without_circles_or_a_file_that_is_not_there(samples, capsys):
    assert main(["divide", str(samples / "hm-100-drilled-plate-b1.yaml")]) == 2
    assert "has a pitch circle" in capsys.readouterr().err
    assert main(["divide", "gone.yaml", "10"]) == 2
    assert "gone.yaml" in capsys.readouterr().err
