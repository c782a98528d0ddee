"""`jobsheet stopwatch` as a shell sees it."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


@pytest.fixture
def plate(samples):
    return str(samples / "hm-100-drilled-plate-b1.yaml")


def test_a_length_and_seconds(plate, capsys):
    assert main(["stopwatch", plate, "20", "--length", "80 mm", "--seconds", "42"]) == 0
    out = capsys.readouterr().out
    assert "114 mm/min" in out
    assert "112 mm/min" in out
    assert "Share of the torque" in out


def test_turns_as_json(plate, capsys):
    """90 turns a minute are more than the 80 at which every other hand jerks
    (holding-and-more-kinds C1): exit code 1.
    """
    assert main(["stopwatch", plate, "20", "--turns", "15", "--seconds", "10", "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["pace"] == pytest.approx(1.5)
    assert data["feed"] == pytest.approx(0.00375)
    assert next(one for one in data["limits"] if one["name"] == "hand-pace")["verdict"] == "beyond"


@pytest.mark.parametrize(
    "arguments",
    [
        ["99", "--turns", "1", "--seconds", "1"],
        ["10", "--turns", "1", "--seconds", "1"],
        ["20", "--seconds", "1"],
        ["20", "--length", "wide", "--seconds", "1"],
        ["20", "--turns", "nan", "--seconds", "1"],
        ["20", "--turns", "1", "--seconds", "inf"],
    ],
)
def test_what_is_wrong_gives_2(plate, arguments, capsys):
    assert main(["stopwatch", plate, *arguments]) == 2
    assert "Traceback" not in capsys.readouterr().err
