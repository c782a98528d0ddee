"""`jobsheet cabinet` as a shell sees it."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.storage.cabinet_file import NAME

OWN = """format: 1
name: The shed
taps:
  - what: taps M6, taper and plug
    place: box 1
    out: lent
drills:
  - what: drills 1 mm to 4.5 mm by 0.5 mm
    place: box 2
"""


@pytest.fixture
def plate(samples):
    return str(samples / "hm-100-drilled-plate-b1.yaml")


def test_the_cabinet_by_drawer(capsys):
    assert main(["cabinet"]) == 0
    out = capsys.readouterr().out
    assert "(invented)" in out
    assert out.index("drawer 1 no. 4") < out.index("drawer 2 no. 7") < out.index("drawer 6 no. 2")
    assert "no cabinet of your own yet" in out
    assert main(["cabinet", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert {"section", "what", "place", "line", "count", "here", "out", "note"} == set(data["things"][0])


def test_what_a_job_asks_for_is_there(plate, capsys):
    assert main(["cabinet", plate]) == 0
    out = capsys.readouterr().out
    assert "drawer 2 no. 7" in out
    assert "Everything that is asked for is there." in out


def test_what_is_lacking_gives_exit_code_1(plate, own_home, capsys):
    (own_home / NAME).write_text(OWN, encoding="utf-8")
    assert main(["cabinet", plate]) == 1
    out = capsys.readouterr().out
    assert "The cabinet has no drill 5.0; nearest is drill 4.5 mm (box 2)." in out
    assert "Taps M6 (box 1) is not there now: lent." in out
    assert "3 of 3 things are lacking." in out
    assert main(["cabinet", plate, "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    drill = next(one for one in data["asked"] if one["asked"].startswith("drill 5.0"))
    assert (drill["status"], drill["operations"], drill["nearest"]) == ("near", [60], ["drill 4.5 mm, box 2"])
    assert main(["check", plate]) == 0  # a habit of the workshop, no hazard of the plan
    assert "(What the plan asks for is in the cabinet)" in capsys.readouterr().out


def test_no_cabinet_concerns_a_job_of_another_workshop(plate, tmp_path, capsys):
    from pathlib import Path

    text = (
        Path(plate).read_text(encoding="utf-8").replace("Harrowmoss Training Workshop (invented)", "The shed")
    )
    path = tmp_path / "shed.yaml"
    path.write_text(text, encoding="utf-8")
    assert main(["cabinet", str(path)]) == 0
    assert "No cabinet concerns this job" in capsys.readouterr().out
    assert main(["cabinet", str(path), "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == {"cabinet": None, "asked": []}


def test_a_cabinet_that_cannot_be_used_gives_2_with_all_its_problems_and_the_review_says_so(
    plate, own_home, capsys
):
    (own_home / NAME).write_text(
        "format: 1\ncutters:\n  - what: end mill\n    place: box\n    x: y\n", encoding="utf-8"
    )
    assert main(["cabinet", plate]) == 2
    error = capsys.readouterr().err
    assert "line 3" in error
    assert "line 5" in error
    assert "Traceback" not in error
    main(["check", plate])
    assert "cabinet.yaml cannot be used" in capsys.readouterr().out
