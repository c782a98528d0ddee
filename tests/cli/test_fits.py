"""`jobsheet fits` and `jobsheet dials` as a shell sees them."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


@pytest.fixture
def slide(samples):
    return str(samples / "hm-102-slide-plate.yaml")


def test_what_no_longer_fits_gives_1(slide, capsys):
    assert main(["fits", slide, "--machine", "bench-mill-b-1"]) == 1
    out = capsys.readouterr().out
    assert "100 turns a minute is faster than a hand winds evenly" in out
    assert "2300 rpm is nearest" in out
    # The log of section 3 knows end mills on B-1; the slot drill was never tried there
    # (story 4), but 0.5 wide (steps 100, 105) asks so little by the direction of the force
    # that the record of the machine carries it.
    assert "chatter, step 90: not tried on this machine: begin at" in out
    assert "Does not fit" in out


def test_what_fits_gives_0(samples, capsys):
    plate = str(samples / "hm-100-drilled-plate-b1.yaml")
    assert main(["fits", plate, "--machine", "bench-mill-b-2", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["fits"]
    assert data["machine"] == "bench-mill-b-2"
    assert main(["fits", plate]) == 0
    assert "no step changes" in capsys.readouterr().out


def test_a_changed_card_is_said_by_fits_and_by_check(samples, tmp_path, capsys):
    text = (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
    line = next(line for line in text.splitlines() if line.startswith("card hash"))
    path = tmp_path / "old.yaml"
    path.write_text(text.replace(line, "card hash: abcdef0123456789"), encoding="utf-8")
    assert main(["fits", str(path)]) == 0
    assert "was changed since" in capsys.readouterr().out
    assert main(["check", str(path)]) == 0
    assert "(The card as it was planned with)" in capsys.readouterr().out


def test_dials_of_the_slide_plate(slide, capsys):
    assert main(["dials", slide]) == 0
    out = capsys.readouterr().out
    assert "6 + .0008, line 1, +0.005 (30.5)" in out
    assert "its two walls fall on different turns, 5 and 6" in out
    assert main(["dials", slide, "--machine", "bench-mill-b-1", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    wall = next(one for one in data["set-ups"][2]["steps"] if one["number"] == 105)["wall"]
    assert wall["centre"]["dial"] == "12 + 0.50"
    assert wall["comes out"] == pytest.approx(35e-3)


@pytest.mark.parametrize("verb", ["fits", "dials"])
def test_a_machine_that_is_not_there_gives_2(verb, slide, capsys):
    assert main([verb, slide, "--machine", "no-such"]) == 2
    assert "no machine card" in capsys.readouterr().err
