"""`jobsheet picture`: SVG and PDF, every view, and sentences for what cannot be drawn."""

from xml.etree import ElementTree as ET

import pytest

from jobsheet.__main__ import main
from jobsheet.paths import sample_jobs

JOB = str(sample_jobs() / "hm-103-pivot-block.yaml")


@pytest.mark.parametrize("view", ["iso", "plan", "front", "side"])
def test_every_view_as_svg(view, tmp_path, capsys):
    target = tmp_path / "stage.svg"
    assert main(["picture", JOB, "--after", "84", "--view", view, "-o", str(target)]) == 0
    root = ET.parse(target).getroot()
    assert len(root) > 5
    assert "after step 84" in capsys.readouterr().out


def test_pdf_and_the_finished_work(tmp_path, capsys):
    target = tmp_path / "part.pdf"
    assert main(["picture", JOB, "-o", str(target)]) == 0
    assert target.read_bytes().startswith(b"%PDF")
    assert "finished" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [(["--after", "85", "-o", "x.svg"], "There is no step 85"), (["-o", "x.png"], "neither .svg nor .pdf")],
)
def test_what_cannot_be_drawn_is_said(arguments, words, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["picture", JOB, *arguments]) == 2
    assert words in capsys.readouterr().err
    assert not list(tmp_path.iterdir())
