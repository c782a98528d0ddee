"""`jobsheet reach` as a shell sees it."""

from __future__ import annotations

import json

from jobsheet.__main__ import main


def test_as_text(capsys):
    assert main(["reach", "bench-mill-b-1"]) == 0
    out = capsys.readouterr().out
    assert "largest tap, by hand only" in out
    assert "this machine does not reverse" in out
    assert "Planned limit, a chance of 1 in 10" in out


def test_as_json_in_another_metal(capsys):
    assert main(["reach", "knee-mill-k-2", "--material", "6082-T6", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    tap = next(one for one in data["tools"] if one["what"] == "largest tap")
    assert tap["way"] == "by hand or with a tapping head that slips"
    assert all(one["plan"] <= one["tight"] * 1.000001 for one in data["passes"])


def test_what_is_not_there_gives_2(capsys):
    assert main(["reach", "no-such"]) == 2
    assert "no machine card" in capsys.readouterr().err
    assert main(["reach", "bench-mill-b-1", "--material", "wood"]) == 2
    assert main(["reach", "bench-mill-b-1", "--units", "feet"]) == 2
