"""`jobsheet check`: a good plan is 0, one that should stop you 1, one that cannot be read 2."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.verbs.check import command


@pytest.fixture
def plate(samples):
    return samples / "hm-100-drilled-plate-b1.yaml"


def test_the_sample_has_nothing_that_stops(plate, capsys):
    assert main(["check", str(plate)]) == 0
    assert capsys.readouterr().out.strip()


def test_json_has_remarks_and_notes(plate, capsys):
    main(["check", str(plate), "--json"])
    data = json.loads(capsys.readouterr().out)
    assert {"remarks"} <= set(data)
    assert command.name == "check"


def test_a_drill_of_twice_the_size_stops(plate, tmp_path, capsys):
    text = plate.read_text(encoding="utf-8")
    path = tmp_path / "wrong.yaml"
    path.write_text(
        text.replace("drill 5.0", "drill 20") if "drill 5.0" in text else text.replace("drill 5", "drill 20"),
        encoding="utf-8",
    )
    assert main(["check", str(path)]) == 1
    assert "drill" in capsys.readouterr().out.casefold()


def test_what_is_no_job_is_two(tmp_path, capsys):
    path = tmp_path / "no.yaml"
    path.write_text("a: [", encoding="utf-8")
    assert main(["check", str(path)]) == 2
    assert "line 2" in capsys.readouterr().err
