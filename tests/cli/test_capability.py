"""`jobsheet capability`: text, JSON and PDF of what a machine will carry."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


@pytest.mark.usefixtures("day_of_the_figures")
def test_one_machine_in_words(capsys):
    assert main(["capability", "bench-mill-b-1"]) == 0
    out = capsys.readouterr().out
    assert "deepest side cut 6 mm wide" in out
    assert "it chattered at what 2.66 mm asks (2026-11-12, end mill 12 mm, drawer 1 no. 4)" in out
    assert "Planned limit, a chance of 1 in 10; watch, listen and feel." in out


def test_two_machines_and_a_job_as_json_and_on_paper(samples, tmp_path, capsys):
    job, target = str(samples / "hm-100-drilled-plate-b1.yaml"), tmp_path / "card.pdf"
    assert (
        main(["capability", "bench-mill-b-1", "bench-mill-b-2", "--job", job, "--json", "-o", str(target)])
        == 0
    )
    data = json.loads(capsys.readouterr().out)
    assert data["machines"] == ["bench-mill-b-1", "bench-mill-b-2"]
    assert [(one["machine"], one["material"]) for one in data["cards"]] == [
        ("bench-mill-b-1", "S235"),
        ("bench-mill-b-2", "S235"),
    ]
    assert [one["machine"] for one in data["job"]] == data["machines"]
    assert all(one["whole"] > one["in the cut"] > 0 for one in data["job"])
    assert target.read_bytes().startswith(b"%PDF")


def test_several_metals(capsys):
    metals = ["--material", "S235", "--material", "6082-T6"]
    assert main(["capability", "knee-mill-k-2", *metals, "--units", "in", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert [one["material"] for one in data["cards"]] == ["S235", "6082-T6"]
    assert all(one["trials"] == 0 for one in data["cards"])


def test_a_job_that_does_not_fit_gives_1(samples, capsys):
    job = str(samples / "hm-102-slide-plate.yaml")
    assert main(["capability", "bench-mill-b-1", "--job", job]) == 1
    assert "does not fit" in capsys.readouterr().out


def test_what_cannot_be_asked_is_said_in_a_sentence(tmp_path, samples, capsys):
    assert main(["capability", "bench-mill-b-1", "bench-mill-b-1"]) == 2
    assert "beside itself says nothing" in capsys.readouterr().err
    assert main(["capability", "no-such-mill"]) == 2
    assert "no-such-mill" in capsys.readouterr().err
    other = tmp_path / "notes.txt"
    other.write_text("mine")
    assert main(["capability", "bench-mill-b-1", "-o", str(other)]) == 2
    assert other.read_text() == "mine"
