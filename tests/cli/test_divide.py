"""`jobsheet divide` as a shell sees it."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


def test_seven_on_forty(capsys):
    assert main(["divide", "7", "--ratio", "40"]) == 0
    out = capsys.readouterr().out
    assert "5 turns and 35 holes on 49" in out
    assert "plate C" in out
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
